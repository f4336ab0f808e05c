#include "core/cutting/off_cut.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/geometry/distance.h"

namespace drapewright::cutting {
namespace {

using geometry::Box;
using geometry::Point;
using geometry::Segment;

constexpr int columns_at_least = 200;
/// Columns narrower than this are of no use and only cost time, which grows by their square.
constexpr double narrowest_column_cm = 1e-6;
/// With more ends of columns than this, as round pieces make, they are kept this far apart: what is
/// left is then understated by no more than twice as much.
constexpr std::size_t many_ends = 800;
constexpr double narrowest_of_many_cm = 0.03;

struct Interval {
  double low = 0;
  double high = 0;
};
using Intervals = std::vector<Interval>;  ///< rising, apart from each other

/// The y of what lies within the gap of an edge, over all x from `left` to `right`: empty (low
/// above high) where nothing does. What lies within the gap is a band with round ends.
Interval shadow(const Segment& edge, double gap, double left, double right) {
  const Point a = edge.from.x <= edge.to.x ? edge.from : edge.to;
  const Point b = edge.from.x <= edge.to.x ? edge.to : edge.from;
  if (right <= a.x - gap || left >= b.x + gap) return {1, 0};
  const double length = geometry::distance(a, b);
  if (length <= 0) return {std::min(a.y, b.y) - gap, std::max(a.y, b.y) + gap};
  const Point normal{gap * (a.y - b.y) / length, gap * (b.x - a.x) / length};  // upwards
  auto round = [&](Point centre, double x) {
    const double d = x - centre.x;
    return std::sqrt(std::max(0.0, gap * gap - d * d));
  };
  // The upper limit rises along a's arc, runs straight, and falls along b's arc.
  auto limit = [&](double x, double sign) {
    const double from = a.x + sign * normal.x, to = b.x + sign * normal.x;
    if (x <= from) return a.y + sign * round(a, x);
    if (x >= to) return b.y + sign * round(b, x);
    return a.y + sign * normal.y + (x - from) * (b.y - a.y) / (b.x - a.x);
  };
  const double l = std::max(left, a.x - gap), r = std::min(right, b.x + gap);
  Interval result{std::min(limit(l, -1), limit(r, -1)), std::max(limit(l, 1), limit(r, 1))};
  // Its crest and trough lie at the end that is higher, or lower.
  const Point high = a.y > b.y ? a : b, low = a.y > b.y ? b : a;
  if (l <= high.x && high.x <= r) result.high = std::max(result.high, high.y + gap);
  if (l <= low.x && low.x <= r) result.low = std::min(result.low, low.y - gap);
  return result;
}

/// What `blocked` leaves of [0, width]. Sorts `blocked`.
Intervals rest_of(double width, Intervals& blocked) {
  std::sort(blocked.begin(), blocked.end(),
            [](const Interval& a, const Interval& b) { return a.low < b.low; });
  Intervals result;
  double reached = 0;
  for (const auto& interval : blocked) {
    if (interval.low > reached) result.push_back({reached, std::min(interval.low, width)});
    reached = std::max(reached, interval.high);
    if (reached >= width) return result;
  }
  result.push_back({reached, width});
  return result;
}

/// @param result  is overwritten; its room is used again
void common(const Intervals& a, const Intervals& b, Intervals& result) {
  result.clear();
  for (std::size_t i = 0, k = 0; i < a.size() && k < b.size();) {
    const double low = std::max(a[i].low, b[k].low), high = std::min(a[i].high, b[k].high);
    if (low < high) result.push_back({low, high});
    a[i].high < b[k].high ? ++i : ++k;
  }
}

std::vector<Segment> edges_of(const std::vector<geometry::Polygon>& outlines) {
  std::vector<Segment> result;
  auto add = [&](const geometry::Ring& ring) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      result.push_back({ring[k], ring[(k + 1) % ring.size()]});
    }
  };
  for (const auto& outline : outlines) {
    add(outline.outer);
    for (const auto& hole : outline.holes) add(hole);
  }
  return result;
}

/// Where columns end: at every corner less and plus the gap, and often enough in between.
std::vector<double> column_ends(double length, const std::vector<Segment>& edges, double gap) {
  std::vector<double> ends;
  for (int k = 0; k <= columns_at_least; ++k) ends.push_back(length * k / columns_at_least);
  for (const auto& edge : edges) {
    for (const double x : {edge.from.x - gap, edge.from.x + gap}) {
      if (x > 0 && x < length) ends.push_back(x);
    }
  }
  std::sort(ends.begin(), ends.end());
  const double least = ends.size() > many_ends ? narrowest_of_many_cm : narrowest_column_cm;
  const auto same = [least](double a, double b) { return b - a < least; };
  ends.erase(std::unique(ends.begin(), ends.end(), same), ends.end());
  ends.back() = length;
  return ends;
}

/// What every edge blocks of the columns that it comes near.
std::vector<Intervals> blocked_in_columns(const std::vector<double>& ends,
                                          const std::vector<Segment>& edges, double gap) {
  std::vector<Intervals> blocked(ends.size() - 1);
  for (const auto& edge : edges) {
    const double from = std::min(edge.from.x, edge.to.x) - gap;
    const double to = std::max(edge.from.x, edge.to.x) + gap;
    const auto first = std::upper_bound(ends.begin(), ends.end(), from);
    auto k = static_cast<std::size_t>(std::max<std::ptrdiff_t>(first - ends.begin() - 1, 0));
    for (; k + 1 < ends.size() && ends[k] < to; ++k) {
      const Interval interval = shadow(edge, gap, ends[k], ends[k + 1]);
      if (interval.low <= interval.high) blocked[k].push_back(interval);
    }
  }
  return blocked;
}

/// Whether a point lies in a piece: most lie in the box of none.
class Pieces {
 public:
  explicit Pieces(const std::vector<geometry::Polygon>& outlines) : outlines_(outlines) {
    for (const auto& outline : outlines) boxes_.push_back(geometry::bounding_box(outline.outer));
  }
  bool contain(Point p) const {
    for (std::size_t k = 0; k < boxes_.size(); ++k) {
      const Box& box = boxes_[k];
      if (p.x < box.low.x || p.x > box.high.x || p.y < box.low.y || p.y > box.high.y) continue;
      if (geometry::contains(outlines_[k], p)) return true;
    }
    return false;
  }

 private:
  const std::vector<geometry::Polygon>& outlines_;
  std::vector<Box> boxes_;
};

/// What is free over the whole width of a column.
Intervals free_in_column(double left, double right, double width, Intervals& blocked,
                         const Pieces& pieces, double gap) {
  Intervals result = rest_of(width, blocked);
  // No edge comes near what is left, so each stretch lies wholly inside or wholly outside; what
  // reaches the sheet's edge with a gap to all pieces lies outside.
  std::erase_if(result, [&](const Interval& stretch) {
    if (gap > 0 && (stretch.low <= 0 || stretch.high >= width)) return false;
    const Point middle{(left + right) / 2, (stretch.low + stretch.high) / 2};
    return pieces.contain(middle);
  });
  return result;
}

}  // namespace

Box largest_off_cut(double length_cm, double width_cm,
                    const std::vector<geometry::Polygon>& outlines, double gap_cm) {
  const auto edges = edges_of(outlines);
  const auto ends = column_ends(length_cm, edges, gap_cm);
  auto blocked = blocked_in_columns(ends, edges, gap_cm);
  const Pieces pieces(outlines);
  std::vector<Intervals> columns;
  for (std::size_t k = 0; k + 1 < ends.size(); ++k) {
    columns.push_back(free_in_column(ends[k], ends[k + 1], width_cm, blocked[k], pieces, gap_cm));
  }
  Box best;
  double most = 0;
  Intervals free, narrowed;
  for (std::size_t first = 0; first < columns.size(); ++first) {
    free = columns[first];
    for (std::size_t last = first; last < columns.size() && !free.empty(); ++last) {
      if (last > first) {
        common(free, columns[last], narrowed);
        std::swap(free, narrowed);
      }
      double tallest = 0;
      for (const auto& stretch : free) {
        const double height = stretch.high - stretch.low;
        tallest = std::max(tallest, height);
        const double area = height * (ends[last + 1] - ends[first]);
        if (area <= most) continue;
        most = area;
        best = {{ends[first], stretch.low}, {ends[last + 1], stretch.high}};
      }
      if (tallest * (length_cm - ends[first]) <= most) break;
    }
  }
  return best;
}

}  // namespace drapewright::cutting
