#pragma once

#include <optional>
#include <vector>

#include "core/cutting/layout.h"
#include "core/cutting/split.h"
#include "core/dressing/cut_pieces.h"

namespace drapewright::dressing {

/// How the pieces of a group are cut from some sheets.
struct Cut {
  supplies::StockList sheets;  ///< that may be opened; the layout's kinds point into it
  bool costs_given = false;    ///< else the layout's cost is the sheets' area
  cutting::SplitJob split;     ///< its pieces are the parts to be cut
  cutting::Layout layout;

  int parts() const { return static_cast<int>(split.job.pieces.size()); }
};

/// Splits what fits none of the sheets, and lays everything out on the cheapest of them.
/// @param search  its steps count from the end of the first layouts, which are bounded by the work
/// alone
/// @throws Cancelled when `progress` was told to stop
Cut cut(const CutGroup& group, const supplies::StockList& sheets, double gap_cm,
        const cutting::Options& search, const Progress& progress);

/// The same parts laid out anew, in another search.
cutting::Layout lay_out_again(const Cut& way, cutting::Options search, const Progress& progress);

/// Whether `a` is the better way: first what finds a sheet at all, then the fewest pieces (each is
/// one that can be left behind), then cost, then sheets, then the off-cut.
bool is_better(const Cut& a, const Cut& b);

/// Costs rank one way above another only where every sheet has one, and not all are nothing.
bool costs_are_given(const supplies::StockList& sheets);

/// The area of a sheet's pieces in that of the sheet.
double used_fraction(const cutting::CutSheet& sheet);

/// What is left of a sheet, where it is worth the name.
std::optional<geometry::Box> off_cut_of(const cutting::CutSheet& sheet);

/// What a way takes, in figures.
SheetChoice summed_up(const Cut& cut);

}  // namespace drapewright::dressing
