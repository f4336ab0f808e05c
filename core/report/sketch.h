#pragma once

#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/geometry/measures.h"
#include "core/geometry/shape.h"
#include "core/report/layer_style.h"
#include "core/wound/case.h"

namespace drapewright::report {

/// An open chain of points, in cm.
struct Chain {
  std::vector<geometry::Point> points;
  bool arrow_at_end = false;
};

struct SketchLayer {
  LayerKind kind;
  geometry::Region areas;  ///< cm; drawn one by one, they may overlap
  std::vector<Chain> chains;
};

/// A word or two beside a place. Small text that has to find room when it is laid out.
struct Caption {
  enum class Where { on, on_if_clear, beside };
  LayerKind layer;
  geometry::Point at_cm;
  std::string text;
  Where where = Where::beside;  ///< on_if_clear: on the place unless lines run there
  bool bold = false;
};

/// A measure with its dimension line: drawn parallel to `base`, moved off along `away`, with
/// thin lines from the measured points. With `away` zero it is drawn where it was measured.
struct Dimension {
  geometry::Segment measured;
  geometry::Segment base;  ///< on the edge of the wound's extent, at the `away` side
  geometry::Segment opposite_base;
  geometry::Point away;  ///< unit vector or zero
  std::string text;
};

/// What there is to draw of a case and its plan, in cm, before it is laid on paper or screen.
struct Sketch {
  std::vector<SketchLayer> layers;  ///< bottom first, only those that are present
  std::vector<Caption> captions;    ///< those that must find room first stand first
  std::vector<Dimension> dimensions;
  std::string piece_example;                 ///< how a piece's name reads; empty without filler
  std::vector<geometry::Circle> keep_clear;  ///< no words on these: apertures
  geometry::Box extent;                      ///< of all layers
  double head_direction_deg = 90;            ///< of 12 o'clock
  practice::Twelve twelve = practice::Twelve::head;  ///< what 12 points to
};

/// The last assessment alone: wounds, islands, undermining, skin zones.
Sketch sketch_case(const wound::Case& value);
/// The case with its plan.
Sketch sketch_plan(const wound::Case& value, const dressing::Plan& plan);

/// How a piece of filler is called in drawings: layer and piece, both from 1, after the wound's id
/// where there are several wounds: "1.2", "B 1.2".
std::string piece_name(const std::string& wound, int layer, int piece, bool several_wounds);

/// A film border in words. Rounded down: 3.96 cm must not read as 4.
std::string border_in_words(double border_cm);

/// The drawing in words, for those who cannot see it.
std::string describe_drawing(const wound::Case& value, const dressing::Plan* plan);

}  // namespace drapewright::report
