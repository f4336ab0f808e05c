#pragma once

#include <cstddef>

#include "core/geometry/shape.h"

namespace drapewright::tracing {

/// A place on a ring's edge: on the edge from corner `edge` to the next, `part` of the way.
struct EdgePlace {
  std::size_t edge = 0;
  double part = 0;  ///< [0, 1)
  geometry::Point at;
  double distance_cm = 0;  ///< from what was asked about
  double along() const { return static_cast<double>(edge) + part; }
};

/// @pre the ring is not empty
EdgePlace nearest_on_edge(const geometry::Ring& ring, geometry::Point p);

/// The ring's points from one place on its edge to another in its own order, both ends included.
geometry::Ring stretch_between(const geometry::Ring& ring, const EdgePlace& from,
                               const EdgePlace& to);

}  // namespace drapewright::tracing
