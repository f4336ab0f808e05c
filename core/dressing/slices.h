#pragma once

#include <vector>

#include "core/supplies/stock_item.h"

namespace drapewright::dressing {

/// One layer's place in the depth of the wound, in cm below the skin.
struct Slice {
  double top_cm = 0;
  double thickness_cm = 0;
  double sheet_thickness_cm = 0;  ///< of the sheet that it is cut from; more: thinned
  double bottom_cm() const { return top_cm + thickness_cm; }
};

struct Slicing {
  std::vector<Slice> slices;       ///< from the skin down, never empty
  double left_out_cm = 0;          ///< a remainder too thin to cut by hand: stays without filler
  bool thickness_in_stock = true;  ///< some sheet is as thick as the setting or thinner
};

/// Fewest layers first: as many of the thickest sheet allowed as go in, then what is left from the
/// thinnest sheet that is thick enough. A wound without depth takes one layer of the thinnest.
/// @param depth_cm       >= 0
/// @param thickest_cm    the setting: no sheet thicker than this, > 0
/// @param thinnest_layer_cm  a last layer thinner than this is left out
Slicing slice_depth(double depth_cm, double thickest_cm, double thinnest_layer_cm,
                    const supplies::StockList& stock);

}  // namespace drapewright::dressing
