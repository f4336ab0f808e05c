#include "tests/support/plan_invariants.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>
#include <set>

#include "core/base/numbers.h"
#include "tests/support/geos_shape.h"

namespace drapewright::support {
namespace {

using dressing::Drape;
using dressing::Layer;

/// A micrometre: above the grid that overlays are computed on, far below a cut that can be seen.
constexpr double hair_cm = 1e-4;
/// How far a drawn inset or border may miss the true one (core/base/tolerances.h), and GEOS's own
/// chords (64 to a quarter circle of 5 cm: 0.0004 cm).
constexpr double drawn_cm = 0.005 + 0.0005;
/// Slivers below this are rounding along an edge.
constexpr double sliver_cm2 = 1e-3;

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

class Auditor {
 public:
  Auditor(const wound::Case& value, const dressing::Plan& plan)
      : value_(value), plan_(plan), seen_(value.current()) {
    for (const wound::Wound& wound : seen_.wounds) {
      shapes_.emplace(
          wound.id, GeosShape(geometry::Polygon{wound.outline_cm, wound.islands_cm}).made_valid());
    }
    for (const wound::SkinZone& zone : seen_.skin_zones) {
      GeosShape& all = zone.kind == wound::ZoneKind::no_film ? no_film_ : no_port_;
      all = all | GeosShape(geometry::Polygon{zone.outline_cm, {}}).made_valid();
    }
  }

  std::vector<std::string> audit() {
    check_measures();
    for (const Layer& layer : plan_.fill.layers) check_layer(layer);
    check_sums();
    check_unfilled();
    check_grouping();
    for (const Drape& drape : plan_.drapes) check_drape(drape);
    check_findings();
    return std::move(broken_);
  }

 private:
  void expect(bool holds, const std::string& sentence) {
    if (!holds) broken_.push_back(sentence);
  }
  void expect_near(double value, double wanted, double tolerance, const std::string& what) {
    expect(std::fabs(value - wanted) <= tolerance,
           what + " is " + format_number(value, 5) + ", expected " + format_number(wanted, 5));
  }
  bool has_finding(const std::set<std::string>& codes) const {
    return std::ranges::any_of(plan_.findings,
                               [&](const auto& finding) { return codes.contains(finding.code); });
  }

  // Measures -----------------------------------------------------------------------------------

  void check_measures() {
    expect(plan_.wounds.size() == seen_.wounds.size(), "not every wound is measured");
    for (const dressing::WoundMeasures& measures : plan_.wounds) {
      const GeosShape& shape = shapes_.at(measures.id);
      const double rounding = hair_cm * (1 + shape.edge_length());
      expect_near(measures.area.value, shape.area(), rounding, "area of " + measures.id);
      expect_near(measures.perimeter.value, shape.edge_length(), rounding,
                  "edge of " + measures.id);
      expect_near(measures.length.value, greatest_length(measures.id), hair_cm,
                  "length of " + measures.id);
      expect(measures.width.value <= measures.length.value + hair_cm, "width exceeds length");
    }
  }

  double greatest_length(const std::string& id) const {
    const auto wound = std::ranges::find(seen_.wounds, id, &wound::Wound::id);
    double longest = 0;
    for (const geometry::Point a : wound->outline_cm) {
      for (const geometry::Point b : wound->outline_cm) {
        longest = std::max(longest, std::hypot(a.x - b.x, a.y - b.y));
      }
    }
    return longest;
  }

  // Fill ---------------------------------------------------------------------------------------

  double wanted_inset(const Layer& layer) const {
    const auto wound = std::ranges::find(seen_.wounds, layer.wound, &wound::Wound::id);
    if (wound->depth_cm <= 0) return value_.dressing.inset_cm;
    const double underside = std::min(layer.top_cm + layer.thickness_cm, wound->depth_cm);
    return value_.dressing.inset_cm + wound->wall_run_in_cm * underside / wound->depth_cm;
  }

  void check_layer(const Layer& layer) {
    const std::string name = "layer " + std::to_string(layer.index) + " of " + layer.wound;
    const GeosShape& shape = shapes_.at(layer.wound);
    const GeosShape pieces(layer.pieces);
    const double inset_cm = wanted_inset(layer);
    expect_near(layer.inset_cm, inset_cm, 1e-9, name + ": inset");
    expect(pieces.is_valid(), name + " is no valid shape");
    expect(!pieces.is_empty(), name + " has no pieces");
    if (layer.reaches_into_pockets) {
      check_pocket_layer(layer, shape, pieces, name);
      return;
    }
    expect((pieces - shape).area() == 0 && shape.covers(pieces), name + " lies on skin");
    const double clearance = pieces.distance(shape.edges());
    expect(clearance >= inset_cm - hair_cm,
           name + " comes as near as " + format_number(clearance, 5) + " cm to the edge");
    const GeosShape least = shape.buffered(-(inset_cm + drawn_cm));
    const double missing = (least - pieces).area();
    expect(missing <= sliver_cm2, name + " leaves out " + format_number(missing, 4) + " cm2");
  }

  /// Under the skin, but no farther than the deepest pocket less the inset; never under islands.
  void check_pocket_layer(const Layer& layer, const GeosShape& shape, const GeosShape& pieces,
                          const std::string& name) {
    const auto wound = std::ranges::find(seen_.wounds, layer.wound, &wound::Wound::id);
    double extent_cm = 0;
    for (const wound::Undermining& pocket : wound->undermining) {
      extent_cm = std::max(extent_cm, pocket.extent_cm);
    }
    expect(extent_cm > 0, name + " reaches into pockets that are not there");
    const double reach_cm = std::max(0.0, extent_cm - value_.dressing.inset_cm) + drawn_cm;
    expect((pieces - shape.buffered(reach_cm)).area() <= sliver_cm2, name + " reaches too far");
    for (const geometry::Ring& island : wound->islands_cm) {
      const GeosShape skin = GeosShape(geometry::Polygon{island, {}}).made_valid();
      expect(pieces.distance(skin) >= value_.dressing.inset_cm - hair_cm,
             name + " comes too near an island");
    }
  }

  void check_sums() {
    int pieces = static_cast<int>(plan_.fill.strips.size());
    for (const Drape& drape : plan_.drapes) pieces += static_cast<int>(drape.bridges.size());
    double area = 0, top_area = 0;
    std::map<std::string, double> reached;
    for (const Layer& layer : plan_.fill.layers) {
      pieces += static_cast<int>(layer.pieces.size());
      const double layer_area = GeosShape(layer.pieces).area();
      area += layer_area;
      if (layer.index == 1) top_area += layer_area;
      expect_near(layer.top_cm, reached[layer.wound], 1e-9, "top of a layer");
      reached[layer.wound] = layer.top_cm + layer.thickness_cm;
    }
    expect(pieces == plan_.fill.piece_count, "the pieces do not add up");
    expect_near(plan_.fill.area_cm2, area, 1e-6, "filler area");
    expect_near(plan_.fill.top_area_cm2, top_area, 1e-6, "top filler area");
    for (const wound::Wound& wound : seen_.wounds) {
      if (wound.depth_cm <= 0 || has_finding({"layer-vanishes", "no-filler-fits"})) continue;
      expect_near(reached[wound.id], wound.depth_cm, 2e-3, "depth filled in " + wound.id);
    }
  }

  GeosShape top_filler(const std::vector<std::string>& wounds) const {
    GeosShape all;
    for (const Layer& layer : plan_.fill.layers) {
      const bool wanted = std::ranges::find(wounds, layer.wound) != wounds.end();
      if (wanted && layer.index == 1) all = all | GeosShape(layer.pieces);
    }
    return all;
  }

  void check_unfilled() {
    const double reach_cm = value_.dressing.inset_cm + 0.05;
    double unfilled = 0, allowed = sliver_cm2;
    for (const auto& [id, shape] : shapes_) {
      const GeosShape filler = top_filler({id});
      unfilled += filler.is_empty() ? shape.area() : (shape - filler.buffered(reach_cm)).area();
      allowed += 2 * drawn_cm * shape.edge_length();
      expect(!filler.is_empty() || has_finding({"no-filler-fits", "fill-not-verified"}),
             id + " takes no filler, and no finding says so");
    }
    expect_near(plan_.fill.unfilled_cm2, unfilled, allowed, "unfilled area");
  }

  // Film ---------------------------------------------------------------------------------------

  GeosShape group_shape(const Drape& drape) const {
    GeosShape all;
    for (const std::string& id : drape.wounds) all = all | shapes_.at(id);
    return all;
  }

  void check_grouping() {
    std::multiset<std::string> draped;
    for (const Drape& drape : plan_.drapes) draped.insert(drape.wounds.begin(), drape.wounds.end());
    for (const auto& [id, shape] : shapes_) {
      expect(draped.count(id) == 1, id + " is not under exactly one film");
    }
    for (std::size_t i = 0; i < plan_.drapes.size(); ++i) {
      for (std::size_t j = i + 1; j < plan_.drapes.size(); ++j) {
        const double gap = group_shape(plan_.drapes[i]).distance(group_shape(plan_.drapes[j]));
        expect(gap >= 2 * value_.dressing.border_cm - drawn_cm, "two films overlap");
      }
    }
  }

  void check_drape(const Drape& drape) {
    const GeosShape wounds = group_shape(drape);
    const GeosShape required(drape.required_outline_cm), film(drape.outline_cm);
    if (required.is_empty()) {
      expect(has_finding({"film-not-verified"}), "a film is missing, and no finding says so");
      return;
    }
    // The film also has to reach round the bridges that lead away from the wounds.
    GeosShape parts = wounds;
    for (const dressing::Bridge& bridge : drape.bridges) parts = parts | GeosShape(bridge.strip);
    check_required(parts, required);
    expect(film.is_valid(), "the film is no valid shape");
    expect((film & no_film_).area() <= sliver_cm2, "film lies where none may");
    expect(((required - no_film_) - film).area() <= sliver_cm2, "the film is trimmed too far");
    expect_near(drape.area_cm2, film.area(), 1e-6, "film area");
    check_border(drape, wounds);
    check_sheets(drape, film);
    check_port(drape, film);
    for (const dressing::Bridge& bridge : drape.bridges) check_bridge(bridge);
    if (drape.port.on_bridge) {
      check_pad(drape);
      expect(has_finding({"port-on-bridge"}), "a bridge, and no finding says so");
    }
  }

  void check_bridge(const dressing::Bridge& bridge) {
    const GeosShape strip(bridge.strip);
    expect(strip.is_valid() && !strip.is_empty(), "a bridge is no valid shape");
    expect((strip & no_film_).area() <= sliver_cm2, "a bridge lies where no film may");
    GeosShape wounds;
    for (const auto& [id, shape] : shapes_) wounds = wounds | shape;
    const double bare = ((strip - wounds) - GeosShape(bridge.skin_protection)).area();
    expect(bare <= sliver_cm2, "a bridge lies on " + format_number(bare, 4) + " cm2 of bare skin");
  }

  void check_pad(const Drape& drape) {
    expect(!drape.bridges.empty() && drape.port.centre_cm, "the port's bridge is missing");
    if (drape.bridges.empty() || !drape.port.centre_cm) return;
    const GeosShape strip(drape.bridges.back().strip), centre(*drape.port.centre_cm);
    expect(strip.covers(centre), "the port is not on its bridge");
    expect(!drape.port.fits ||
               centre.distance(strip.edges()) >= drape.port.aperture_diameter_cm / 2 - drawn_cm,
           "the pad does not hold the aperture");
  }

  void check_required(const GeosShape& wounds, const GeosShape& required) {
    const double border_cm = value_.dressing.border_cm;
    expect(required.is_valid(), "the required film is no valid shape");
    expect(required.covers(wounds) || (wounds - required).area() <= sliver_cm2,
           "the film does not cover the wound");
    const double least = required.edges().distance(wounds);
    expect(least >= border_cm - hair_cm,
           "the required border is as narrow as " + format_number(least, 5));
    const double beyond = (required - wounds.buffered(border_cm + drawn_cm)).area();
    expect(beyond <= sliver_cm2, "the film is too large by " + format_number(beyond, 4) + " cm2");
  }

  void check_border(const Drape& drape, const GeosShape& wounds) {
    const double border_cm = value_.dressing.border_cm;
    const double left =
        no_film_.is_empty() ? border_cm : std::min(border_cm, wounds.distance(no_film_));
    const double found_tolerance = 1e-3 + hair_cm;
    expect_near(drape.least_border.value, left, found_tolerance, "least border");
    expect_near(*std::ranges::min_element(drape.border_by_clock_cm), left, found_tolerance,
                "least border by clock");
    expect(left >= border_cm - found_tolerance || has_finding({"border-short", "no-border"}),
           "the border falls short, and no finding says so");
    check_stretches(drape, wounds);
  }

  /// The edge that comes nearer to the zones than a bound, held between GEOS's own for a hair less
  /// and a hair more, so that edges that run along the bound are no doubt.
  void check_nearer(double found_cm, double bound_cm, const GeosShape& edges, const char* what) {
    const double hair = 1e-3;  // a buffer's chords of 256 to the circle lie 0.0003 cm inside 4 cm
    const double least = (edges & no_film_.buffered(bound_cm - hair)).edge_length();
    const double most = (edges & no_film_.buffered(bound_cm + hair)).edge_length();
    expect(found_cm >= least - 1e-3 && found_cm <= most + 1e-3,
           std::string("edge ") + what + ": " + format_number(found_cm, 4) + " cm, by GEOS " +
               format_number(least, 4) + " to " + format_number(most, 4));
  }

  void check_stretches(const Drape& drape, const GeosShape& wounds) {
    std::map<dressing::BorderKind, double> length_cm;
    double whole_cm = 0, least_cm = value_.dressing.border_cm;
    for (const dressing::BorderStretch& stretch : drape.border_stretches) {
      length_cm[stretch.kind] += stretch.length_cm;
      whole_cm += stretch.length_cm;
      least_cm = std::min(least_cm, stretch.least.value);
    }
    const GeosShape edges = wounds.edges();
    expect_near(whole_cm, edges.edge_length(), 1e-6 + 1e-4 * edges.edge_length(),
                "length of all stretches");
    expect_near(least_cm, drape.least_border.value, 1.1e-3, "least border of the stretches");
    if (no_film_.is_empty() || drape.border_enough_cm < 0.01) return;
    const double short_cm =
        length_cm[dressing::BorderKind::none] + length_cm[dressing::BorderKind::too_short];
    check_nearer(short_cm, drape.border_enough_cm, edges, "too short");
    check_nearer(short_cm + length_cm[dressing::BorderKind::may_be_short],
                 drape.border_enough_cm + value_.dressing.tracing_error_mm / 10, edges,
                 "that may be too short");
  }

  void check_sheets(const Drape& drape, const GeosShape& film) {
    expect((film - GeosShape(sheet_shape(drape.rectangle))).area() <= 1e-6,
           "the smallest rectangle does not hold the film");
    if (drape.sheets.empty()) {
      expect(has_finding({"film-sheets-lacking"}), "no film sheet, and no finding says so");
      return;
    }
    // A sheet holds the true border; the drawn film may stand out by what drawing allows.
    expect((film - sheets_of(drape, drawn_cm)).area() <= 1e-6,
           "the film sheets do not cover the film");
    if (drape.sheets.size() == 1) return;
    expect(has_finding({"several-film-sheets"}), "several sheets, and no finding says so");
    // Sheets that overlap still meet when each loses half of the overlap on every side.
    const double half_cm = value_.dressing.film_overlap_cm / 2;
    const GeosShape inner = film.buffered(-half_cm - drawn_cm);
    expect((inner - sheets_of(drape, hair_cm - half_cm)).area() <= sliver_cm2,
           "film sheets overlap too little");
  }

  static GeosShape sheets_of(const Drape& drape, double grown_cm) {
    GeosShape all;
    for (const dressing::FilmSheet& sheet : drape.sheets) {
      all = all | GeosShape(sheet_shape(sheet.place)).buffered(grown_cm);
    }
    return all;
  }

  void check_port(const Drape& drape, const GeosShape& film) {
    const GeosShape ground = top_filler(drape.wounds) - no_port_;
    const dressing::Port& port = drape.port;
    expect_near(port.largest_aperture.value, 2 * ground.inscribed_radius(1e-3), 4e-3,
                "largest aperture");
    expect(port.fits == (port.room.value >= value_.dressing.aperture_diameter_cm &&
                         port.centre_cm.has_value()),
           "the port's fit contradicts its figures");
    if (!port.fits) {
      expect(has_finding({"bridge-needed", "no-place-for-port"}),
             "no port, and no finding says so");
    }
    if (!port.centre_cm || port.on_bridge) return;
    const GeosShape centre(*port.centre_cm);
    expect(ground.covers(centre), "the port is not over filler, or where none may be");
    expect(centre.distance(ground.edges()) >= port.room.value / 2 - hair_cm,
           "the port's room does not lie wholly over filler");
    expect(film.covers(centre) || has_finding({"base-off-film"}), "the port is not on film");
  }

  // Findings -----------------------------------------------------------------------------------

  void check_findings() {
    static const std::regex code_shape("[a-z0-9]+(-[a-z0-9]+)*");
    expect(std::ranges::is_sorted(plan_.findings, {}, &dressing::Finding::severity),
           "the findings are not in the order of their weight");
    for (const dressing::Finding& finding : plan_.findings) {
      expect(std::regex_match(finding.code, code_shape), "'" + finding.code + "' is no code");
      expect(finding.text.ends_with('.'), finding.code + ": the text is no sentence");
      expect(!finding.source.empty(), finding.code + " has no source");
      expect(finding.wound.empty() || shapes_.contains(finding.wound),
             finding.code + " names no wound");
      if (finding.where_cm) {
        expect(std::isfinite(finding.where_cm->x) && std::isfinite(finding.where_cm->y),
               finding.code + " lies nowhere");
      }
    }
  }

  const wound::Case& value_;
  const dressing::Plan& plan_;
  const wound::Assessment& seen_;
  std::map<std::string, GeosShape> shapes_;
  GeosShape no_film_, no_port_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> broken_promises(const wound::Case& value, const dressing::Plan& plan) {
  return Auditor(value, plan).audit();
}

}  // namespace drapewright::support
