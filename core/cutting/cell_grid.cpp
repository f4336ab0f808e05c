#include "core/cutting/cell_grid.h"

#include <algorithm>
#include <cmath>

namespace drapewright::cutting {

/// What lies outside the domain belongs to the squares at its edge.
CellGrid::Range CellGrid::range(double low, double high, double from, double per_cm) {
  const auto square = [&](double at) {
    return static_cast<int>(std::clamp((at - from) * per_cm, 0.0, squares - 1.0));
  };
  return {square(low), square(high)};
}

void CellGrid::reset(const geometry::Box& domain, const std::vector<geometry::Box>& boxes) {
  constexpr double least_cm = 1e-9;
  domain_ = domain;
  per_x_ = squares / std::max(domain.width(), least_cm);
  per_y_ = squares / std::max(domain.height(), least_cm);
  first_.assign(squares * squares + 1, 0);
  seen_.assign(boxes.size(), 0);
  round_ = 0;
  const auto for_each_square = [&](const geometry::Box& box, auto use) {
    const Range x = range(box.low.x, box.high.x, domain_.low.x, per_x_);
    const Range y = range(box.low.y, box.high.y, domain_.low.y, per_y_);
    for (int row = y.first; row <= y.last; ++row) {
      for (int column = x.first; column <= x.last; ++column) {
        use(static_cast<std::size_t>(row * squares + column));
      }
    }
  };
  for (const auto& box : boxes) {
    for_each_square(box, [&](std::size_t square) { ++first_[square + 1]; });
  }
  for (std::size_t square = 1; square < first_.size(); ++square) {
    first_[square] += first_[square - 1];
  }
  sorted_.resize(static_cast<std::size_t>(first_.back()));
  std::vector<int> next(first_.begin(), first_.end() - 1);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for_each_square(boxes[i], [&](std::size_t square) {
      sorted_[static_cast<std::size_t>(next[square]++)] = static_cast<int>(i);
    });
  }
}

}  // namespace drapewright::cutting
