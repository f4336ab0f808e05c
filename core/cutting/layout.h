#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

#include "core/base/progress.h"
#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

/// Placing outlines on rectangular sheets. Knows no wound: a job is polygons, sheets and a gap.
namespace drapewright::cutting {

/// A size of sheet. Its corner lies at the origin, its length along x.
struct SheetKind {
  double length_cm = 0;
  double width_cm = 0;
  double unit_cost = 0;
  std::optional<int> available;  ///< nothing: as many as are needed
};

/// What is to be cut from what. Either `sheets` or `strip_width_cm` is given: a strip is one sheet
/// of that width, made as short as possible.
struct Job {
  std::vector<geometry::Polygon> pieces;  ///< faultless (geometry::find_fault), in cm
  std::vector<SheetKind> sheets;
  std::optional<double> strip_width_cm;
  double gap_cm = 0;                                 ///< least distance between pieces
  double edge_gap_cm = 0;                            ///< least distance to the sheet's edge
  std::optional<std::vector<double>> rotations_deg;  ///< the only turns allowed; nothing: any
  double least_off_cut_cm = 0;                       ///< an off-cut narrower than this is waste
};

/// One piece as it lies on its sheet: turned about the origin, then shifted.
struct Placement {
  int piece = 0;  ///< index in the job
  double angle_deg = 0;
  geometry::Point shift_cm;
  geometry::Polygon outline_cm;  ///< the piece after that motion
};

struct CutSheet {
  int kind = -1;  ///< index in the job's sheets; -1 is the strip
  double length_cm = 0;
  double width_cm = 0;
  double unit_cost = 0;
  std::vector<Placement> placements;
  /// The largest rectangle left over, its sides along the sheet's: it keeps the gap to the pieces
  /// and reaches to the sheet's edge. Never overstated (see off_cut.h). Without area (high = low)
  /// where none is left whose shorter side is Job::least_off_cut_cm.
  geometry::Box off_cut_cm;
};

/// Where everything lies. Every layout that leaves this room was verified (see verify.h).
struct Layout {
  std::vector<CutSheet> sheets;
  std::vector<int> unplaced;   ///< pieces that fit no sheet, or found none in stock
  double cost = 0;             ///< of the sheets; of a strip its length
  double density_percent = 0;  ///< area of the placed pieces in that of the sheets used
  /// No layout costs less (of a strip: none is shorter). Pieces that fit no sheet do not count.
  double bound = 0;
  /// The largest of the sheets' off-cuts: one that can be used again is worth more than several
  /// small ones. 0 of a strip.
  double off_cut_cm2 = 0;
  bool proven_best() const { return cost <= bound * (1 + 1e-9); }
};

struct Options {
  std::uint64_t seed = 1;
  /// The search stops after this many steps (a step moves one piece): same seed, same number of
  /// steps, same layout.
  std::int64_t max_steps = std::numeric_limits<std::int64_t>::max();
  /// The same in units that stand for about equally long: a step among pieces of many corners
  /// takes a hundred times as many as one among rectangles.
  std::int64_t max_work = std::numeric_limits<std::int64_t>::max();
  /// Ends as soon as no layout can cost less; else the off-cut is enlarged in what time is left.
  bool cheapest_will_do = false;
  /// Rows of the pieces' hulls and no search: takes next to no time. Not for strips.
  bool rows_only = false;
  /// Asked many times a step; the search ends with the best so far once it says so. The core reads
  /// no clock, so the caller brings one.
  std::function<bool()> out_of_time;
  /// Told of every layout that is better than the one before.
  std::function<void(const Layout&)> on_better;
};

/// Lays the pieces out: the cheapest sheets, at equal cost the fewest, at equal number those that
/// leave the largest off-cut. A piece that fits no sheet stays unplaced: see split.h.
/// However little time there is, all pieces are laid in rows first, which takes next to none.
/// @throws InputError for a job outside its domain (no sheets, a side or gap that is negative or
///         not finite, a piece without area)
/// @throws Cancelled when `progress` was told to stop; what `on_better` was told stays good
Layout lay_out(const Job& job, const Options& options = {}, const Progress& progress = {});

}  // namespace drapewright::cutting
