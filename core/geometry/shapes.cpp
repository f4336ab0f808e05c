#include "core/geometry/shapes.h"

#include <cmath>
#include <stdexcept>
#include <string>
#include <utility>

namespace drapewright::geometry {
namespace {

void require_size(double cm, const char* what) {
  if (!(std::isfinite(cm) && cm > 0))
    throw std::invalid_argument(std::string(what) + " is not > 0");
}

template <class Map>
Ring mapped(Ring ring, Map map) {
  for (Point& p : ring) p = map(p);
  return ring;
}

template <class Map>
Region mapped(Region region, Map map) {
  for (Polygon& polygon : region) {
    polygon.outer = mapped(std::move(polygon.outer), map);
    for (Ring& hole : polygon.holes) hole = mapped(std::move(hole), map);
  }
  return region;
}

auto turning(double angle_deg, Point about) {
  const double cosine = std::cos(radians(angle_deg));
  const double sine = std::sin(radians(angle_deg));
  return [=](Point p) {
    const Point v = p - about;
    return about + Point{cosine * v.x - sine * v.y, sine * v.x + cosine * v.y};
  };
}

}  // namespace

Ring ellipse(double length_cm, double width_cm, Point centre, double angle_deg, int corners) {
  require_size(length_cm, "an ellipse's length");
  require_size(width_cm, "an ellipse's width");
  if (corners < 8) throw std::invalid_argument("an ellipse needs 8 corners or more");
  // A polygon of n points on the ellipse has n/2 sin(2 pi/n) / pi of its area; grown by the root
  // of what is missing it has all of it.
  const double step = 2 * pi / corners;
  const double growth = std::sqrt(step / std::sin(step));
  Ring ring;
  ring.reserve(static_cast<std::size_t>(corners));
  for (int i = 0; i < corners; ++i) {
    ring.push_back({centre.x + growth * length_cm / 2 * std::cos(i * step),
                    centre.y + growth * width_cm / 2 * std::sin(i * step)});
  }
  return turned(std::move(ring), angle_deg, centre);
}

Ring rectangle(double length_cm, double width_cm, Point centre, double angle_deg) {
  require_size(length_cm, "a rectangle's length");
  require_size(width_cm, "a rectangle's width");
  const Point half{length_cm / 2, width_cm / 2};
  Ring ring{{-half.x, -half.y}, {half.x, -half.y}, {half.x, half.y}, {-half.x, half.y}};
  return turned(moved(std::move(ring), centre), angle_deg, centre);
}

Ring circle(double diameter_cm, Point centre, int corners) {
  return ellipse(diameter_cm, diameter_cm, centre, 0, corners);
}

Point moved(Point p, Point by) { return p + by; }
Ring moved(Ring ring, Point by) {
  return mapped(std::move(ring), [by](Point p) { return p + by; });
}
Region moved(Region region, Point by) {
  return mapped(std::move(region), [by](Point p) { return p + by; });
}

Point turned(Point p, double angle_deg, Point about) {
  return angle_deg == 0 ? p : turning(angle_deg, about)(p);
}
Ring turned(Ring ring, double angle_deg, Point about) {
  return angle_deg == 0 ? ring : mapped(std::move(ring), turning(angle_deg, about));
}
Region turned(Region region, double angle_deg, Point about) {
  return angle_deg == 0 ? region : mapped(std::move(region), turning(angle_deg, about));
}

}  // namespace drapewright::geometry
