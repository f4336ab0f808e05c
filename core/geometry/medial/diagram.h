#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/geometry/medial/outline.h"

namespace drapewright::geometry::medial {

enum class Side : std::uint8_t { edge, inside, outside };

/// A point with three or more nearest sites, a corner of the outline (clearance 0), or the lowest
/// point of the clearance along an edge of the diagram.
struct Vertex {
  Point at;
  double clearance = 0;  ///< distance to the outline
  Side side = Side::edge;
};

/// One side of an edge of the diagram: it runs counter-clockwise around the cell of `site`.
/// Half-edges come in pairs: the other side of e is e ^ 1.
struct HalfEdge {
  int from = 0;
  int next = 0;
  int site = 0;
};

/// The Voronoi diagram of an outline's corners and edges: which of them is nearest, everywhere.
/// Sites 0 .. n-1 are the corners, n .. 2n-1 the edges of the outline. All lengths in grid units.
///
/// Edges of the diagram are cut at the lowest point of their clearance, so that clearance rises or
/// falls strictly along every half-edge (or stays, between parallel edges): whatever is asked of
/// the diagram then follows from its vertices. One vertex stands for infinity.
struct Diagram {
  Outline outline;
  std::vector<Point> direction;  ///< unit vector of each edge of the outline
  std::vector<Vertex> vertices;
  std::vector<HalfEdge> edges;
  int infinity = 0;

  int edge_count() const { return static_cast<int>(edges.size()); }
  const Vertex& vertex(int v) const { return vertices[static_cast<std::size_t>(v)]; }
  const HalfEdge& edge(int e) const { return edges[static_cast<std::size_t>(e)]; }
  int from(int e) const { return edge(e).from; }
  int to(int e) const { return edge(e ^ 1).from; }
  int next(int e) const { return edge(e).next; }
  int site(int e) const { return edge(e).site; }

  bool is_corner(int site) const { return site < outline.size(); }
  int polygon_of(int site) const;
  /// A corner site, or the start of an edge site.
  Point start(int site) const;
  /// The two sites are an edge of the outline and one of its ends.
  bool adjoin(int a, int b) const;
  /// The point of a site nearest to p.
  Point foot(int site, Point p) const;
  /// On which side of the outline a half-edge runs.
  Side side(int e) const;

  /// The point of a half-edge at a clearance between those of its ends. In closed form: no arc of
  /// a parabola is ever broken into chords.
  Point at_clearance(int e, double clearance) const;
  /// Unit vector out along a half-edge with an end at infinity. @pre of two corners, or of a corner
  /// and its own edge
  Point outward(int e) const;
  /// Area between a half-edge and its site, with the feet of its ends. @pre not infinite
  double sector_area(int e) const;
};

/// How the circles through three sites are computed: in doubles, or exactly where those might err.
enum class Circles : std::uint8_t { quick, exact };

/// Nothing when the diagram is not even well formed; otherwise see `find_fault`.
std::optional<Diagram> build_diagram(const Outline& outline, Circles circles);

}  // namespace drapewright::geometry::medial
