#pragma once

#include <memory>
#include <vector>

#include "core/cutting/oriented.h"

namespace drapewright::cutting {

/// Overlaps up to this count as touching: far above rounding, far below anything that matters.
inline constexpr double touch_cm = 1e-8;

/// The points with nx x + ny y < reach.
struct HalfPlane {
  double nx = 0;
  double ny = 0;
  double reach = 0;
};

/// Four of them side by side, for the processor's sake; the last of a cell may be filled up with
/// copies.
struct Quad {
  double nx[4];
  double ny[4];
  double reach[4];
};

/// Where an edge crosses a line along an axis: x = at + per y (or y = at + per x).
struct Crossing {
  double at = 0;
  double per = 0;
};

/// Where the reference point of one piece must not lie, as seen from that of another, or the two
/// come nearer than the gap: the no-fit polygon of the pair, kept as convex cells that may
/// overlap (Minkowski sums of the pieces' convex parts). Kept so, it needs no union, is exact
/// where pieces touch, and tells how deep a point lies in each cell.
struct NoFit {
  /// A stretch of an array.
  struct Range {
    int first = 0;
    int count = 0;
  };
  struct Cell {
    Box box;
    Range planes;
    int first_quad = 0;
    Range left, right;  ///< in crossings: the edges that a line along x enters and leaves by
    Range bottom, top;  ///< the same for a line along y
  };
  std::vector<HalfPlane> planes;
  std::vector<Quad> quads;  ///< the same planes, cell by cell
  std::vector<Crossing> crossings;
  std::vector<Cell> cells;
  Box box;  ///< of all cells

  /// How deep p lies in a cell: its distance to the nearest edge; 0 outside and where it touches.
  double depth(const Cell& cell, Point p) const;
};

/// Fills `result` for a moving piece beside a fixed one. Round corners of the gap are cut off by
/// tangents at most 45 degrees apart, so the gap is kept everywhere and exceeded by at most 8 %.
void make_no_fit(const Oriented& fixed, const Oriented& moving, double gap_cm, NoFit& result);

/// No-fit polygons made once for every pair of catalogued orientations.
class NoFitTable {
 public:
  NoFitTable(int orientations, double gap_cm);

  double gap_cm() const { return gap_cm_; }
  /// From the table when both have an id, else made in `scratch`.
  const NoFit& between(const Oriented& fixed, const Oriented& moving, NoFit& scratch);

 private:
  int orientations_;
  double gap_cm_;
  std::vector<std::unique_ptr<NoFit>> table_;
};

}  // namespace drapewright::cutting
