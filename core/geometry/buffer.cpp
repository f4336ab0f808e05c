#include "core/geometry/buffer.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <cmath>
#include <utility>

BOOST_GEOMETRY_REGISTER_POINT_2D(drapewright::geometry::Point, double, cs::cartesian, x, y)

namespace drapewright::geometry {
namespace {

namespace bg = boost::geometry;
using BoostPolygon = bg::model::polygon<Point, false, false>;  // counter-clockwise, open
using BoostRegion = bg::model::multi_polygon<BoostPolygon>;

/// Boost thins what it buffers at a thousandth of the distance unless told otherwise: 0.005 cm at
/// a border of 5 cm. The outlines that come here have been thinned already, within bounds.
class Distance : public bg::strategy::buffer::distance_symmetric<double> {
 public:
  using distance_symmetric::distance_symmetric;
  double simplify_distance() const { return 0; }
};

BoostRegion to_boost(const Region& region) {
  BoostRegion result;
  for (const Polygon& polygon : region) {
    BoostPolygon part;
    part.outer().assign(polygon.outer.begin(), polygon.outer.end());
    for (const Ring& hole : polygon.holes) {
      part.inners().emplace_back();
      part.inners().back().assign(hole.begin(), hole.end());
    }
    result.push_back(std::move(part));
  }
  return result;
}

Region from_boost(const BoostRegion& region) {
  Region result;
  for (const BoostPolygon& polygon : region) {
    Polygon part{Ring(polygon.outer().begin(), polygon.outer().end()), {}};
    for (const auto& hole : polygon.inners()) part.holes.emplace_back(hole.begin(), hole.end());
    result.push_back(std::move(part));
  }
  return result;
}

}  // namespace

Region unverified_buffer(const Region& region, double distance_cm, int points_per_circle) {
  const auto points = static_cast<std::size_t>(points_per_circle);
  BoostRegion result;
  bg::buffer(to_boost(region), result, Distance(distance_cm), bg::strategy::buffer::side_straight(),
             bg::strategy::buffer::join_round(points), bg::strategy::buffer::end_round(points),
             bg::strategy::buffer::point_circle(points));
  return from_boost(result);
}

}  // namespace drapewright::geometry
