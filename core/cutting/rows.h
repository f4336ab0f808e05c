#pragma once

#include <vector>

#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// Lays pieces down in rows, each by the rectangle round it: next to no work, and always sound, so
/// that there is a layout at once. (Shelves, first fit by falling height: Coffman, Garey, Johnson,
/// Tarjan 1980.)
class Rows {
 public:
  enum class Stacked { along_length, along_width };
  /// @param gap_cm between pieces
  Rows(Arrangement& arrangement, Stacked stacked, double gap_cm);

  /// Puts the piece into the first row with room for it, else into a new one on the first bed that
  /// takes one; leaves it unplaced (false) if none does.
  bool place(int piece);

 private:
  struct Row {
    double from = 0;    ///< across the rows
    double height = 0;  ///< likewise
    double filled = 0;  ///< along the row
  };
  bool place_on(int piece, int bed);
  bool into_row(int piece, int bed, const Row& row, double& end);
  double along(Point p) const { return stacked_ == Stacked::along_length ? p.y : p.x; }
  double across(Point p) const { return stacked_ == Stacked::along_length ? p.x : p.y; }
  bool put(int piece, const Oriented& as, int bed, double across_cm, double along_cm);

  Arrangement& arrangement_;
  Stacked stacked_;
  double gap_cm_;
  std::vector<std::vector<Row>> rows_;  ///< per bed
};

/// All pieces, those that make the highest rows first.
std::vector<int> by_falling_height(const Scene& scene);

}  // namespace drapewright::cutting
