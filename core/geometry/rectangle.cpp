#include "core/geometry/rectangle.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

constexpr double half_turn = 180;

Point unit(double angle) { return {std::cos(angle), std::sin(angle)}; }
Point left_of(Point v) { return {-v.y, v.x}; }

/// A hull corner that is farthest in a direction; it walks on as the direction turns to the left.
class Farthest {
 public:
  explicit Farthest(const Ring& hull) : hull_(&hull) {}
  Point towards(Point direction) {
    if (!started_) start(direction);
    // At most once round, whatever rounding says.
    for (std::size_t steps = 0; steps < hull_->size(); ++steps) {
      const std::size_t next = (at_ + 1) % hull_->size();
      if (dot((*hull_)[next] - (*hull_)[at_], direction) <= 0) break;
      at_ = next;
    }
    return (*hull_)[at_];
  }

 private:
  void start(Point direction) {
    started_ = true;
    const auto best = std::max_element(hull_->begin(), hull_->end(), [&](Point a, Point b) {
      return dot(a, direction) < dot(b, direction);
    });
    at_ = static_cast<std::size_t>(best - hull_->begin());
  }
  const Ring* hull_;
  std::size_t at_ = 0;
  bool started_ = false;
};

/// Calipers round a hull: its extents along a direction and across it.
class Calipers {
 public:
  explicit Calipers(const Ring& hull)
      : ends_{Farthest(hull), Farthest(hull), Farthest(hull), Farthest(hull)} {}
  /// @pre the direction turns to the left from call to call, by a full turn at most
  void turn_to(Point along) {
    const Point across = left_of(along);
    high_ = ends_[0].towards(along);
    far_ = ends_[1].towards(across);
    low_ = ends_[2].towards(-1 * along);
    near_ = ends_[3].towards(-1 * across);
  }
  /// The pairs that the extents are measured between: the extent along u is dot(u, length()).
  Point length() const { return high_ - low_; }
  Point width() const { return far_ - near_; }
  Point centre(Point along) const {
    const Point across = left_of(along);
    return dot(along, 0.5 * (high_ + low_)) * along + dot(across, 0.5 * (far_ + near_)) * across;
  }

 private:
  std::array<Farthest, 4> ends_;
  Point high_, low_, far_, near_;
};

Rectangle with_longer_side_first(Point centre, double along, double across, Point direction) {
  double angle = degrees(std::atan2(direction.y, direction.x)) + (across > along ? 90 : 0);
  angle = std::fmod(angle + 2 * half_turn, half_turn);
  return {centre, std::max(along, across), std::min(along, across), angle};
}

/// The angles in [0, pi] between which both extents are pieces of one cosine each.
std::vector<double> breaks(const Ring& hull) {
  std::vector<double> angles{0, pi / 2, pi};
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const Point edge = hull[(i + 1) % hull.size()] - hull[i];
    const double angle = std::fmod(std::atan2(edge.y, edge.x) + 2 * pi, pi / 2);
    angles.push_back(angle);
    angles.push_back(angle + pi / 2);
  }
  std::sort(angles.begin(), angles.end());
  return angles;
}

/// Looks for the angle at which the smaller of the two spare lengths is largest. Between two
/// breaks each spare length is a convex function of the angle (a constant less a cosine near its
/// top), so the smaller one is largest at a break or where both are equal, and nowhere else.
class BestAngle {
 public:
  BestAngle(double length_cm, double width_cm) : length_(length_cm), width_(width_cm) {}

  void search(const Calipers& calipers, double from, double to) {
    const Point l = calipers.length();
    const Point w = calipers.width();
    consider(calipers, from);
    consider(calipers, to);
    // Equal spare: l.x cos + l.y sin - length = w.y cos - w.x sin - width.
    const Point sum{l.x - w.y, l.y + w.x};
    const double size = norm(sum);
    if (size < std::abs(length_ - width_) || size <= 0) return;
    const double top = std::atan2(sum.y, sum.x);
    const double off = std::acos(std::clamp((length_ - width_) / size, -1.0, 1.0));
    for (const double angle : {top - off, top + off}) {
      const double positive = angle < 0 ? angle + 2 * pi : angle;
      if (positive > from && positive < to) consider(calipers, positive);
    }
  }
  double spare() const { return spare_; }
  double angle() const { return angle_; }
  Point centre() const { return centre_; }

 private:
  void consider(const Calipers& calipers, double angle) {
    const Point along = unit(angle);
    const double spare = std::min(length_ - dot(calipers.length(), along),
                                  width_ - dot(calipers.width(), left_of(along)));
    if (spare <= spare_) return;
    spare_ = spare;
    angle_ = angle;
    centre_ = calipers.centre(along);
  }
  double length_;
  double width_;
  double spare_ = -std::numeric_limits<double>::infinity();
  double angle_ = 0;
  Point centre_;
};

void require_side(double cm) {
  if (!(std::isfinite(cm) && cm > 0)) throw std::invalid_argument("a side is not > 0");
}

/// The hull about its own middle, so that shapes far from the origin lose no digits.
struct CentredHull {
  Ring hull;
  Point middle;
  explicit CentredHull(std::span<const Point> points) : hull(convex_hull(points)) {
    const Box box = bounding_box(points);
    middle = 0.5 * (box.low + box.high);
    for (Point& p : hull) p = p - middle;
  }
};

}  // namespace

Rectangle smallest_enclosing_rectangle(std::span<const Point> points) {
  const CentredHull shape(points);
  const Ring& hull = shape.hull;
  if (hull.size() < 3) {
    const Point along = hull.back() - hull.front();
    const double length = norm(along);
    return with_longer_side_first(shape.middle, length, 0, length > 0 ? along : Point{1, 0});
  }
  Calipers calipers(hull);
  Rectangle best;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const Point edge = hull[(i + 1) % hull.size()] - hull[i];
    const Point along = (1 / norm(edge)) * edge;
    calipers.turn_to(along);
    const double length = dot(calipers.length(), along);
    const double width = dot(calipers.width(), left_of(along));
    if (length * width >= least) continue;
    least = length * width;
    best = with_longer_side_first(shape.middle + calipers.centre(along), length, width, along);
  }
  return best;
}

std::optional<Rectangle> place_in_rectangle(std::span<const Point> points, double length_cm,
                                            double width_cm, double slack_cm) {
  require_side(length_cm);
  require_side(width_cm);
  if (!(std::isfinite(slack_cm) && slack_cm >= 0)) throw std::invalid_argument("slack is not >= 0");
  if (points.empty()) return Rectangle{{}, length_cm, width_cm, 0};
  const CentredHull shape(points);
  const std::vector<double> angles = breaks(shape.hull);
  Calipers calipers(shape.hull);
  BestAngle best(length_cm, width_cm);
  for (std::size_t i = 0; i + 1 < angles.size(); ++i) {
    calipers.turn_to(unit((angles[i] + angles[i + 1]) / 2));
    best.search(calipers, angles[i], angles[i + 1]);
  }
  if (best.spare() < -slack_cm) return std::nullopt;
  const double angle = std::fmod(degrees(best.angle()), half_turn);
  return Rectangle{shape.middle + best.centre(), length_cm, width_cm, angle};
}

Ring corners(const Rectangle& r) {
  const Point along = unit(radians(r.angle_deg));
  const Point l = (r.length_cm / 2) * along;
  const Point w = (r.width_cm / 2) * left_of(along);
  return {r.centre - l - w, r.centre + l - w, r.centre + l + w, r.centre - l + w};
}

}  // namespace drapewright::geometry
