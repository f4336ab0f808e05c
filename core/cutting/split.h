#pragma once

#include <vector>

#include "core/cutting/layout.h"

namespace drapewright::cutting {

/// A straight cut through a piece, in the piece's own coordinates; what was cut apart there lies
/// edge to edge again in use.
struct Seam {
  int piece = 0;  ///< index in the job that was split
  geometry::Segment line_cm;
};

/// A job in which every piece fits some sheet alone, as far as cutting them apart can bring about.
struct SplitJob {
  /// The job's own pieces, and the parts of those that fit no sheet in their place. Parts keep the
  /// coordinates of the piece that they come from, to within tolerance::grid_cm.
  Job job;
  std::vector<int> piece_of;  ///< per piece of `job`: where it comes from in the job that was split
  std::vector<Seam> seams;    ///< empty: everything fits as it is
};

/// Splits each piece that fits none of the sheets in stock (how many there are of a size is not
/// looked at) along straight cuts into the fewest parts that a search over angles and positions
/// finds; of equally many those with short seams and a large smallest part. A cut that would leave
/// a part through which no circle of `least_part_cm` across fits is made only where nothing else
/// helps. A piece that no cutting makes fit (nothing in stock) stays whole.
/// @throws InputError for a job outside its domain (see lay_out), or a least part that is negative
///         or not finite
/// @throws Cancelled when `progress` was told to stop
SplitJob split_to_fit(const Job& job, double least_part_cm = 2, const Progress& progress = {});

}  // namespace drapewright::cutting
