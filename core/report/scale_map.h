#pragma once

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::report {

/// How the drawing's cm (y up) lie on paper or screen in mm (y down).
struct ScaleMap {
  double mm_per_cm = 10;      ///< 10 is life size
  geometry::Point origin_mm;  ///< where (0, 0) cm lies

  geometry::Point to_mm(geometry::Point cm) const {
    return {origin_mm.x + mm_per_cm * cm.x, origin_mm.y - mm_per_cm * cm.y};
  }
  geometry::Point to_cm(geometry::Point mm) const {
    return {(mm.x - origin_mm.x) / mm_per_cm, (origin_mm.y - mm.y) / mm_per_cm};
  }
  geometry::Ring to_mm(const geometry::Ring& ring) const {
    geometry::Ring mapped;
    mapped.reserve(ring.size());
    for (const geometry::Point p : ring) mapped.push_back(to_mm(p));
    return mapped;
  }
  geometry::Polygon to_mm(const geometry::Polygon& polygon) const {
    geometry::Polygon mapped{to_mm(polygon.outer), {}};
    for (const geometry::Ring& hole : polygon.holes) mapped.holes.push_back(to_mm(hole));
    return mapped;
  }
};

/// A box of the drawing's cm, widened by `by` on every side.
inline geometry::Box widened(geometry::Box box, double by) {
  return {{box.low.x - by, box.low.y - by}, {box.high.x + by, box.high.y + by}};
}

}  // namespace drapewright::report
