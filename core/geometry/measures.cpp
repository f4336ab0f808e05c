#include "core/geometry/measures.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/base/tolerances.h"

namespace drapewright::geometry {
namespace {

Point mean(std::span<const Point> points) {
  Point sum;
  for (const Point& p : points) sum = sum + p;
  return points.empty() ? sum : (1.0 / static_cast<double>(points.size())) * sum;
}

/// Area and first moment about `origin`. Taken about a point of the shape itself, so that a shape
/// far from the drawing's origin loses no digits.
struct Moment {
  double area = 0;
  Point first;
};

Moment moment(const Ring& ring, Point origin) {
  Moment sum;
  for (std::size_t i = 0, n = ring.size(); i < n; ++i) {
    const Point a = ring[i] - origin;
    const Point b = ring[i + 1 < n ? i + 1 : 0] - origin;
    const double twice = cross(a, b);
    sum.area += twice / 2;
    sum.first = sum.first + (twice / 6) * (a + b);
  }
  return sum;
}

void add(Moment& sum, const Ring& ring, double sign, Point origin) {
  const Moment part = moment(ring, origin);
  const double signed_by = part.area < 0 ? -sign : sign;
  sum.area += signed_by * part.area;
  sum.first = sum.first + signed_by * part.first;
}

Moment moment(const Region& region, Point origin) {
  Moment sum;
  for (const Polygon& polygon : region) {
    add(sum, polygon.outer, 1, origin);
    for (const Ring& hole : polygon.holes) add(sum, hole, -1, origin);
  }
  return sum;
}

/// One half of the hull: the chain that turns left from the first point to the last.
template <class Iterator>
void append_chain(Iterator begin, Iterator end, Ring& hull) {
  const std::size_t start = hull.size();
  for (Iterator p = begin; p != end; ++p) {
    while (hull.size() >= start + 2 &&
           cross(hull.back() - hull[hull.size() - 2], *p - hull.back()) <= 0) {
      hull.pop_back();
    }
    hull.push_back(*p);
  }
  hull.pop_back();  // it starts the other half
}

/// The pairs of points that are the farthest apart, but for rounding. More than a few are the
/// diameters of something round, which are all alike.
class FarthestPairs {
 public:
  void consider(Point a, Point b) {
    const double length = norm(b - a);
    if (length > longest_ + tolerance::collinear_cm) pairs_.clear();
    longest_ = std::max(longest_, length);
    if (length >= longest_ - tolerance::collinear_cm && pairs_.size() < enough) {
      pairs_.push_back({a, b});
    }
  }

  /// Of several, the one with the least extent at right angles: a choice that does not depend on
  /// where the shape lies, how it is turned and where its ring starts.
  Segment narrowest(const Ring& hull) const {
    if (pairs_.size() == 1) return pairs_.front();
    return *std::ranges::min_element(pairs_, {}, [&](const Segment& pair) {
      const Point along = pair.to - pair.from;
      const auto [low, high] = std::ranges::minmax(
          hull, {}, [&](Point point) { return cross(along, point - pair.from); });
      return cross(along, high - low);
    });
  }

 private:
  static constexpr std::size_t enough = 64;
  std::vector<Segment> pairs_;
  double longest_ = 0;
};

Point unit(double direction_deg) {
  return {std::cos(radians(direction_deg)), std::sin(radians(direction_deg))};
}

}  // namespace

double signed_area(const Ring& ring) { return ring.empty() ? 0 : moment(ring, ring.front()).area; }
double area(const Ring& ring) { return std::abs(signed_area(ring)); }
double area(const Polygon& polygon) {
  return std::accumulate(polygon.holes.begin(), polygon.holes.end(), area(polygon.outer),
                         [](double sum, const Ring& hole) { return sum - area(hole); });
}
double area(const Region& region) {
  return std::accumulate(region.begin(), region.end(), 0.0,
                         [](double sum, const Polygon& part) { return sum + area(part); });
}

double edge_length(const Ring& ring) {
  double sum = 0;
  for (std::size_t i = 0, n = ring.size(); i < n; ++i) {
    sum += distance(ring[i], ring[i + 1 < n ? i + 1 : 0]);
  }
  return sum;
}
double edge_length(const Polygon& polygon) {
  return std::accumulate(polygon.holes.begin(), polygon.holes.end(), edge_length(polygon.outer),
                         [](double sum, const Ring& hole) { return sum + edge_length(hole); });
}
double edge_length(const Region& region) {
  return std::accumulate(region.begin(), region.end(), 0.0,
                         [](double sum, const Polygon& part) { return sum + edge_length(part); });
}

Point centroid(const Ring& ring) { return centroid(Region{{ring, {}}}); }

Point centroid(const Region& region) {
  const std::vector<Point> points = outer_points(region);
  if (points.empty()) return {};
  const Point origin = points.front();
  const Moment sum = moment(region, origin);
  return sum.area > 0 ? origin + (1 / sum.area) * sum.first : mean(points);
}

Ring convex_hull(std::span<const Point> points) {
  Ring sorted(points.begin(), points.end());
  std::sort(sorted.begin(), sorted.end(),
            [](Point a, Point b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
  if (sorted.size() < 3) return sorted;
  Ring hull;
  append_chain(sorted.begin(), sorted.end(), hull);
  append_chain(sorted.rbegin(), sorted.rend(), hull);
  return hull;
}

std::vector<Point> outer_points(const Region& region) {
  std::vector<Point> points;
  for (const Polygon& polygon : region) {
    points.insert(points.end(), polygon.outer.begin(), polygon.outer.end());
  }
  return points;
}

Segment greatest_length(std::span<const Point> points) {
  const Ring hull = convex_hull(points);
  if (hull.empty()) return {};
  const std::size_t n = hull.size();
  const auto at = [&](std::size_t i) { return hull[i % n]; };
  if (n == 1) return {hull[0], hull[0]};
  FarthestPairs farthest;
  // Calipers: j runs round the hull to stay opposite to the edge from i. The neighbours of each
  // pair are tried too, so that edges parallel but for rounding cannot hide the longest one.
  for (std::size_t i = 0, j = 1; i < n; ++i) {
    j = std::max(j, i + 1);
    while (j < i + n && cross(at(i + 1) - at(i), at(j + 1) - at(j)) > 0) {
      farthest.consider(at(i), at(j++));
    }
    farthest.consider(at(i), at(j));
    farthest.consider(at(i), at(j + 1));
    farthest.consider(at(i + 1), at(j));
  }
  return farthest.narrowest(hull);
}

double least_width(std::span<const Point> points) {
  const Ring hull = convex_hull(points);
  const std::size_t n = hull.size();
  if (n < 3) return 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0, j = 1; i < n; ++i) {
    const Point edge = hull[(i + 1) % n] - hull[i];
    const auto height = [&](std::size_t k) { return cross(edge, hull[k % n] - hull[i]); };
    j = std::max(j, i + 1);
    while (j < i + n && height(j + 1) > height(j)) ++j;
    least = std::min(least, height(j) / norm(edge));
  }
  return least;
}

double extent_along(std::span<const Point> points, double direction_deg) {
  const Segment extremes = extremes_along(points, direction_deg);
  return dot(extremes.to - extremes.from, unit(direction_deg));
}

Segment extremes_along(std::span<const Point> points, double direction_deg) {
  if (points.empty()) return {};
  const Point along = unit(direction_deg);
  const auto [low, high] = std::minmax_element(points.begin(), points.end(), [&](Point a, Point b) {
    return dot(a, along) < dot(b, along);
  });
  return {*low, *high};
}

double direction_deg(Point a, Point b) {
  const double angle = degrees(std::atan2(b.y - a.y, b.x - a.x));
  const double positive = angle < 0 ? angle + 360 : angle;
  return positive < 360 ? positive : 0;  // a tiny negative angle rounds up to the full turn
}

Box bounding_box(std::span<const Point> points) {
  Box box{points.front(), points.front()};
  for (const Point& p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

}  // namespace drapewright::geometry
