// Where the port sits, and the bridges that lead to it or from one piece of filler to the next.

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/practice/limits.h"
#include "tests/support/plan_audit.h"

namespace drapewright::support {
namespace {

using dressing::Bridge;
using dressing::Drape;
using dressing::Port;

/// A circle's chords and the drawing error of what bars it, along the whole of a bridge's edge.
double along_edge(const GeosShape& strip) { return sliver_cm2 + hair_cm * strip.edge_length(); }

void audit_place_on_filler(Audit& audit, const Drape& drape, const GeosShape& ground) {
  const Port& port = drape.port;
  const GeosShape centre(*port.centre_cm);
  if (ground.is_empty() || ground.distance(centre) > 1e-9) {
    audit.expect(port.chosen, "the port is not over filler, or where none may be");
    audit.expect(port.room.value == 0, "a port beside filler has room");
    return;
  }
  audit.expect_near(port.room.value / 2, centre.distance(ground.edges()), hair_cm,
                    "the port's room");
}

/// Pads end on skin that is free for the port's base and for film.
void audit_pad(Audit& audit, const Drape& drape) {
  audit.expect(!drape.bridges.empty() && drape.port.centre_cm, "the port's bridge is missing");
  if (drape.bridges.empty() || !drape.port.centre_cm) return;
  const Bridge& bridge = drape.bridges.back();
  const GeosShape strip = sewn(bridge.strip), centre(*drape.port.centre_cm);
  audit.expect(strip.covers(centre), "the port is not on its bridge");
  const double room_cm = centre.distance(strip.edges());
  audit.expect(room_cm >= drape.port.aperture_diameter_cm / 2 - drawn_cm,
               "the pad does not hold the aperture");
  audit.expect(room_cm >= drape.port.room.value / 2 - drawn_cm, "the pad has less room than told");
  const GeosShape pad = centre.buffered(bridge.pad_diameter_cm / 2 - drawn_cm);
  for (const auto& [id, shape] : audit.shapes) {
    audit.expect((pad & shape).area() <= sliver_cm2, "the pad lies on wound " + id);
  }
  const double base_cm = drape.port.base_diameter_cm / 2 - drawn_cm;
  audit.expect(audit.no_port.is_empty() || centre.distance(audit.no_port) >= base_cm,
               "the port's base reaches into a zone");
  audit.expect(audit.no_film.is_empty() || centre.distance(audit.no_film) >= base_cm,
               "the port's base reaches where no film may be");
}

/// Film under every bridge, on skin only.
void audit_protection(Audit& audit, const Drape& drape, const Bridge& bridge) {
  const GeosShape strip = sewn(bridge.strip), under(bridge.skin_protection);
  const GeosShape own = audit.wounds(drape.wounds);
  const double bare = ((strip - own) - under).area();
  audit.expect(bare <= along_edge(strip),
               "a bridge lies on " + format_number(bare, 4) + " cm2 of bare skin");
  audit.expect((under & own).area() <= along_edge(under), "protective film lies in a wound");
  audit.expect((under & audit.no_film).area() <= along_edge(under),
               "protective film lies where none may");
}

void audit_bridge(Audit& audit, const Drape& drape, const Bridge& bridge) {
  const GeosShape strip = sewn(bridge.strip);
  audit.expect(strip.is_valid() && strip.part_count() == 1, "a bridge is no valid shape");
  audit.expect((strip & audit.no_film).area() <= along_edge(strip),
               "a bridge lies where no film may");
  const double on_no_port = (strip & audit.no_port).area();
  audit.expect(on_no_port <= along_edge(strip) || bridge.crosses_no_port,
               "a bridge crosses a no_port zone, and does not say so");
  for (const auto& [id, shape] : audit.shapes) {
    if (std::ranges::find(drape.wounds, id) != drape.wounds.end()) continue;
    audit.expect((strip & shape).area() <= along_edge(strip), "a bridge lies on wound " + id);
  }
  double length_cm = 0;
  for (std::size_t i = 1; i < bridge.line.size(); ++i) {
    length_cm += distance(bridge.line[i - 1], bridge.line[i]);
  }
  audit.expect_near(bridge.length_cm, length_cm, 1e-9, "a bridge's length");
  audit_protection(audit, drape, bridge);
}

/// Every piece of top filler hangs together with the others by bridges, or a finding says so.
void audit_joining(Audit& audit, const Drape& drape) {
  // Whole pieces, pockets too: parts that are seen apart may hang together under the skin. What is
  // out of sight altogether can take no bridge, and is a finding.
  GeosShape all;
  std::map<std::string, int> hidden;
  for (const dressing::Layer& layer : audit.plan.fill.layers) {
    if (std::ranges::find(drape.wounds, layer.wound) == drape.wounds.end()) continue;
    for (const geometry::Polygon& piece : layer.pieces) {
      const GeosShape shape(piece);
      const bool seen = (shape & audit.shapes.at(layer.wound)).area() > 0;
      hidden[layer.wound] += seen ? 0 : 1;
      if (seen && layer.index == 1) all = all | shape;
    }
  }
  for (const auto& [id, count] : hidden) {
    audit.expect(audit.count_findings("piece-out-of-sight", id) == count,
                 id + ": pieces out of sight are not told one by one");
  }
  for (const Bridge& bridge : drape.bridges) all = all | sewn(bridge.strip);
  if (!audit.plan.fill.seams.empty()) all = all.buffered(hair_cm / 2, 2);  // parts edge to edge
  audit.expect(
      all.part_count() <= 1 || audit.count_findings("filler-not-joined", drape.wounds.front()) > 0,
      "filler is not joined, and no finding says so");
}

}  // namespace

void audit_port(Audit& audit, const Drape& drape) {
  const GeosShape ground = audit.top_filler(drape.wounds) - audit.no_port;
  const Port& port = drape.port;
  audit.expect_near(port.largest_aperture.value, 2 * ground.inscribed_radius(1e-3), 4e-3,
                    "largest aperture");
  audit.expect(port.fits == (port.room.value >= audit.value.dressing.aperture_diameter_cm &&
                             port.centre_cm.has_value()),
               "the port's fit contradicts its figures");
  if (!port.fits) {
    audit.expect(audit.has_finding({"aperture-off-filler", "no-place-for-port"}),
                 "no port, and no finding says so");
  }
  if (!port.centre_cm) return;
  if (!port.on_bridge) audit_place_on_filler(audit, drape, ground);
  const GeosShape base = GeosShape(*port.centre_cm).buffered(port.base_diameter_cm / 2 - hair_cm);
  audit.expect(GeosShape(drape.outline_cm).covers(base) || audit.has_finding({"base-off-film"}),
               "the port's base is not on film, and no finding says so");
}

void audit_bridges(Audit& audit, const Drape& drape) {
  for (const Bridge& bridge : drape.bridges) audit_bridge(audit, drape, bridge);
  audit_joining(audit, drape);
  const bool no_sheet = audit.has_finding({"bridge-film-lacking"});
  const auto bare = std::ranges::count_if(
      drape.bridges, [](const Bridge& b) { return !b.skin_protection.empty(); });
  audit.expect(no_sheet || std::cmp_equal(bare, drape.protection_sheets.size()),
               "a bridge has no film under it");
  if (!drape.port.on_bridge) return;
  audit_pad(audit, drape);
  audit.expect(audit.has_finding({"port-on-bridge"}), "a bridge, and no finding says so");
  const bool crosses = !drape.bridges.empty() && drape.bridges.back().crosses_no_port;
  audit.expect(!crosses || audit.has_finding({"bridge-crosses-zone"}),
               "a bridge crosses a zone, and no finding says so");
}

}  // namespace drapewright::support
