#include "core/dressing/border.h"

#include <algorithm>

#include "core/base/tolerances.h"
#include "core/geometry/clock.h"
#include "core/geometry/distance.h"

namespace drapewright::dressing {
namespace {

class BorderSearch {
 public:
  BorderSearch(const geometry::Region& no_film, double border_cm, geometry::Point centre,
               double head_deg)
      : zones_(no_film), edges_(no_film), centre_(centre), head_deg_(head_deg) {
    left_.least_cm = border_cm;
    left_.by_clock_cm.fill(border_cm);
  }

  void walk(const geometry::Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const geometry::Point from = ring[i];
      const geometry::Point to = ring[(i + 1) % ring.size()];
      halve(from, measure(from), to, measure(to));
    }
  }

  /// A zone that lies wholly inside a wound comes near no edge, yet no film closes over it.
  void find_zones_inside(const geometry::Region& wounds) {
    for (const geometry::Polygon& zone : zones_) {
      if (geometry::contains(wounds, zone.outer.front())) measure(zone.outer.front());
    }
  }

  const BorderLeft& result() const { return left_; }

 private:
  /// Distance of an edge point to the zones; enters it into the records of its hour.
  double measure(geometry::Point p) {
    const auto hit = edges_.nearest(p);
    const double distance_cm = geometry::contains(zones_, p) ? 0 : hit.distance_cm;
    double& hour = hour_of(p);
    hour = std::min(hour, distance_cm);
    if (distance_cm < left_.least_cm) {
      left_.least_cm = distance_cm;
      left_.least_line = geometry::Segment{p, distance_cm == 0 ? p : hit.on_edge};
    }
    return distance_cm;
  }

  double& hour_of(geometry::Point p) {
    return left_
        .by_clock_cm[static_cast<std::size_t>(geometry::clock_sector(centre_, p, head_deg_) - 1)];
  }

  /// A distance changes no faster than the point moves: that bounds what lies between two points.
  void halve(geometry::Point a, double a_cm, geometry::Point b, double b_cm) {
    const double length_cm = geometry::distance(a, b);
    const double lowest_cm = (a_cm + b_cm - length_cm) / 2;
    // An hour's sector is convex: an edge between two of its points stays in it.
    const bool one_hour = &hour_of(a) == &hour_of(b);
    const double to_beat_cm = one_hour ? hour_of(a) : highest_hour_cm();
    if (to_beat_cm == 0 || lowest_cm >= to_beat_cm - tolerance::circle_cm) return;
    if (length_cm < tolerance::circle_cm) return;
    const geometry::Point middle = 0.5 * (a + b);
    const double middle_cm = measure(middle);
    halve(a, a_cm, middle, middle_cm);
    halve(middle, middle_cm, b, b_cm);
  }

  double highest_hour_cm() const { return *std::ranges::max_element(left_.by_clock_cm); }

  const geometry::Region& zones_;
  geometry::EdgeIndex edges_;
  geometry::Point centre_;
  double head_deg_;
  BorderLeft left_;
};

}  // namespace

BorderLeft border_left(const geometry::Region& wounds, const geometry::Region& no_film,
                       double border_cm, geometry::Point centre, double head_deg) {
  BorderLeft left;
  left.least_cm = border_cm;
  left.by_clock_cm.fill(border_cm);
  if (no_film.empty()) return left;
  BorderSearch search(no_film, border_cm, centre, head_deg);
  for (const geometry::Polygon& polygon : wounds) {
    search.walk(polygon.outer);
    for (const geometry::Ring& hole : polygon.holes) search.walk(hole);
  }
  search.find_zones_inside(wounds);
  return search.result();
}

}  // namespace drapewright::dressing
