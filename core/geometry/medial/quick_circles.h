#pragma once

#include <boost/polygon/voronoi.hpp>
#include <cmath>
#include <cstdint>

namespace drapewright::geometry::medial {

/// Boost's Voronoi builder with less exact computing of circles.
///
/// Boost computes each circle through three sites in doubles with a bound on its error, and again
/// in integers of 2,048 bits where that bound passes 64 units in the last place. On outlines with
/// soft bends that is nearly everywhere, and two thirds of the time goes into it, for digits far
/// below the grid. Here the doubles are believed when the circle is seen to touch its three sites.
/// Every diagram is checked before it is used; what fails is built again in Boost's own way.
struct QuickTraits : boost::polygon::detail::voronoi_ctype_traits<std::int32_t> {};

using QuickBuilder = boost::polygon::voronoi_builder<std::int32_t, QuickTraits>;
using ExactBuilder = boost::polygon::voronoi_builder<std::int32_t>;

using BoostSite = boost::polygon::detail::site_event<std::int32_t>;
using BoostCircle = boost::polygon::detail::circle_event<double>;

/// Distance from a circle's centre to a corner or to the line through an edge, less its radius.
inline double gap(const BoostCircle& circle, const BoostSite& site) {
  const double x = circle.x() - site.x0();
  const double y = circle.y() - site.y0();
  const double radius = circle.lower_x() - circle.x();
  if (!site.is_segment()) return std::sqrt(x * x + y * y) - radius;
  const double along_x = static_cast<double>(site.x1()) - site.x0();
  const double along_y = static_cast<double>(site.y1()) - site.y0();
  return std::abs(along_x * y - along_y * x) / std::sqrt(along_x * along_x + along_y * along_y) -
         radius;
}

inline bool touches(const BoostCircle& circle, const BoostSite& site) {
  const double radius = circle.lower_x() - circle.x();
  return std::abs(gap(circle, site)) <= 1e-6 + 1e-12 * radius;  // also refuses what is no number
}

}  // namespace drapewright::geometry::medial

namespace boost::polygon::detail {

/// Stands in for Boost's exact functor, and asks it only where the circle does not touch.
template <>
template <>
class voronoi_predicates<drapewright::geometry::medial::QuickTraits>::mp_circle_formation_functor<
    site_event<std::int32_t>, circle_event<double>> {
  using Site = site_event<std::int32_t>;
  using Circle = circle_event<double>;
  static bool good(const Circle& c, const Site& s1, const Site& s2, const Site& s3) {
    using drapewright::geometry::medial::touches;
    return touches(c, s1) && touches(c, s2) && touches(c, s3);
  }

 public:
  void ppp(const Site& s1, const Site& s2, const Site& s3, Circle& circle, bool x, bool y,
           bool lower) {
    if (!good(circle, s1, s2, s3)) exact_.ppp(s1, s2, s3, circle, x, y, lower);
  }
  void pps(const Site& s1, const Site& s2, const Site& s3, int index, Circle& circle, bool x,
           bool y, bool lower) {
    if (!good(circle, s1, s2, s3)) exact_.pps(s1, s2, s3, index, circle, x, y, lower);
  }
  void pss(const Site& s1, const Site& s2, const Site& s3, int index, Circle& circle, bool x,
           bool y, bool lower) {
    if (!good(circle, s1, s2, s3)) exact_.pss(s1, s2, s3, index, circle, x, y, lower);
  }
  void sss(const Site& s1, const Site& s2, const Site& s3, Circle& circle, bool x, bool y,
           bool lower) {
    if (!good(circle, s1, s2, s3)) exact_.sss(s1, s2, s3, circle, x, y, lower);
  }

 private:
  voronoi_predicates<voronoi_ctype_traits<std::int32_t>>::mp_circle_formation_functor<Site, Circle>
      exact_;
};

}  // namespace boost::polygon::detail
