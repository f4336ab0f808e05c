// What is measured and what is cut.

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/tolerances.h"
#include "core/practice/limits.h"
#include "tests/support/plan_audit.h"

namespace drapewright::support {
namespace {

using dressing::Layer;

double greatest_length(const geometry::Ring& ring) {
  double longest = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const geometry::Point between = ring[i] - ring[j];
      longest = std::max(longest, dot(between, between));
    }
  }
  return std::sqrt(longest);
}

std::string name_of(const Layer& layer) {
  return "layer " + std::to_string(layer.index) + " of " + layer.wound;
}

// Layers -----------------------------------------------------------------------------------------

double wanted_inset(const Audit& audit, const Layer& layer) {
  const wound::Wound& wound = audit.wound(layer.wound);
  const double inset_cm = audit.value.dressing.inset_cm;
  if (wound.depth_cm <= 0) return inset_cm;
  const double underside = std::min(layer.top_cm + layer.thickness_cm, wound.depth_cm);
  return inset_cm + wound.wall_run_in_cm * underside / wound.depth_cm;
}

void audit_plain_layer(Audit& audit, const Layer& layer, const GeosShape& pieces) {
  const GeosShape& shape = audit.shapes.at(layer.wound);
  const double beyond = (pieces - shape).area();
  audit.expect(beyond <= 1e-9, name_of(layer) + " lies on skin");
  const double clearance = pieces.edges().distance(shape.edges());
  audit.expect(
      clearance >= layer.inset_cm - hair_cm,
      name_of(layer) + " comes as near as " + format_number(clearance, 5) + " cm to the edge");
  const double missing = (shape.buffered(-(layer.inset_cm + drawn_cm)) - pieces).area();
  audit.expect(missing <= sliver_cm2,
               name_of(layer) + " leaves out " + format_number(missing, 4) + " cm2");
}

GeosShape without_islands(const wound::Wound& wound) {
  return GeosShape(geometry::Polygon{wound.outline_cm, {}}).made_valid();
}

/// Under the skin, but no nearer than the inset to the edge of the deepest pocket; never under
/// islands; nothing left out of what lies under the opening.
void audit_pocket_layer(Audit& audit, const Layer& layer, const GeosShape& pieces) {
  const wound::Wound& wound = audit.wound(layer.wound);
  const double inset_cm = audit.value.dressing.inset_cm;
  double extent_cm = 0;
  for (const wound::Undermining& pocket : wound.undermining) {
    extent_cm = std::max(extent_cm, pocket.extent_cm);
  }
  audit.expect(extent_cm > 0, name_of(layer) + " reaches into pockets that are not there");
  const GeosShape reach =
      without_islands(wound).buffered(extent_cm + drawn_cm).buffered(hair_cm - inset_cm);
  audit.expect((pieces - reach).area() <= sliver_cm2, name_of(layer) + " reaches too far");
  for (const geometry::Ring& island : wound.islands_cm) {
    const GeosShape skin = GeosShape(geometry::Polygon{island, {}}).made_valid();
    audit.expect(pieces.distance(skin) >= inset_cm - hair_cm,
                 name_of(layer) + " comes too near an island");
  }
  const GeosShape bed = audit.shapes.at(layer.wound).buffered(-(layer.inset_cm + 2 * drawn_cm));
  audit.expect((bed - pieces).area() <= sliver_cm2, name_of(layer) + " leaves out part of the bed");
}

/// The least extent over all directions, to a few thousandths: an upper bound.
double least_extent(const geometry::Ring& ring) {
  double least = 1e9;
  for (int i = 0; i < 720; ++i) {
    const double angle = geometry::pi * i / 720;
    const geometry::Point along{std::cos(angle), std::sin(angle)};
    double low = 1e9, high = -1e9;
    for (const geometry::Point p : ring) {
      low = std::min(low, dot(p - ring.front(), along));
      high = std::max(high, dot(p - ring.front(), along));
    }
    least = std::min(least, high - low);
  }
  return least;
}

/// Pieces that cannot pass the opening even on edge must be told, and no others.
void audit_passage(Audit& audit, const std::string& id) {
  if (audit.count_findings("outline-mended", id) > 0) return;
  const double opening_cm = greatest_length(audit.wound(id).outline_cm);
  int surely = 0, perhaps = 0;
  for (const Layer& layer : audit.plan.fill.layers) {
    if (layer.wound != id || !layer.reaches_into_pockets) continue;
    for (const geometry::Polygon& piece : layer.pieces) {
      const double extent_cm = least_extent(piece.outer);
      const double rounding = 0.003 * greatest_length(piece.outer) + hair_cm;
      surely += extent_cm - rounding > opening_cm ? 1 : 0;
      perhaps += extent_cm > opening_cm ? 1 : 0;
    }
  }
  const int told = audit.count_findings("piece-wider-than-opening", id);
  audit.expect(surely <= told && told <= perhaps,
               id + ": pieces wider than the opening are not told as they are");
}

void audit_layer(Audit& audit, const Layer& layer) {
  const GeosShape pieces = audit.pieces_of(layer);
  audit.expect_near(layer.inset_cm, wanted_inset(audit, layer), 1e-9, name_of(layer) + ": inset");
  // Pieces that overlap or touch along an edge make an invalid shape.
  audit.expect(pieces.is_valid(), name_of(layer) + " is no valid shape");
  audit.expect(!pieces.is_empty(), name_of(layer) + " has no pieces");
  if (layer.reaches_into_pockets) {
    audit_pocket_layer(audit, layer, pieces);
  } else {
    audit_plain_layer(audit, layer, pieces);
  }
  for (const geometry::Polygon& piece : layer.pieces) {
    const bool small =
        GeosShape(piece).area() < practice::limit("smallest_piece_cm2").standard - 1e-6;
    audit.expect(!small || audit.count_findings("piece-small", layer.wound) > 0 ||
                     audit.count_findings("piece-split", layer.wound) > 0,
                 name_of(layer) + " has a small piece, and no finding says so");
  }
}

// Sums -------------------------------------------------------------------------------------------

void audit_depth(Audit& audit, const std::string& id, double filled_cm) {
  const wound::Wound& wound = audit.wound(id);
  const bool cut_off = audit.count_findings("layer-vanishes", id) +
                           audit.count_findings("no-filler-fits", id) +
                           audit.count_findings("fill-not-verified", id) >
                       0;
  if (wound.depth_cm <= 0 || cut_off) return;
  const bool left_out = audit.count_findings("last-layer-left-out", id) > 0;
  const double least = practice::limit("thinnest_layer_cm").standard;
  audit.expect_near(filled_cm + (left_out ? least / 2 : 0), wound.depth_cm,
                    left_out ? least / 2 : 2e-3, "depth filled in " + id);
}

void audit_sums(Audit& audit) {
  const dressing::Fill& fill = audit.plan.fill;
  std::size_t pieces = 0;
  for (const dressing::TunnelStrip& strip : fill.strips) {
    pieces += static_cast<std::size_t>(strip.parts);
  }
  for (const dressing::Drape& drape : audit.plan.drapes) {
    for (const dressing::Bridge& bridge : drape.bridges) pieces += bridge.strip.size();
  }
  double area = 0, top_area = 0, volume = 0;
  std::map<std::string, double> reached;
  for (const Layer& layer : fill.layers) {
    pieces += layer.pieces.size();
    const double layer_area = audit.pieces_of(layer).area();
    area += layer_area;
    volume += layer_area * layer.thickness_cm;
    if (layer.index == 1) top_area += layer_area;
    audit.expect_near(layer.top_cm, reached[layer.wound], 1e-9, "top of a layer");
    reached[layer.wound] = layer.top_cm + layer.thickness_cm;
  }
  audit.expect(static_cast<int>(pieces) == fill.piece_count, "the pieces do not add up");
  // Parts meet to within the grid of 1e-5 cm on either side of a seam.
  double rounding = 1e-6;
  for (const dressing::Seam& seam : fill.seams)
    rounding += 2e-5 * (norm(seam.line.to - seam.line.from) + 1);
  audit.expect_near(fill.area_cm2, area, rounding, "filler area");
  audit.expect_near(fill.top_area_cm2, top_area, rounding, "top filler area");
  audit.expect_near(fill.volume_cm3, volume, 10 * rounding, "filler volume");
  for (const wound::Wound& wound : audit.seen.wounds) {
    audit_depth(audit, wound.id, reached[wound.id]);
  }
}

/// What the top filler serves and what it does not are the whole wound.
void audit_unfilled(Audit& audit) {
  const double reach_cm = audit.value.dressing.inset_cm + tolerance::unfilled_band_cm;
  double unfilled = 0, allowed = sliver_cm2;
  for (const auto& [id, shape] : audit.shapes) {
    const GeosShape filler = audit.top_layer({id});
    unfilled += filler.is_empty() ? shape.area() : (shape - filler.buffered(reach_cm)).area();
    allowed += 2 * drawn_cm * shape.edge_length();
    audit.expect(!filler.is_empty() || audit.has_finding({"no-filler-fits", "fill-not-verified"}),
                 id + " takes no filler, and no finding says so");
  }
  audit.expect_near(audit.plan.fill.unfilled_cm2, unfilled, allowed, "unfilled area");
  audit.expect_near(GeosShape(audit.plan.fill.unfilled).area(), audit.plan.fill.unfilled_cm2,
                    sliver_cm2, "drawn unfilled area");
}

// Tunnels ----------------------------------------------------------------------------------------

/// A strip for every explored tunnel, none for others; a stop for each that is unexplored.
void audit_tunnels(Audit& audit) {
  std::vector<dressing::TunnelStrip> left = audit.plan.fill.strips;
  for (const wound::Wound& wound : audit.seen.wounds) {
    int unexplored = 0;
    for (const wound::Tunnel& tunnel : wound.tunnels) {
      if (!tunnel.explored) {
        ++unexplored;
        continue;
      }
      const auto strip = std::ranges::find_if(left, [&](const auto& s) {
        return s.wound == wound.id && s.clock == tunnel.clock && s.length_cm > tunnel.length_cm;
      });
      audit.expect(strip != left.end(), wound.id + ": an explored tunnel has no strip");
      if (strip != left.end()) left.erase(strip);
    }
    audit.expect(audit.count_findings("tunnel-unexplored", wound.id) == unexplored,
                 wound.id + ": an unexplored tunnel, and no finding says so");
  }
  audit.expect(left.empty(), "a strip without an explored tunnel");
}

}  // namespace

void audit_measures(Audit& audit) {
  audit.expect(audit.plan.wounds.size() == audit.seen.wounds.size(), "not every wound is measured");
  for (const dressing::WoundMeasures& measures : audit.plan.wounds) {
    const GeosShape& shape = audit.shapes.at(measures.id);
    const double rounding = hair_cm * (1 + shape.edge_length());
    audit.expect_near(measures.area.value, shape.area(), rounding, "area of " + measures.id);
    // A spike or corridor without width that was cut off had edges, and may have been the longest.
    if (audit.count_findings("outline-mended", measures.id) == 0) {
      audit.expect_near(measures.perimeter.value, shape.edge_length(), rounding,
                        "edge of " + measures.id);
      audit.expect_near(measures.length.value, greatest_length(audit.wound(measures.id).outline_cm),
                        hair_cm, "length of " + measures.id);
    }
    audit.expect(measures.width.value <= measures.length.value + hair_cm, "width exceeds length");
    const double depth_cm = audit.wound(measures.id).depth_cm;
    audit.expect(std::isnan(measures.volume.value) ||
                     (measures.volume.value >= 0 &&
                      measures.volume.value <= measures.area.value * depth_cm + hair_cm),
                 "volume of " + measures.id + " exceeds area times depth");
  }
}

void audit_fill(Audit& audit) {
  for (const Layer& layer : audit.plan.fill.layers) audit_layer(audit, layer);
  for (const wound::Wound& wound : audit.seen.wounds) audit_passage(audit, wound.id);
  audit_sums(audit);
  audit_unfilled(audit);
  audit_tunnels(audit);
}

}  // namespace drapewright::support
