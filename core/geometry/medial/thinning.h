#pragma once

#include "core/geometry/shape.h"

namespace drapewright::geometry::medial {

/// A ring with fewer points.
struct Thinned {
  Ring ring;
  double stray = 0;  ///< no point of either ring lies farther than this from the other
};

/// Leaves out points of a closed ring so that it moves by at most `tolerance`, in one pass: from
/// each kept point a chord grows as long as one direction passes within the tolerance of every
/// point skipped (a cone that narrows). Starts at `start`, which is kept.
/// Method: the cone intersection of Reumann and Witkam's and Williams' strip simplifications.
Thinned thinned(const Ring& ring, std::size_t start, double tolerance);

}  // namespace drapewright::geometry::medial
