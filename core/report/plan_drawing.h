#pragma once

#include <optional>
#include <span>

#include "core/dressing/plan.h"
#include "core/report/drawing.h"
#include "core/report/sketch.h"
#include "core/wound/case.h"

namespace drapewright::report {

struct DrawingSize {
  double width_mm = 0;
  double height_mm = 0;
};

struct DrawingOptions {
  /// The room there is on the page. The drawing takes as much of it as its content needs at the
  /// largest round scale that fits, life size at most. Nothing: A4, either way up.
  std::optional<DrawingSize> room_mm;
  double text_mm = 3;               ///< size of ordinary text; 3 mm is 8.5 point
  std::optional<double> mm_per_cm;  ///< a scale of the caller's choice, whatever the room
  bool headed = true;               ///< else a part of a page that says whose it is
  double smallest_text = 0.7;       ///< of text_mm, to which text may shrink in a small room
};

/// The layered plan to scale on a cm grid with rulers, dimension lines, captions, compass rose,
/// legend, scale bar and the scale in words. Deterministic.
/// @pre the case has an assessment
/// @throws std::invalid_argument for sizes that are not positive and finite, and for a room that is
///         too small for the legend even with the smallest text
Drawing draw_plan(const wound::Case& value, const dressing::Plan& plan,
                  const DrawingOptions& options = {});

/// The case alone, before it is planned.
Drawing draw_case(const wound::Case& value, const DrawingOptions& options = {});

/// @throws std::invalid_argument for sizes that are not positive and finite
void check(const DrawingOptions& options);

/// Wound : paper, life size first: an enlarged drawing would be mistaken for a template.
std::span<const double> round_reductions();

/// Joins layers that came in parts, bottom first, and leaves out empty ones.
void join_layers(Drawing& drawing);

/// "1:2 (half size)", "1:1 (life size)".
std::string scale_in_words(double mm_per_cm);

}  // namespace drapewright::report
