#include "core/geometry/indexed_region.h"

#include <limits>

namespace drapewright::geometry {

double IndexedRegion::to_edge_cm(Point p) const {
  if (!edges_) edges_.emplace(region_);
  return edges_->nearest(p).distance_cm;
}

double IndexedRegion::distance_cm(Point p) const {
  if (region_.empty()) return std::numeric_limits<double>::infinity();
  return contains(p) ? 0 : to_edge_cm(p);
}

}  // namespace drapewright::geometry
