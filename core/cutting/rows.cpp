#include "core/cutting/rows.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace drapewright::cutting {
namespace {

Point extent(const Oriented& as) { return as.box.high - as.box.low; }

/// The shorter side of the smallest rectangle round a piece.
double least_height(const Scene& scene, int piece) {
  double least_area = std::numeric_limits<double>::infinity(), height = 0;
  for (const int number : scene.orientations(piece)) {
    const Point size = extent(scene.orientation(number));
    if (size.x * size.y >= least_area) continue;
    least_area = size.x * size.y;
    height = std::min(size.x, size.y);
  }
  return height;
}

}  // namespace

std::vector<int> by_falling_height(const Scene& scene) {
  std::vector<int> order(static_cast<std::size_t>(scene.pieces()));
  std::iota(order.begin(), order.end(), 0);
  std::vector<double> heights;
  for (const int piece : order) heights.push_back(least_height(scene, piece));
  std::ranges::stable_sort(order, std::ranges::greater{},
                           [&](int piece) { return heights[static_cast<std::size_t>(piece)]; });
  return order;
}

Rows::Rows(Arrangement& arrangement, Stacked stacked, double gap_cm)
    : arrangement_(arrangement), stacked_(stacked), gap_cm_(gap_cm) {}

bool Rows::place(int piece) {
  arrangement_.put(piece, {});
  rows_.resize(arrangement_.beds.size());
  for (int bed = 0; bed < static_cast<int>(arrangement_.beds.size()); ++bed) {
    if (place_on(piece, bed)) return true;
  }
  return false;
}

bool Rows::place_on(int piece, int bed) {
  auto& rows = rows_[static_cast<std::size_t>(bed)];
  for (Row& row : rows) {
    if (into_row(piece, bed, row, row.filled)) return true;
  }
  const auto& scene = arrangement_.scene();
  const double edge_cm = scene.edge_gap_cm();
  Row next{rows.empty() ? edge_cm : rows.back().from + rows.back().height + gap_cm_,
           std::numeric_limits<double>::infinity(), edge_cm};
  if (!into_row(piece, bed, next, next.filled)) return false;
  next.height = across(extent(arrangement_.oriented(piece)));
  rows.push_back(next);
  return true;
}

/// In a row that stands, the piece takes as little of its length as it can; a new one is made as
/// low as it can be.
bool Rows::into_row(int piece, int bed, const Row& row, double& end) {
  const auto& scene = arrangement_.scene();
  const bool is_new = std::isinf(row.height);
  std::vector<int> order = scene.orientations(piece);
  std::ranges::stable_sort(order, std::ranges::less{}, [&](int number) {
    const Point size = extent(scene.orientation(number));
    return is_new ? across(size) : along(size);
  });
  for (const int number : order) {
    const Oriented& as = scene.orientation(number);
    if (across(extent(as)) > row.height) continue;
    if (!put(piece, as, bed, row.from, row.filled)) continue;
    end = row.filled + along(extent(as)) + gap_cm_;
    return true;
  }
  return false;
}

bool Rows::put(int piece, const Oriented& as, int bed, double across_cm, double along_cm) {
  const bool lengthwise = stacked_ == Stacked::along_length;
  const Point corner = lengthwise ? Point{across_cm, along_cm} : Point{along_cm, across_cm};
  const Box domain =
      arrangement_.scene().domain(as, arrangement_.beds[static_cast<std::size_t>(bed)]);
  const Point wanted = corner - as.box.low;
  // What fits exactly may be off by the last digit; the domain has that mended.
  const Point at{std::min(wanted.x, domain.high.x), std::min(wanted.y, domain.high.y)};
  if (domain.low.x > domain.high.x || domain.low.y > domain.high.y) return false;
  if (wanted.x - at.x > touch_cm || wanted.y - at.y > touch_cm) return false;
  arrangement_.put(piece, {bed, as.id, as.angle_deg, at});
  return true;
}

}  // namespace drapewright::cutting
