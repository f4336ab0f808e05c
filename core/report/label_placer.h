#pragma once

#include <optional>
#include <vector>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"
#include "core/report/sketch.h"

namespace drapewright::report {

/// Finds room for small text boxes: inside a field, never over each other or over what was
/// blocked, and off the lines where there is a choice. Greedy: what comes first chooses first.
/// All in mm.
class LabelPlacer {
 public:
  explicit LabelPlacer(geometry::Box field) : field_(field) {}

  /// Nothing may lie here.
  void block(geometry::Box box) { blocked_.push_back(box); }
  /// A line that text should keep off where it can.
  void avoid(const std::vector<geometry::Point>& line);

  bool is_free(geometry::Box box) const;
  /// How many sampled points of lines to be avoided lie under the box.
  int lines_under(geometry::Box box) const;

  /// Takes the best free place for a box of the given size at or beside `anchor` and blocks it.
  /// Nothing when the whole field has no room.
  std::optional<geometry::Box> place(geometry::Point anchor, double width, double height,
                                     Caption::Where where);

 private:
  std::optional<geometry::Box> best_at_distance(geometry::Point anchor, double width, double height,
                                                double gap) const;

  geometry::Box field_;
  std::vector<geometry::Box> blocked_;
  std::vector<geometry::Point> lines_;
};

}  // namespace drapewright::report
