#include "tests/reference/geometry/samples.h"

#include <algorithm>
#include <limits>

#include "core/geometry/distance.h"
#include "core/geometry/validity.h"

namespace drapewright::reference {
namespace {

std::vector<Sample> tidied_outlines() {
  std::vector<Sample> all;
  for (const support::GeneratedOutline& outline : support::generated_outlines(500)) {
    all.push_back({outline.name, geometry::tidy(outline.polygon).region});
  }
  return all;
}

double walked_distance(const geometry::Ring& ring, geometry::Point p) {
  double best = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const geometry::Segment edge{ring[i], ring[(i + 1) % ring.size()]};
    best = std::min(best, distance(p, nearest_on(edge, p)));
  }
  return best;
}

}  // namespace

const std::vector<Sample>& samples() {
  static const std::vector<Sample> all = tidied_outlines();
  return all;
}

double walked_distance(const geometry::Region& region, geometry::Point p) {
  double best = std::numeric_limits<double>::infinity();
  for (const geometry::Polygon& polygon : region) {
    best = std::min(best, walked_distance(polygon.outer, p));
    for (const geometry::Ring& hole : polygon.holes) {
      best = std::min(best, walked_distance(hole, p));
    }
  }
  return best;
}

double walked_depth(const geometry::Region& region, geometry::Point p) {
  return (contains(region, p) ? 1 : -1) * walked_distance(region, p);
}

}  // namespace drapewright::reference
