#pragma once

#include <vector>

#include "core/geometry/measures.h"
#include "core/report/plan_drawing.h"

namespace drapewright::report {

/// A part of the whole that is printed on one page.
struct Tile {
  int column = 0;
  int row = 0;
  geometry::Box window;  ///< of the whole, in mm
};

/// A mark that two neighbouring tiles both show: laid on one another they join. Numbered from 1.
struct TileMark {
  int number = 1;
  geometry::Point at;         ///< on the whole, in mm
  int first = 0, second = 0;  ///< places in `Tiling::tiles`, the left or upper one first
  bool side_by_side = true;   ///< else one above the other
};

/// How something larger than a page is spread over pages: equal windows that overlap, those that
/// nothing is drawn in left out.
struct Tiling {
  int columns = 1;
  int rows = 1;
  std::vector<Tile> tiles;  ///< row by row
  std::vector<TileMark> marks;
};

/// Wide enough for a mark and for glue.
inline constexpr double tile_overlap_mm = 12;

/// @param chains  what is drawn, in mm
/// @param window  room on a page, in mm; larger than twice the overlap
Tiling tile(const std::vector<std::vector<geometry::Point>>& chains, const DrawingSize& window);

/// The parts of a chain that lie in a box, each from where it enters to where it leaves.
std::vector<std::vector<geometry::Point>> clipped(const std::vector<geometry::Point>& chain,
                                                  const geometry::Box& box);

}  // namespace drapewright::report
