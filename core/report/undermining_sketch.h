#pragma once

#include <optional>

#include "core/geometry/distance.h"
#include "core/geometry/shape.h"
#include "core/wound/wound.h"

namespace drapewright::report {

/// Undermining and tunnels of one wound as they are drawn: found by walking along rays from the
/// wound's centre, so that each drawn point keeps its extent from the true edge.
class UnderminingSketch {
 public:
  /// @pre the outline has at least three points
  UnderminingSketch(const geometry::Ring& outline, geometry::Point centre,
                    double head_direction_deg);

  /// The pocket: out along its extent, back along the wound's edge.
  geometry::Polygon pocket(const wound::Undermining& undermining) const;
  /// From the wound's edge outwards.
  geometry::Segment tunnel(const wound::Tunnel& tunnel) const;

 private:
  geometry::Point at_extent(double direction_deg, double extent_cm) const;

  geometry::EdgeIndex edges_;
  geometry::Point centre_;
  double head_deg_;
  double reach_cm_;  ///< no point of the outline lies farther from the centre
};

}  // namespace drapewright::report
