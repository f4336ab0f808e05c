// The films: who shares one, how far they reach, what they are cut from.

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/numbers.h"
#include "tests/support/plan_audit.h"

namespace drapewright::support {
namespace {

using dressing::Drape;

/// Counter-clockwise corners of a sheet as it lies.
geometry::Polygon sheet_shape(const geometry::Rectangle& sheet) {
  const double angle = sheet.angle_deg * geometry::pi / 180;
  const geometry::Point along =
      0.5 * sheet.length_cm * geometry::Point{std::cos(angle), std::sin(angle)};
  const geometry::Point across =
      0.5 * sheet.width_cm * geometry::Point{-std::sin(angle), std::cos(angle)};
  const geometry::Point c = sheet.centre;
  return {{c - along - across, c + along - across, c + along + across, c - along + across}, {}};
}

GeosShape sheets_of(const Drape& drape, double grown_cm) {
  GeosShape all;
  for (const dressing::FilmSheet& sheet : drape.sheets) {
    all = all | GeosShape(sheet_shape(sheet.place)).buffered(grown_cm);
  }
  return all;
}

void audit_grouping(Audit& audit) {
  const auto& drapes = audit.plan.drapes;
  std::multiset<std::string> draped;
  for (const Drape& drape : drapes) draped.insert(drape.wounds.begin(), drape.wounds.end());
  for (const auto& [id, shape] : audit.shapes) {
    audit.expect(draped.count(id) == 1, id + " is not under exactly one film");
  }
  for (std::size_t i = 0; i < drapes.size(); ++i) {
    for (std::size_t j = i + 1; j < drapes.size(); ++j) {
      const double gap = audit.wounds(drapes[i].wounds).distance(audit.wounds(drapes[j].wounds));
      audit.expect(gap >= 2 * audit.value.dressing.border_cm - drawn_cm, "two films overlap");
    }
  }
}

/// @param covered  wounds and bridges: what the film has to reach round
void audit_required(Audit& audit, const GeosShape& covered, const GeosShape& required) {
  const double border_cm = audit.value.dressing.border_cm;
  audit.expect(required.is_valid(), "the required film is no valid shape");
  audit.expect((covered - required).area() <= sliver_cm2, "the film does not cover the wound");
  const double least = required.edges().distance(covered);
  audit.expect(least >= border_cm - hair_cm,
               "the required border is as narrow as " + format_number(least, 5));
  // GEOS's own chords stray in proportion to the border.
  const double grown_cm = (border_cm + drawn_cm) * (1 + 1e-4);
  const double beyond = (required - covered.buffered(grown_cm)).area();
  audit.expect(beyond <= sliver_cm2,
               "the film is too large by " + format_number(beyond, 4) + " cm2");
}

void audit_trim(Audit& audit, const Drape& drape, const GeosShape& required,
                const GeosShape& film) {
  audit.expect(film.is_valid(), "the film is no valid shape");
  const double rounding = sliver_cm2 + 2e-5 * audit.no_film.edge_length();
  audit.expect((film & audit.no_film).area() <= rounding, "film lies where none may");
  audit.expect(((required - audit.no_film) - film).area() <= rounding,
               "the film is trimmed too far");
  audit.expect_near(drape.area_cm2, film.area(), 1e-6, "film area");
  audit.expect(drape.outline_cm.size() <= drape.required_outline_cm.size() ||
                   audit.count_findings("film-in-parts", drape.wounds.front()) > 0,
               "the film falls into parts, and no finding says so");
}

void audit_border(Audit& audit, const Drape& drape, const GeosShape& wounds) {
  const double border_cm = audit.value.dressing.border_cm;
  const double left =
      audit.no_film.is_empty() ? border_cm : std::min(border_cm, wounds.distance(audit.no_film));
  const double found_tolerance = 1e-3 + hair_cm;
  audit.expect_near(drape.least_border.value, left, found_tolerance, "least border");
  audit.expect_near(*std::ranges::min_element(drape.border_by_clock_cm), left, found_tolerance,
                    "least border by clock");
  audit.expect(
      left >= border_cm - found_tolerance || audit.has_finding({"border-short", "no-border"}),
      "the border falls short, and no finding says so");
}

/// The edge that comes nearer to the zones than a bound, held between GEOS's own for a hair less
/// and a hair more, so that edges that run along the bound are no doubt.
void audit_nearer(Audit& audit, double found_cm, double bound_cm, const GeosShape& edges,
                  const std::string& what) {
  const double hair = 1e-3;  // a buffer's chords of 256 to the circle lie 0.0003 cm inside 4 cm
  const double least = (edges & audit.no_film.buffered(bound_cm - hair)).edge_length();
  const double most = (edges & audit.no_film.buffered(bound_cm + hair)).edge_length();
  audit.expect(found_cm >= least - 1e-3 && found_cm <= most + 1e-3,
               "edge " + what + ": " + format_number(found_cm, 4) + " cm, by GEOS " +
                   format_number(least, 4) + " to " + format_number(most, 4));
}

void audit_stretches(Audit& audit, const Drape& drape, const GeosShape& wounds) {
  std::map<dressing::BorderKind, double> length_cm;
  double whole_cm = 0, least_cm = audit.value.dressing.border_cm;
  for (const dressing::BorderStretch& stretch : drape.border_stretches) {
    length_cm[stretch.kind] += stretch.length_cm;
    whole_cm += stretch.length_cm;
    least_cm = std::min(least_cm, stretch.least.value);
  }
  const GeosShape edges = wounds.edges();
  const bool mended = std::ranges::any_of(drape.wounds, [&](const std::string& id) {
    return audit.count_findings("outline-mended", id) > 0;
  });
  if (mended) return;  // edges without width are counted by GEOS, and gone from the plan
  audit.expect_near(whole_cm, edges.edge_length(), 1e-6 + 1e-4 * edges.edge_length(),
                    "length of all stretches");
  // A zone inside the wound lets film seal nowhere near it, though no stretch of the edge is short.
  const bool holed = (audit.no_film & wounds).area() > 0 && drape.least_border.value == 0;
  if (!holed) {
    audit.expect_near(least_cm, drape.least_border.value, 1.1e-3, "least border of the stretches");
  }
  if (audit.no_film.is_empty() || drape.border_enough_cm < 0.01) return;
  const double short_cm =
      length_cm[dressing::BorderKind::none] + length_cm[dressing::BorderKind::too_short];
  audit_nearer(audit, short_cm, drape.border_enough_cm, edges, "too short");
  audit_nearer(audit, short_cm + length_cm[dressing::BorderKind::may_be_short],
               drape.border_enough_cm + audit.value.dressing.tracing_error_mm / 10, edges,
               "that may be too short");
}

void audit_sheets(Audit& audit, const Drape& drape, const GeosShape& film) {
  audit.expect((film - GeosShape(sheet_shape(drape.rectangle))).area() <= 1e-6,
               "the smallest rectangle does not hold the film");
  if (drape.sheets.empty()) {
    audit.expect(film.is_empty() || audit.has_finding({"film-sheets-lacking"}),
                 "no film sheet, and no finding says so");
    return;
  }
  // A sheet holds the true border; the drawn film may stand out by what drawing allows.
  audit.expect((film - sheets_of(drape, 2 * drawn_cm)).area() <= 1e-6,
               "the film sheets do not cover the film");
  if (drape.sheets.size() == 1) return;
  audit.expect(audit.has_finding({"several-film-sheets"}),
               "several sheets, and no finding says so");
  // Sheets that overlap still meet when each loses half of the overlap on every side.
  const double half_cm = audit.value.dressing.film_overlap_cm / 2;
  const GeosShape inner = film.buffered(-half_cm - drawn_cm);
  audit.expect((inner - sheets_of(drape, hair_cm - half_cm)).area() <= sliver_cm2,
               "film sheets overlap too little");
}

/// Films that share a sheet: each as large as it is over the wound, on the sheet, and apart.
void audit_shared_sheet(Audit& audit, const dressing::CutSheet& sheet) {
  const GeosShape room = GeosShape(sheet_shape({.centre = {sheet.length_cm / 2, sheet.width_cm / 2},
                                                .length_cm = sheet.length_cm,
                                                .width_cm = sheet.width_cm}))
                             .buffered(hair_cm);
  audit.expect(sheet.placements.size() > 1, "a shared film sheet has one film");
  std::vector<GeosShape> cut;
  for (const dressing::Placement& placement : sheet.placements) {
    const GeosShape shape(placement.outline_cm);
    if (placement.use == dressing::PieceUse::film) {
      const Drape& drape = audit.plan.drapes.at(static_cast<std::size_t>(placement.piece - 1));
      audit.expect_near(shape.area(), drape.area_cm2, 1e-6 * (1 + drape.area_cm2),
                        "a film on a shared sheet");
      audit.expect(drape.sheets.size() == 1 && drape.sheets.front().shared > 0 &&
                       drape.sheets.front().item == sheet.item,
                   "a film does not say that it shares its sheet");
    }
    audit.expect(room.covers(shape), "a film reaches beyond its shared sheet");
    for (const GeosShape& other : cut) {
      audit.expect(shape.distance(other) >= audit.value.dressing.piece_gap_cm - hair_cm,
                   "films on one sheet come too near each other");
    }
    cut.push_back(shape);
  }
}

/// No more of an item than the shelf holds, and every sheet with the sides of its item.
void audit_stock(Audit& audit) {
  std::map<std::string, int> taken;
  const auto take = [&](const std::vector<dressing::FilmSheet>& sheets) {
    for (const dressing::FilmSheet& sheet : sheets) taken[sheet.item] += sheet.shared > 0 ? 0 : 1;
  };
  for (const dressing::CutSheet& sheet : audit.plan.film_layout) ++taken[sheet.item];
  for (const Drape& drape : audit.plan.drapes) {
    take(drape.sheets);
    take(drape.protection_sheets);
  }
  for (const auto& [name, count] : taken) {
    bool known = false, unlimited = false;
    int available = 0;
    for (const supplies::StockItem& item : wound::stock_of(audit.value)) {
      if (item.item != name || item.kind != supplies::Kind::film_sheet) continue;
      known = true;
      if (item.available) available += *item.available;
      unlimited = unlimited || !item.available;
    }
    audit.expect(known, name + " is no film sheet in stock");
    audit.expect(unlimited || count <= available, "more of " + name + " than the shelf holds");
  }
}

void audit_drape(Audit& audit, const Drape& drape) {
  const GeosShape wounds = audit.wounds(drape.wounds);
  const GeosShape required(drape.required_outline_cm), film(drape.outline_cm);
  if (required.is_empty()) {
    audit.expect(audit.has_finding({"film-not-verified"}),
                 "a film is missing, and no finding says so");
    return;
  }
  GeosShape covered = wounds;
  for (const dressing::Bridge& bridge : drape.bridges) covered = covered | sewn(bridge.strip);
  audit_required(audit, covered, required);
  audit_trim(audit, drape, required, film);
  audit_border(audit, drape, wounds);
  audit_stretches(audit, drape, wounds);
  audit_sheets(audit, drape, film);
  audit_port(audit, drape);
  audit_bridges(audit, drape);
}

}  // namespace

void audit_films(Audit& audit) {
  audit_grouping(audit);
  for (const Drape& drape : audit.plan.drapes) audit_drape(audit, drape);
  audit_stock(audit);
  for (const dressing::CutSheet& sheet : audit.plan.film_layout) audit_shared_sheet(audit, sheet);
}

}  // namespace drapewright::support
