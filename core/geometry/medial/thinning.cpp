#include "core/geometry/medial/thinning.h"

#include <algorithm>

namespace drapewright::geometry::medial {
namespace {

/// The directions from an anchor that pass within a tolerance of every point seen so far.
class Cone {
 public:
  Cone(Point anchor, double tolerance) : anchor_(anchor), tolerance_(tolerance) {}

  bool admits(Point p) const {
    const Point v = p - anchor_;
    const double length = norm(v);
    if (length < farthest_) return false;  // a chord must not double back
    return !narrowed_ || (cross(low_, v) >= 0 && cross(v, high_) >= 0);
  }

  void narrow(Point p) {
    const Point v = p - anchor_;
    const double length = norm(v);
    farthest_ = std::max(farthest_, length);
    if (length <= tolerance_) return;  // any direction passes near enough
    const double sine = tolerance_ / length;
    const double cosine = std::sqrt(1 - sine * sine);
    const Point low{cosine * v.x + sine * v.y, cosine * v.y - sine * v.x};
    const Point high{cosine * v.x - sine * v.y, cosine * v.y + sine * v.x};
    if (!narrowed_ || cross(low_, low) > 0) low_ = low;
    if (!narrowed_ || cross(high, high_) > 0) high_ = high;
    narrowed_ = true;
  }

 private:
  Point anchor_;
  double tolerance_;
  Point low_{};
  Point high_{};
  double farthest_ = 0;
  bool narrowed_ = false;
};

double distance_to(Point from, Point to, Point p) {
  const Point along = to - from;
  const double length2 = dot(along, along);
  const double t = length2 > 0 ? std::clamp(dot(p - from, along) / length2, 0.0, 1.0) : 0.0;
  return distance(p, from + t * along);
}

}  // namespace

Thinned thinned(const Ring& ring, std::size_t start, double tolerance) {
  const std::size_t count = ring.size();
  if (count <= 4 || !(tolerance > 0)) return {ring, 0};
  const auto at = [&](std::size_t i) { return ring[(start + i) % count]; };

  Thinned result;
  result.ring.push_back(at(0));
  std::size_t anchor = 0;
  while (anchor < count) {
    Cone cone(at(anchor), tolerance);
    cone.narrow(at(anchor + 1));
    std::size_t end = anchor + 1;
    while (end < count && cone.admits(at(end + 1))) cone.narrow(at(++end));
    for (std::size_t i = anchor + 1; i < end; ++i)
      result.stray = std::max(result.stray, distance_to(at(anchor), at(end), at(i)));
    if (end < count) result.ring.push_back(at(end));
    anchor = end;
  }
  if (result.ring.size() < 3) return {ring, 0};
  return result;
}

}  // namespace drapewright::geometry::medial
