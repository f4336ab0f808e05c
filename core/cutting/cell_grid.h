#pragma once

#include <cstdint>
#include <vector>

#include "core/geometry/measures.h"

namespace drapewright::cutting {

/// Boxes sorted into the squares of a coarse grid, so that those near a small box are found without
/// a walk through all of them.
class CellGrid {
 public:
  /// @param boxes   what is sorted in, known by their places in this list
  void reset(const geometry::Box& domain, const std::vector<geometry::Box>& boxes);

  /// Calls `visit(index)` once for every box that may meet `near`, and for some that do not, until
  /// it says false.
  /// @returns whether it never did
  template <typename Visit>
  bool all_near(const geometry::Box& near, Visit visit) {
    ++round_;
    const Range x = range(near.low.x, near.high.x, domain_.low.x, per_x_);
    const Range y = range(near.low.y, near.high.y, domain_.low.y, per_y_);
    for (int row = y.first; row <= y.last; ++row) {
      for (int column = x.first; column <= x.last; ++column) {
        const auto square = static_cast<std::size_t>(row * squares + column);
        for (int k = first_[square]; k < first_[square + 1]; ++k) {
          const int index = sorted_[static_cast<std::size_t>(k)];
          auto& seen = seen_[static_cast<std::size_t>(index)];
          if (seen == round_) continue;
          seen = round_;
          if (!visit(static_cast<std::size_t>(index))) return false;
        }
      }
    }
    return true;
  }

 private:
  static constexpr int squares = 24;  ///< a side
  struct Range {
    int first = 0;
    int last = 0;
  };
  static Range range(double low, double high, double from, double per_cm);

  geometry::Box domain_;
  double per_x_ = 0, per_y_ = 0;  ///< squares to the cm
  std::vector<int> first_;        ///< of each square in `sorted_`, and the end
  std::vector<int> sorted_;
  std::vector<std::uint32_t> seen_;  ///< the round in which a box was visited last
  std::uint32_t round_ = 0;
};

}  // namespace drapewright::cutting
