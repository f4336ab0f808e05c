#pragma once

#include <cstdint>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::geometry::medial {

/// A corner on the grid. 32 bits hold 400 m of it.
struct GridPoint {
  std::int32_t x = 0;
  std::int32_t y = 0;
  friend bool operator==(const GridPoint&, const GridPoint&) = default;
};

inline Point real(GridPoint p) { return {static_cast<double>(p.x), static_cast<double>(p.y)}; }

/// Twice the signed area of a triangle, exactly.
inline std::int64_t turn(GridPoint a, GridPoint b, GridPoint c) {
  return (std::int64_t{b.x} - a.x) * (std::int64_t{c.y} - a.y) -
         (std::int64_t{b.y} - a.y) * (std::int64_t{c.x} - a.x);
}

/// Where the grid lies in the drawing. It hangs on the shape itself (its centroid and the corner
/// farthest from that), so that a moved shape is seen in the same way, and is then turned by an
/// odd angle, so that nothing that people or pixels draw is parallel to its axes.
class Frame {
 public:
  /// @param turn_rad added to the direction that the shape gives
  Frame(const Region& region, double turn_rad);
  Point to_grid(Point p) const;    ///< not rounded
  Point from_grid(Point p) const;  ///< the inverse

 private:
  Point centre_;
  Point axis_;
};

/// The edge of a region on the grid: corners in rings, the region on the left of every edge.
/// Edge i runs from corner i to corner next[i].
struct Outline {
  std::vector<GridPoint> corners;
  std::vector<int> next;
  std::vector<int> previous;
  std::vector<int> polygon;  ///< to which polygon of the region a corner belongs
  int polygons = 0;
  double stray = 0;    ///< how far it lies from the true edge at most, in grid units
  int lost_rings = 0;  ///< rings too thin for the grid

  int size() const { return static_cast<int>(corners.size()); }
};

/// @param thinning_cm see Thinned
Outline lay_on_grid(const Region& region, const Frame& frame, double thinning_cm);

}  // namespace drapewright::geometry::medial
