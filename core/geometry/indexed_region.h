#pragma once

#include <optional>

#include "core/geometry/distance.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// A region that is asked again and again how far a place lies from its edge. Its edges are indexed
/// when they are first asked for, so it costs nothing until then; not for several threads at once.
/// Refers to a region that outlives it.
class IndexedRegion {
 public:
  explicit IndexedRegion(const Region& region) : region_(region) {}

  bool contains(Point p) const { return geometry::contains(region_, p); }
  /// Radius of the largest circle round p that lies wholly in the region; 0 outside it.
  double room_cm(Point p) const { return contains(p) ? to_edge_cm(p) : 0; }
  /// Distance from p to the region: 0 inside it, infinite when it is empty.
  double distance_cm(Point p) const;

 private:
  double to_edge_cm(Point p) const;

  const Region& region_;
  mutable std::optional<EdgeIndex> edges_;
};

}  // namespace drapewright::geometry
