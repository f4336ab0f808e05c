#include "core/dressing/fill.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/tolerances.h"
#include "core/geometry/circle.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// Parts of a wound without filler are reported from this size: below it lie only the corners that
/// a round-edged cut cannot reach.
constexpr double reported_unfilled_cm2 = 0.05;

/// No more places than a reader takes in; the rest is summed up.
constexpr std::size_t most_places = 5;

/// The thicknesses of the filler sheets in stock, thinnest first.
std::vector<double> sheet_thicknesses(const supplies::StockList& stock) {
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

struct Slice {
  double top_cm;
  double thickness_cm;
  double bottom_cm() const { return top_cm + thickness_cm; }
};

/// Where each layer begins and how thick it is: full sheets from the skin down, the last one
/// thinner. A wound without depth takes one layer of the thinnest sheet.
std::vector<Slice> slices_of(double depth_cm, double sheet_cm,
                             const std::vector<double>& thicknesses) {
  if (depth_cm <= 0) {
    return {{0, thicknesses.empty() ? sheet_cm : std::min(sheet_cm, thicknesses.front())}};
  }
  std::vector<Slice> slices;
  // A remainder below a hundredth of a millimetre is a rounding error, not a layer.
  for (double top = 0; depth_cm - top > tolerance::thinning_cm; top += sheet_cm) {
    slices.push_back({top, std::min(sheet_cm, depth_cm - top)});
  }
  return slices;
}

/// The thinnest sheet in stock that is thick enough; the layer is thinned from it.
double sheet_for(double thickness_cm, double setting_cm, const std::vector<double>& thicknesses) {
  for (const double sheet : thicknesses) {
    if (sheet >= thickness_cm - tolerance::thinning_cm) return sheet;
  }
  return setting_cm;
}

/// Pieces in the order of their size, so that "piece 1" is the main one.
void largest_first(geometry::Region& pieces) {
  std::ranges::stable_sort(pieces, std::ranges::greater{},
                           [](const geometry::Polygon& piece) { return geometry::area(piece); });
}

class WoundFiller {
 public:
  WoundFiller(const PreparedWound& prepared, const wound::Case& value, FindingList& findings)
      : prepared_(prepared),
        wound_(*prepared.wound),
        settings_(value.dressing),
        thicknesses_(sheet_thicknesses(wound::stock_of(value))),
        findings_(findings) {}

  std::vector<Layer> layers() {
    std::vector<Layer> made;
    const auto slices = slices_of(wound_.depth_cm, settings_.filler_thickness_cm, thicknesses_);
    for (const Slice& slice : slices) {
      std::optional<Layer> layer = cut(slice, static_cast<int>(made.size()) + 1);
      if (!layer) break;  // nothing fits below a layer that vanished
      made.push_back(std::move(*layer));
    }
    if (wound_.depth_cm <= 0) report_no_depth();
    return made;
  }

 private:
  double inset_at(const Slice& slice) const {
    if (wound_.depth_cm <= 0) return settings_.inset_cm;
    return settings_.inset_cm + wound_.wall_run_in_cm * slice.bottom_cm() / wound_.depth_cm;
  }

  std::optional<Layer> cut(const Slice& slice, int index) {
    const double inset_cm = inset_at(slice);
    geometry::Offset offset = geometry::inset(prepared_.shape, inset_cm);
    if (!offset.verified) {
      report_doubt(offset.doubt, index);
      return std::nullopt;
    }
    if (offset.region.empty()) {
      index == 1 ? report_no_filler(inset_cm) : report_vanished(slice, index);
      return std::nullopt;
    }
    largest_first(offset.region);
    return Layer{.wound = wound_.id,
                 .index = index,
                 .top_cm = slice.top_cm,
                 .thickness_cm = slice.thickness_cm,
                 .sheet_thickness_cm =
                     sheet_for(slice.thickness_cm, settings_.filler_thickness_cm, thicknesses_),
                 .inset_cm = inset_cm,
                 .pieces = std::move(offset.region)};
  }

  void report_no_depth() {
    findings_.add({.severity = Severity::note,
                   .code = "depth-not-given",
                   .text = "No depth is given: one layer of the thinnest sheet is planned. Measure "
                           "the deepest point; a deeper wound takes more.",
                   .source = own_rule(),
                   .wound = wound_.id});
  }

  void report_doubt(const std::string& doubt, int index) {
    findings_.add({.severity = Severity::stop,
                   .code = "fill-not-verified",
                   .text = "The cut of layer " + std::to_string(index) +
                           " did not pass its own check (" + doubt +
                           ") and is not shown. Trace the outline again, or change the inset "
                           "slightly.",
                   .source = own_rule(),
                   .wound = wound_.id,
                   .where_cm = geometry::centroid(prepared_.shape)});
  }

  void report_no_filler(double inset_cm) {
    const auto circle = geometry::largest_inscribed_circle(prepared_.shape);
    const double room_cm = circle ? circle->radius_cm : 0;
    // What the wall runs in below the skin comes off the inset that the user can set.
    const double largest_cm = room_cm - (inset_cm - settings_.inset_cm);
    // Down to a whole millimetre, and a millimetre less so that something is left to cut.
    const double advised_cm = std::floor((largest_cm - 0.1) * 10 + 1e-9) / 10;
    std::string text = "No filler fits at an inset of " + format_short(inset_cm, 2) +
                       " cm: at its widest the wound leaves " + format_number(room_cm, 2) +
                       " cm to its edge.";
    text += advised_cm >= 0 ? " An inset of " + format_short(advised_cm, 1) + " cm or less fits."
                            : " No inset fits; ask how this wound is to be dressed.";
    findings_.add({.severity = Severity::stop,
                   .code = "no-filler-fits",
                   .text = text,
                   .source = source_of_limit("inset_cm"),
                   .wound = wound_.id,
                   .where_cm = circle ? circle->centre : geometry::centroid(prepared_.shape)});
  }

  void report_vanished(const Slice& slice, int index) {
    findings_.add({.severity = Severity::warning,
                   .code = "layer-vanishes",
                   .text = "The wall closes in: below " + format_short(slice.top_cm, 2) +
                           " cm no filler fits at layer " + std::to_string(index) +
                           ". The bed there stays without filler.",
                   .source = own_rule(),
                   .wound = wound_.id,
                   .where_cm = geometry::centroid(prepared_.shape)});
  }

  const PreparedWound& prepared_;
  const wound::Wound& wound_;
  const wound::DressingSettings& settings_;
  std::vector<double> thicknesses_;
  FindingList& findings_;
};

/// The part of the wound that is farther than `reach_cm` from the pieces.
/// @returns nothing when the offset could not be verified
std::optional<geometry::Region> beyond(const geometry::Region& shape,
                                       const geometry::Region& pieces, double reach_cm) {
  if (pieces.empty()) return shape;
  const geometry::Offset reached = geometry::outset(pieces, reach_cm);
  if (!reached.verified) return std::nullopt;
  return geometry::subtract(shape, reached.region);
}

void report_arms(const wound::Wound& wound, geometry::Region arms, double inset_cm,
                 FindingList& findings) {
  std::erase_if(arms, [](const geometry::Polygon& arm) {
    return geometry::area(arm) < reported_unfilled_cm2;
  });
  largest_first(arms);
  for (std::size_t i = 0; i < arms.size() && i < most_places; ++i) {
    std::string text =
        format_number(geometry::area(arms[i]), 2) +
        " cm2 of the wound takes no filler: it is narrower than twice the inset of " +
        format_short(inset_cm, 2) + " cm.";
    if (i + 1 == most_places && arms.size() > most_places) {
      text += " There are " + std::to_string(arms.size() - most_places) + " more such places.";
    }
    findings.add({.severity = Severity::warning,
                  .code = "unfilled",
                  .text = text,
                  .source = source_of_limit("inset_cm"),
                  .wound = wound.id,
                  .where_cm = inside_point(arms[i])});
  }
}

void report_small_pieces(const Layer& layer, FindingList& findings) {
  const double least_cm2 = practice::limit("smallest_piece_cm2").standard;
  for (std::size_t i = 0; i < layer.pieces.size(); ++i) {
    const double area_cm2 = geometry::area(layer.pieces[i]);
    if (area_cm2 >= least_cm2) continue;
    findings.add({.severity = Severity::warning,
                  .code = "piece-small",
                  .text = "Layer " + std::to_string(layer.index) + ", piece " +
                          std::to_string(i + 1) + " has only " + format_number(area_cm2, 2) +
                          " cm2: easily lost in the wound. Leave it out, or count it with care.",
                  .source = source_of_limit("smallest_piece_cm2"),
                  .wound = layer.wound,
                  .where_cm = inside_point(layer.pieces[i])});
  }
}

void report_thin_layer(const Layer& layer, FindingList& findings) {
  const double least_cm = practice::limit("thinnest_layer_cm").standard;
  if (layer.thickness_cm >= least_cm) return;
  findings.add({.severity = Severity::note,
                .code = "layer-thin",
                .text = "Layer " + std::to_string(layer.index) + " is " +
                        format_short(layer.thickness_cm, 2) +
                        " cm thick, thinner than a sheet can be cut by hand. Leave it thicker: it "
                        "stands proud and is drawn down.",
                .source = source_of_limit("thinnest_layer_cm"),
                .wound = layer.wound});
}

void report_piece_count(const wound::Wound& wound, const std::vector<Layer>& layers,
                        FindingList& findings) {
  std::size_t count = 0;
  for (const Layer& layer : layers) count += layer.pieces.size();
  if (count <= 1) return;
  findings.add({.severity = Severity::note,
                .code = "several-pieces",
                .text = "This wound takes " + std::to_string(count) +
                        " pieces of filler. Write the count on the dressing; count them again as "
                        "they come out.",
                .source = source_of_rule("fewest-pieces"),
                .wound = wound.id});
}

}  // namespace

Fill fill_wounds(const std::vector<PreparedWound>& wounds, const wound::Case& value,
                 FindingList& findings) {
  Fill fill;
  const double inset_cm = value.dressing.inset_cm;
  for (const PreparedWound& prepared : wounds) {
    std::vector<Layer> layers = WoundFiller(prepared, value, findings).layers();
    const geometry::Region top = layers.empty() ? geometry::Region{} : layers.front().pieces;
    const auto unfilled = beyond(prepared.shape, top, inset_cm + tolerance::unfilled_band_cm);
    if (!unfilled) {
      findings.add({.severity = Severity::warning,
                    .code = "unfilled-not-verified",
                    .text = "How much of the wound takes no filler could not be worked out safely.",
                    .source = own_rule(),
                    .wound = prepared.wound->id});
    } else {
      fill.unfilled_cm2 += geometry::area(*unfilled);
      fill.unfilled.insert(fill.unfilled.end(), unfilled->begin(), unfilled->end());
    }
    if (!layers.empty()) {
      // Under a sloping wall the cut keeps away from the edge by more than the inset all round;
      // only what lies beyond that is an arm.
      const double reach_cm = layers.front().inset_cm + tolerance::unfilled_band_cm;
      const auto arms =
          layers.front().inset_cm > inset_cm ? beyond(prepared.shape, top, reach_cm) : unfilled;
      if (arms) report_arms(*prepared.wound, *arms, layers.front().inset_cm, findings);
    }
    for (const Layer& layer : layers) {
      report_small_pieces(layer, findings);
      report_thin_layer(layer, findings);
      fill.piece_count += static_cast<int>(layer.pieces.size());
      fill.area_cm2 += geometry::area(layer.pieces);
      if (layer.index == 1) fill.top_area_cm2 += geometry::area(layer.pieces);
    }
    report_piece_count(*prepared.wound, layers, findings);
    std::ranges::move(layers, std::back_inserter(fill.layers));
  }
  return fill;
}

geometry::Region top_filler(const Fill& fill, const std::vector<std::string>& wounds) {
  geometry::Region top;
  for (const Layer& layer : fill.layers) {
    if (layer.index != 1 || std::ranges::find(wounds, layer.wound) == wounds.end()) continue;
    top.insert(top.end(), layer.pieces.begin(), layer.pieces.end());
  }
  return top;
}

}  // namespace drapewright::dressing
