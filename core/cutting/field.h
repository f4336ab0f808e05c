#pragma once

#include <utility>
#include <vector>

#include "core/cutting/cell_grid.h"
#include "core/cutting/no_fit.h"
#include "core/cutting/random.h"

namespace drapewright::cutting {

/// What one piece, at one angle on one sheet, sees of the others: the rectangle in which its
/// reference point keeps it on the sheet, and the cells it should keep out of. The pressure at a
/// point is the sum over the cells of weight times depth; it is 0 exactly where the piece overlaps
/// nothing.
class Field {
 public:
  /// @param domain empty (low above high) where the piece does not fit the sheet
  void reset(const Box& domain);
  /// @param no_fit must outlive the field's use
  void add(const NoFit& no_fit, Point at, double weight);

  const Box& domain() const { return domain_; }
  /// How much there is to look at: the sides of all cells.
  std::size_t sides_to_look_at() const;
  bool fits() const { return domain_.low.x <= domain_.high.x && domain_.low.y <= domain_.high.y; }

  /// Stops adding once it exceeds `enough`.
  double pressure(Point p, double enough) const;
  bool free(Point p) const { return pressure(p, 0) <= 0; }

  enum class Axis { x, y };
  struct Spot {
    Point at;
    double pressure = 0;
  };
  /// The least pressure on the line through p along an axis, within the domain, among the places
  /// where the line enters or leaves what an obstacle forbids and the domain's ends. Between two
  /// such places little is to be gained, and a free spot, where there is one, lies at one of them,
  /// touching. (The idea of exact line searches is Egeblad's, Nielsen's and Odgaard's, 2007, and
  /// Umetani's et al., 2009, there for areas and for directional depth.) Of several free spots one
  /// is drawn. Where none is below `enough`, the answer is p with that pressure.
  Spot best_along(Axis axis, Point p, double enough, Random& random);
  /// From a point by such lines along x and y in turn, each better than the one before.
  Spot descend(Point start, Random& random);

  /// The corners of the free room: spots where the piece overlaps nothing and touches something.
  void touching_spots(std::vector<Point>& result);

 private:
  struct Obstacle {
    const NoFit* no_fit = nullptr;
    Point at;
    double weight = 0;
    Box box;
  };
  /// Where a line runs inside the cells of an obstacle.
  struct Stretch {
    double low = 0;
    double high = 0;
    const Obstacle* obstacle = nullptr;
  };
  struct Side {
    Point from;
    Point along;
  };
  void collect_along(Axis axis, double across);
  void sort_cells_into_grid();
  bool collect_along(const Side& side, double low, double high, double slack);
  void add_stretch_in(const NoFit::Cell& cell, const Obstacle& obstacle, const Side& side,
                      const Box& near);
  void add_stretch(double low, double high, const Obstacle& obstacle, std::size_t first);
  static double depth(const Obstacle& obstacle, Point p);
  void sort_stretches();
  bool free_end(double low, double high, Random& random, double& end) const;
  double pressure_at(std::size_t index, Point p, double t, double enough) const;
  void collect_sides();
  void free_ends(const Side& side, std::vector<Point>& result);

  Box domain_;
  std::vector<Obstacle> obstacles_;
  std::vector<Stretch> stretches_;
  std::vector<std::pair<const NoFit::Cell*, const Obstacle*>> placed_cells_;
  // Large enough to be worth keeping from one look to the next.
  std::vector<Side> sides_;
  std::vector<Box> boxes_;
  std::vector<Point> corners_;
  CellGrid grid_;             ///< of the placed cells
  std::size_t covering_ = 0;  ///< the placed cell that covered a whole side last
};

}  // namespace drapewright::cutting
