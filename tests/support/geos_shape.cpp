#include "tests/support/geos_shape.h"

#include <geos_c.h>

#include <stdexcept>
#include <string>

namespace drapewright::support {
namespace {

/// GEOS's handle, one for each thread, with its last complaint.
struct Context {
  Context() : handle(GEOS_init_r()) {
    GEOSContext_setErrorMessageHandler_r(
        handle,
        [](const char* message, void* self) { static_cast<Context*>(self)->complaint = message; },
        this);
  }
  ~Context() { GEOS_finish_r(handle); }
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;

  GEOSContextHandle_t handle;
  std::string complaint;
};

Context& context() {
  thread_local Context one;
  return one;
}

GEOSContextHandle_t geos() { return context().handle; }

[[noreturn]] void fail() { throw std::runtime_error("GEOS: " + context().complaint); }

GEOSGeometry* checked(GEOSGeometry* made) {
  if (made == nullptr) fail();
  return made;
}

void require(int status) {
  if (status == 0) fail();
}

bool truth(char answer) {
  if (answer != 0 && answer != 1) fail();
  return answer == 1;
}

GEOSCoordSequence* sequence_of(const std::vector<geometry::Point>& points, bool closed) {
  const auto count = static_cast<unsigned>(points.size() + (closed ? 1 : 0));
  GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(geos(), count, 2);
  for (unsigned i = 0; i < count; ++i) {
    const geometry::Point p = points[i % points.size()];
    GEOSCoordSeq_setXY_r(geos(), sequence, i, p.x, p.y);
  }
  return sequence;
}

GEOSGeometry* ring_of(const geometry::Ring& ring) {
  return checked(GEOSGeom_createLinearRing_r(geos(), sequence_of(ring, true)));
}

GEOSGeometry* polygon_of(const geometry::Polygon& polygon) {
  std::vector<GEOSGeometry*> holes;
  for (const geometry::Ring& hole : polygon.holes) holes.push_back(ring_of(hole));
  return checked(GEOSGeom_createPolygon_r(geos(), ring_of(polygon.outer), holes.data(),
                                          static_cast<unsigned>(holes.size())));
}

GEOSGeometry* collection_of(const geometry::Region& region) {
  std::vector<GEOSGeometry*> parts;
  for (const geometry::Polygon& polygon : region) parts.push_back(polygon_of(polygon));
  return checked(GEOSGeom_createCollection_r(geos(), GEOS_MULTIPOLYGON, parts.data(),
                                             static_cast<unsigned>(parts.size())));
}

}  // namespace

GeosShape::GeosShape(GEOSGeom_t* geometry)
    : geometry_(checked(geometry), [](GEOSGeom_t* g) { GEOSGeom_destroy_r(geos(), g); }) {}

GeosShape::GeosShape(const geometry::Region& region) : GeosShape(collection_of(region)) {}

GeosShape::GeosShape(geometry::Point point)
    : GeosShape(GEOSGeom_createPointFromXY_r(geos(), point.x, point.y)) {}

GeosShape::GeosShape(const geometry::Segment& segment)
    : GeosShape(
          GEOSGeom_createLineString_r(geos(), sequence_of({segment.from, segment.to}, false))) {}

bool GeosShape::is_valid() const { return truth(GEOSisValid_r(geos(), geometry_.get())); }
bool GeosShape::is_empty() const { return truth(GEOSisEmpty_r(geos(), geometry_.get())); }

double GeosShape::area() const {
  double value = 0;
  require(GEOSArea_r(geos(), geometry_.get(), &value));
  return value;
}

double GeosShape::edge_length() const {
  double value = 0;
  require(GEOSLength_r(geos(), geometry_.get(), &value));
  return value;
}

int GeosShape::part_count() const {
  return is_empty() ? 0 : GEOSGetNumGeometries_r(geos(), geometry_.get());
}

GeosShape GeosShape::made_valid() const {
  const GeosShape valid(GEOSMakeValid_r(geos(), geometry_.get()));
  if (GEOSGeomTypeId_r(geos(), valid.geometry_.get()) != GEOS_GEOMETRYCOLLECTION) return valid;
  GeosShape areas;
  for (int i = 0; i < valid.part_count(); ++i) {
    const GEOSGeometry* part = GEOSGetGeometryN_r(geos(), valid.geometry_.get(), i);
    double area = 0;
    require(GEOSArea_r(geos(), part, &area));
    if (area > 0) areas = areas | GeosShape(GEOSGeom_clone_r(geos(), part));
  }
  return areas;
}

GeosShape GeosShape::buffered(double distance_cm, int segments) const {
  return GeosShape(GEOSBuffer_r(geos(), geometry_.get(), distance_cm, segments));
}

GeosShape GeosShape::edges() const { return GeosShape(GEOSBoundary_r(geos(), geometry_.get())); }

GeosShape GeosShape::operator|(const GeosShape& other) const {
  return GeosShape(GEOSUnion_r(geos(), geometry_.get(), other.geometry_.get()));
}

GeosShape GeosShape::operator&(const GeosShape& other) const {
  return GeosShape(GEOSIntersection_r(geos(), geometry_.get(), other.geometry_.get()));
}

GeosShape GeosShape::operator-(const GeosShape& other) const {
  return GeosShape(GEOSDifference_r(geos(), geometry_.get(), other.geometry_.get()));
}

bool GeosShape::covers(const GeosShape& other) const {
  return truth(GEOSCovers_r(geos(), geometry_.get(), other.geometry_.get()));
}

double GeosShape::distance(const GeosShape& other) const {
  // The indexed distance is that of the edges: it does not see one shape inside the other.
  if (truth(GEOSIntersects_r(geos(), geometry_.get(), other.geometry_.get()))) return 0;
  double value = 0;
  require(GEOSDistanceIndexed_r(geos(), geometry_.get(), other.geometry_.get(), &value));
  return value;
}

double GeosShape::inscribed_radius(double tolerance_cm) const {
  if (is_empty()) return 0;
  const GeosShape radius(
      GEOSMaximumInscribedCircle_r(geos(), geometry_.get(), tolerance_cm));  // centre to edge
  return radius.edge_length();
}

}  // namespace drapewright::support
