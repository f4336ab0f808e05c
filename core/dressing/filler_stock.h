#pragma once

#include <string>
#include <vector>

#include "core/supplies/stock_item.h"
#include "core/wound/case.h"

namespace drapewright::dressing {

/// The filler sheets in stock of which there is at least one.
supplies::StockList filler_in_stock(const wound::Case& value);

/// Those of them that the case may be cut from. Of a thickness of which `filler_items` names any,
/// those that it names; of every other thickness all, so that a choice made for one depth does not
/// take away what another depth needs.
supplies::StockList filler_to_cut_from(const wound::Case& value);

/// What `filler_items` names although no such filler sheet is in stock.
std::vector<std::string> unknown_filler_items(const wound::Case& value);

/// The sheets of one thickness, to within tolerance::thinning_cm.
supplies::StockList of_thickness(const supplies::StockList& sheets, double thickness_cm);

/// The thickness on the list to cut pieces of `thickness_cm` from: the thinnest that is thick
/// enough (the piece is thinned), else the thickest. @pre sheets is not empty
double nearest_thickness(const supplies::StockList& sheets, double thickness_cm);

}  // namespace drapewright::dressing
