#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

Point nearest_on(const Segment& segment, Point p);
bool contains(const Polygon& polygon, Point p);  ///< the edge counts as inside
bool contains(const Region& region, Point p);
double gap_between(const Box& a, const Box& b);  ///< no two points in them are nearer; 0: they meet

/// A part of a segment, as shares of it from 0 to 1.
struct Part {
  double from = 0;
  double to = 1;
};
/// The part of `segment` within `within_cm` (>= 0) of `edge`: a single one, since what is near an
/// edge is convex. Nothing where it comes no nearer.
std::optional<Part> part_within(const Segment& segment, const Segment& edge, double within_cm);

/// Shortest way between two edges, and where.
struct Gap {
  double distance_cm = 0;
  Segment shortest;
};

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
  /// The shortest way from `segment` to the edges (and back: `from` on the segment), if it is
  /// shorter than `below_cm`.
  std::optional<Gap> gap_to(const Segment& segment, double below_cm) const;
  /// The parts of `segment` within `within_cm` of an edge, apart from each other and in order.
  std::vector<Part> parts_within(const Segment& segment, double within_cm) const;
  bool empty() const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

/// Shortest way between the edges of two regions, and where: `from` on a, `to` on b. 0 where they
/// touch or overlap in their edges; a region inside another's inside is not at distance 0.
/// @throws std::invalid_argument when either region is empty
Gap gap_between_edges(const Region& a, const Region& b);

}  // namespace drapewright::geometry
