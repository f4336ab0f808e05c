#pragma once

#include <memory>
#include <vector>

#include "core/geometry/shape.h"

struct GEOSGeom_t;

namespace drapewright::support {

/// A shape as GEOS sees it: what the tests compare with. Nothing of core's own computing is used.
/// Every function throws std::runtime_error with GEOS's own words where GEOS fails.
class GeosShape {
 public:
  GeosShape() : GeosShape(geometry::Region{}) {}
  explicit GeosShape(const geometry::Region& region);
  explicit GeosShape(const geometry::Polygon& polygon) : GeosShape(geometry::Region{polygon}) {}
  explicit GeosShape(geometry::Point point);
  explicit GeosShape(const geometry::Segment& segment);

  bool is_valid() const;
  bool is_empty() const;
  double area() const;
  double edge_length() const;
  int part_count() const;

  /// Repaired by GEOS's own rules: self-touching rings split, spikes without width dropped.
  GeosShape made_valid() const;
  /// All points within `distance_cm`; negative: the part that is as far from the edge.
  /// @param segments  chords to a quarter circle
  GeosShape buffered(double distance_cm, int segments = 64) const;
  GeosShape edges() const;
  GeosShape operator|(const GeosShape& other) const;
  GeosShape operator&(const GeosShape& other) const;
  GeosShape operator-(const GeosShape& other) const;

  bool covers(const GeosShape& other) const;
  /// Shortest way between the two; 0 where they share a point or one lies in the other.
  double distance(const GeosShape& other) const;
  /// Radius of the largest circle inside, to `tolerance_cm`.
  double inscribed_radius(double tolerance_cm) const;

 private:
  explicit GeosShape(GEOSGeom_t* geometry);
  std::shared_ptr<GEOSGeom_t> geometry_;
};

}  // namespace drapewright::support
