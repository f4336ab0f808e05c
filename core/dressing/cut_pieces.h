#pragma once

#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/supplies/stock_item.h"

namespace drapewright::dressing {

/// One piece to be cut from a filler sheet, as it lies in the drawing before it is split.
struct CutPiece {
  PieceUse use = PieceUse::layer;
  std::string wound;     ///< of a bridge: the first wound under its film
  int layer = 0;         ///< 0 for a strip or a bridge
  int piece = 1;         ///< as in Placement
  double wanted_cm = 0;  ///< the sheet thickness that the plan asks for
  geometry::Polygon outline_cm;
};

/// All pieces that are cut from sheets of one thickness.
struct CutGroup {
  double thickness_cm = 0;  ///< the nearest that there is; as asked for where there is no sheet
  std::vector<CutPiece> pieces;
  supplies::StockList sheets;  ///< of that thickness, to cut from; empty: none in stock
};

/// Everything in the plan that is cut from filler, thickest sheets first: the layers' pieces, and
/// from the thinnest sheets among theirs the tunnel strips, and the bridges with their pads.
std::vector<CutGroup> cut_groups(const Plan& plan, const wound::Case& value);

}  // namespace drapewright::dressing
