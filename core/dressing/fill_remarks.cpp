#include "core/dressing/fill_remarks.h"

#include <algorithm>
#include <string>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// Parts of a wound without filler are reported from this size: below it lie only the corners that
/// a round-edged cut cannot reach.
constexpr double reported_unfilled_cm2 = 0.05;

/// A lobe behind a neck is worth a word from this size.
constexpr double reported_lobe_cm2 = 0.5;

/// No more places than a reader takes in; the rest is summed up.
constexpr std::size_t most_places = 5;

void report_small_pieces(const Layer& layer, FindingList& findings) {
  const double least_cm2 = practice::limit("smallest_piece_cm2").standard;
  for (std::size_t i = 0; i < layer.pieces.size(); ++i) {
    const double area_cm2 = geometry::area(layer.pieces[i]);
    if (area_cm2 >= least_cm2) continue;
    findings.add(
        {.severity = Severity::warning,
         .code = "piece-small",
         .text = say("Layer {1}, piece {2} has only {3} cm2: easily lost in the wound. Leave it "
                     "out, or count it with care.",
                     {layer.index, i + 1, format_number(area_cm2, 2)}),
         .source = source_of_limit("smallest_piece_cm2"),
         .wound = layer.wound,
         .where_cm = inside_point(layer.pieces[i])});
  }
}

void report_thin_layer(const Layer& layer, FindingList& findings) {
  const double least_cm = practice::limit("thinnest_layer_cm").standard;
  if (layer.thickness_cm >= least_cm) return;
  findings.add(
      {.severity = Severity::note,
       .code = "layer-thin",
       .text = say("Layer {1} is {2} cm thick, thinner than a sheet can be cut by hand. Leave it "
                   "thicker: it stands proud and is drawn down.",
                   {layer.index, format_short(layer.thickness_cm, 2)}),
       .source = source_of_limit("thinnest_layer_cm"),
       .wound = layer.wound});
}

/// Necks of the wound that leave the filler between its two sides narrower than it takes to hold
/// together. Only those that part off a lobe worth the name: an edge's tremor makes many.
void report_necks(const PreparedWound& wound, const Layer& layer, FindingList& findings) {
  if (layer.reaches_into_pockets || !wound.map->sound()) return;
  const double least_cm = practice::limit("narrowest_neck_cm").standard;
  const double both_insets_cm = 2 * layer.inset_cm;
  std::size_t told = 0;
  for (const geometry::Neck& neck : wound.map->necks(both_insets_cm + least_cm)) {
    const double filler_cm = neck.width_cm - both_insets_cm;
    const double lobe_cm = neck.lobe_width_cm - both_insets_cm;
    if (filler_cm <= 0 || lobe_cm < 2 * filler_cm || neck.lobe_area_cm2 < reported_lobe_cm2) {
      continue;
    }
    if (++told > most_places) return;
    findings.add(
        {.severity = Severity::warning,
         .code = "neck-narrow",
         .text = say("Layer {1} is joined here by only {2} cm and is likely to tear: a part may "
                     "stay behind. Cut it in two on purpose and count both, or widen the "
                     "neck if the wound allows.",
                     {layer.index, format_number(filler_cm, 2)}),
         .source = source_of_limit("narrowest_neck_cm"),
         .wound = layer.wound,
         .where_cm = 0.5 * (neck.across.from + neck.across.to)});
  }
}

/// A flat piece goes in on edge when its narrower extent passes through the opening's longest one.
void report_wide_pieces(const PreparedWound& wound, const Layer& layer, FindingList& findings) {
  if (!layer.reaches_into_pockets) return;
  const geometry::Segment longest = geometry::greatest_length(geometry::outer_points(wound.shape));
  const double opening_cm = geometry::distance(longest.from, longest.to);
  for (std::size_t i = 0; i < layer.pieces.size(); ++i) {
    const double width_cm = geometry::least_width(layer.pieces[i].outer);
    if (width_cm <= opening_cm) continue;
    findings.add(
        {.severity = Severity::warning,
         .code = "piece-wider-than-opening",
         .text =
             say("Layer {1}, piece {2} is {3} cm across, wider than the opening of {4} cm "
                 "that it goes in through. Cut it into parts that pass, and count "
                 "each.",
                 {layer.index, i + 1, format_number(width_cm, 1), format_number(opening_cm, 1)}),
         .source = own_rule(),
         .wound = layer.wound,
         .where_cm = inside_point(layer.pieces[i])});
  }
}

/// A pocket's filler may hang together with nothing in the opening: where the wall runs in farther
/// than the pocket is deep.
void report_hidden_pieces(const PreparedWound& wound, const Layer& layer, FindingList& findings) {
  if (!layer.reaches_into_pockets) return;
  for (std::size_t i = 0; i < layer.pieces.size(); ++i) {
    if (!geometry::intersect({layer.pieces[i]}, wound.shape).empty()) continue;
    findings.add(
        {.severity = Severity::warning,
         .code = "piece-out-of-sight",
         .text = say("Layer {1}, piece {2} lies wholly under the wound's edge, apart from the "
                     "filler in the opening: it is out of sight and easily left behind. "
                     "Leave a tail of it in the opening, or leave it out; count it with "
                     "care.",
                     {layer.index, i + 1}),
         .source = source_of_rule("fewest-pieces"),
         .wound = layer.wound,
         .where_cm = inside_point(layer.pieces[i])});
  }
}

}  // namespace

void remark_on_arms(const wound::Wound& wound, geometry::Region arms, double inset_cm,
                    FindingList& findings) {
  std::erase_if(arms, [](const geometry::Polygon& arm) {
    return geometry::area(arm) < reported_unfilled_cm2;
  });
  std::ranges::stable_sort(arms, std::ranges::greater{},
                           [](const geometry::Polygon& arm) { return geometry::area(arm); });
  for (std::size_t i = 0; i < arms.size() && i < most_places; ++i) {
    std::string text =
        say("{1} cm2 of the wound takes no filler: it is narrower than twice the inset of {2} cm.",
            {format_number(geometry::area(arms[i]), 2), format_short(inset_cm, 2)});
    if (i + 1 == most_places && arms.size() > most_places) {
      text += " " + count_of(static_cast<int>(arms.size() - most_places),
                             "There is {1} more such place.", "There are {1} more such places.");
    }
    findings.add({.severity = Severity::warning,
                  .code = "unfilled",
                  .text = text,
                  .source = source_of_limit("inset_cm"),
                  .wound = wound.id,
                  .where_cm = inside_point(arms[i])});
  }
}

void remark_on_layers(const PreparedWound& wound, const std::vector<Layer>& layers,
                      FindingList& findings) {
  for (const Layer& layer : layers) {
    report_thin_layer(layer, findings);
    report_necks(wound, layer, findings);
  }
}

void remark_on_pieces(const PreparedWound& wound, const std::vector<Layer>& layers,
                      FindingList& findings) {
  for (const Layer& layer : layers) {
    if (layer.wound != wound.wound->id) continue;
    report_small_pieces(layer, findings);
    report_wide_pieces(wound, layer, findings);
    report_hidden_pieces(wound, layer, findings);
  }
}

void remark_on_piece_counts(const Plan& plan, FindingList& findings) {
  for (const WoundMeasures& wound : plan.wounds) {
    std::size_t count = 0;
    for (const Layer& layer : plan.fill.layers) {
      if (layer.wound == wound.id) count += layer.pieces.size();
    }
    if (count <= 1) continue;
    findings.add(
        {.severity = Severity::note,
         .code = "several-pieces",
         .text = say("This wound takes {1} pieces of filler. Write the count on the dressing; "
                     "count them again as they come out.",
                     {count}),
         .source = source_of_rule("fewest-pieces"),
         .wound = wound.id});
  }
}

}  // namespace drapewright::dressing
