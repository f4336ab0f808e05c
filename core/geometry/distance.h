#pragma once

#include <memory>
#include <vector>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

Point nearest_on(const Segment& segment, Point p);
bool contains(const Polygon& polygon, Point p);  ///< the edge counts as inside
bool contains(const Region& region, Point p);
double gap_between(const Box& a, const Box& b);  ///< no two points in them are nearer; 0: they meet

/// The edges of a region, indexed so that distances cost far less than a walk along them.
class EdgeIndex {
 public:
  /// @pre the region has at least one edge, or every query throws std::logic_error
  explicit EdgeIndex(const Region& region);
  explicit EdgeIndex(const std::vector<Segment>& edges);
  ~EdgeIndex();
  EdgeIndex(EdgeIndex&&) noexcept;
  EdgeIndex& operator=(EdgeIndex&&) noexcept;

  struct Hit {
    double distance_cm = 0;
    Point on_edge;
  };
  /// The edge point nearest to p.
  Hit nearest(Point p) const;
  bool empty() const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

/// Shortest way between the edges of two regions, and where: `from` on a, `to` on b. 0 where they
/// touch or overlap in their edges; a region inside another's inside is not at distance 0.
struct Gap {
  double distance_cm = 0;
  Segment shortest;
};
/// @throws std::invalid_argument when either region is empty
Gap gap_between_edges(const Region& a, const Region& b);

}  // namespace drapewright::geometry
