#include "core/geometry/offset.h"

#include <algorithm>

#include "core/geometry/medial/clearance_map.h"
#include "core/geometry/offset_by_buffer.h"

namespace drapewright::geometry {
namespace {

/// Thinning may take no more than its share of the error that is allowed.
double thinning_for(double max_error_cm) {
  return std::min(tolerance::thinning_cm, max_error_cm / 5);
}

}  // namespace

Offset inset(const ClearanceMap& map, double distance_cm, double max_error_cm) {
  require_offset_domain(map.region(), distance_cm, max_error_cm);
  if (distance_cm <= 0 || map.region().empty()) return {.region = map.region(), .verified = true};
  Offset offset = map.inset(distance_cm, max_error_cm);
  if (offset.verified) return offset;
  return inset_by_buffer(map.region(), distance_cm, max_error_cm);
}

Offset outset(const ClearanceMap& map, double distance_cm, double max_error_cm) {
  require_offset_domain(map.region(), distance_cm, max_error_cm);
  if (distance_cm <= 0 || map.region().empty()) return {.region = map.region(), .verified = true};
  Offset offset = map.outset(distance_cm, max_error_cm);
  if (offset.verified) return offset;
  return outset_by_buffer(map.region(), distance_cm, max_error_cm);
}

Offset inset(const Region& region, double distance_cm, double max_error_cm) {
  require_offset_domain(region, distance_cm, max_error_cm);
  return inset(ClearanceMap(region, thinning_for(max_error_cm)), distance_cm, max_error_cm);
}

Offset outset(const Region& region, double distance_cm, double max_error_cm) {
  require_offset_domain(region, distance_cm, max_error_cm);
  return outset(ClearanceMap(region, thinning_for(max_error_cm)), distance_cm, max_error_cm);
}

}  // namespace drapewright::geometry
