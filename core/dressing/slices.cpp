#include "core/dressing/slices.h"

#include <algorithm>

#include "core/base/tolerances.h"

namespace drapewright::dressing {
namespace {

/// Thicknesses of the filler sheets on the shelf, thinnest first.
std::vector<double> thicknesses_of(const supplies::StockList& stock) {
  std::vector<double> found;
  for (const supplies::StockItem& item : stock) {
    if (item.kind == supplies::Kind::filler_sheet && item.available.value_or(1) > 0) {
      found.push_back(*item.thickness_cm);
    }
  }
  std::ranges::sort(found);
  found.erase(std::unique(found.begin(), found.end()), found.end());
  return found;
}

}  // namespace

Slicing slice_depth(double depth_cm, double thickest_cm, double thinnest_layer_cm,
                    const supplies::StockList& stock) {
  std::vector<double> sheets = thicknesses_of(stock);
  std::erase_if(sheets, [&](double t) { return t > thickest_cm + tolerance::thinning_cm; });
  Slicing slicing;
  slicing.thickness_in_stock = !sheets.empty();
  if (sheets.empty()) sheets = {thickest_cm};
  if (depth_cm <= 0) {
    slicing.slices = {{0, sheets.front(), sheets.front()}};
    return slicing;
  }
  const double full_cm = sheets.back();
  double top = 0;
  // A remainder below a hundredth of a millimetre is a rounding error, not a layer.
  for (; depth_cm - top >= full_cm - tolerance::thinning_cm; top += full_cm) {
    slicing.slices.push_back({top, full_cm, full_cm});
  }
  const double rest_cm = depth_cm - top;
  if (rest_cm <= tolerance::thinning_cm) return slicing;
  if (rest_cm < thinnest_layer_cm && !slicing.slices.empty()) {
    slicing.left_out_cm = rest_cm;
    return slicing;
  }
  const auto sheet =
      std::ranges::find_if(sheets, [&](double t) { return t >= rest_cm - tolerance::thinning_cm; });
  slicing.slices.push_back({top, rest_cm, *sheet});
  return slicing;
}

}  // namespace drapewright::dressing
