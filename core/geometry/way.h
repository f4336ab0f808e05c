#pragma once

#include <optional>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// A chain of straight steps.
struct Way {
  std::vector<Point> points;  ///< at least one; the first on the start, the last on the goal
  double length_cm = 0;
};

/// The shortest way from the edge of one region to that of another round obstacles that it may not
/// cross (it may touch them). Straight where nothing stands in the way; else looked for in the
/// visibility graph of the corners of those obstacles that do; starts and goals are the corners'
/// nearest points and samples `sample_cm` apart along the two edges, so that the way is longer than
/// the best by no more than about half of that.
/// @param from, to   not empty; where they touch the way is that point
/// @param obstacles  tidy polygons that may overlap each other; their insides are forbidden
/// @returns nothing when every way is barred
/// @throws std::invalid_argument for empty ends or a spacing that is not positive and finite
std::optional<Way> shortest_way(const Region& from, const Region& to, const Region& obstacles,
                                double sample_cm = 0.25);

}  // namespace drapewright::geometry
