#include "tests/support/plan_relations.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>
#include <numeric>
#include <optional>
#include <set>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "tests/support/geos_shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright::support {
namespace {

using dressing::Drape;
using dressing::Figure;
using dressing::Plan;
using geometry::Point;
using geometry::Ring;

/// Two largest circles, each short of the best by at most the search's own tolerance.
constexpr double circles_cm = 2 * (2 * tolerance::circle_cm);

class Complaints {
 public:
  void expect(bool holds, const std::string& sentence) {
    if (!holds) sentences_.push_back(sentence);
  }
  void near(double a, double b, double tolerance, const std::string& what) {
    if (std::isnan(a) && std::isnan(b)) return;
    expect(std::fabs(a - b) <= tolerance,
           what + " was " + format_number(a, 6) + ", is " + format_number(b, 6));
  }
  void same(double a, double b, const std::string& what, double room = 0) {
    near(a, b, room + 1e-9 * std::max({1.0, std::fabs(a), std::fabs(b)}), what);
  }
  std::vector<std::string> take() { return std::move(sentences_); }

 private:
  std::vector<std::string> sentences_;
};

/// The plan of a changed case; nothing when the change made a case that is refused.
std::optional<Plan> plan_of(const wound::Case& value) {
  try {
    wound::check(value);
  } catch (const InputError&) {
    return std::nullopt;
  }
  return dressing::plan_dressing(value);
}

void for_each_ring(wound::Case& value, const std::function<void(Ring&)>& change) {
  for (wound::Wound& wound : value.current().wounds) {
    change(wound.outline_cm);
    std::ranges::for_each(wound.islands_cm, change);
  }
  for (wound::SkinZone& zone : value.current().skin_zones) change(zone.outline_cm);
}

// The same plan, moved ---------------------------------------------------------------------------

/// A turn about a point, then a shift.
struct Motion {
  double turn_deg = 0;
  Point about, by;
  Point operator()(Point p) const { return geometry::turned(p, turn_deg, about) + by; }
  geometry::Region operator()(const geometry::Region& region) const {
    return geometry::moved(geometry::turned(region, turn_deg, about), by);
  }
};

wound::Case moved(wound::Case value, const Motion& motion) {
  for_each_ring(value, [&](Ring& ring) { std::ranges::transform(ring, ring.begin(), motion); });
  auto& places = value.dressing.port_places_cm;
  std::ranges::transform(places, places.begin(), motion);
  value.head_direction_deg = std::fmod(value.head_direction_deg + motion.turn_deg, 360);
  return value;
}

/// Compares a plan with that of the moved or re-ordered case.
///
/// Measures must be equal but for rounding; those of an outline that was mended are equal to some
/// steps of the grid that it was mended on. Shapes come from clearance maps, which are laid on the
/// shape itself, and from overlays, which are laid on the drawing's axes: their edges may move by
/// some grid steps. A largest circle is found to its tolerance from either side, so its centre,
/// where two places are as good, and all that follows from the centre may differ.
class SamePlan {
 public:
  /// @param shelf_is_short  which film gets the last sheets depends on the order of the wounds
  SamePlan(const Plan& a, const Plan& b, const Motion& motion, bool shelf_is_short)
      : a_(a), b_(b), motion_(motion), shelf_is_short_(shelf_is_short) {}

  std::vector<std::string> compare() {
    for (const auto& m : a_.wounds) {
      compare_measures(m, *std::ranges::find(b_.wounds, m.id, &dressing::WoundMeasures::id));
    }
    compare_layers();
    // Drawn arcs have their corners elsewhere once they are turned.
    said_.near(a_.fill.unfilled_cm2, b_.fill.unfilled_cm2,
               1e-3 + tolerance::offset_cm * total_edge(), "unfilled area");
    said_.expect(a_.drapes.size() == b_.drapes.size(), "another number of films");
    for (const Drape& drape : a_.drapes) {
      if (const Drape* other = drape_over(drape.wounds)) compare_drapes(drape, *other);
    }
    return said_.take();
  }

 private:
  static double edge_room(double edge_cm) { return 10 * tolerance::grid_cm * edge_cm + 1e-6; }
  double total_edge() const {
    double sum = 0;
    for (const auto& m : a_.wounds) sum += m.perimeter.value;
    return sum;
  }

  bool was_mended(const std::string& wound) const {
    return std::ranges::any_of(a_.findings, [&](const dressing::Finding& finding) {
      return finding.code == "outline-mended" && finding.wound == wound;
    });
  }

  void compare_measures(const dressing::WoundMeasures& a, const dressing::WoundMeasures& b) {
    const double grid_room = was_mended(a.id) ? edge_room(a.perimeter.value) : 0;
    const auto same = [&](double was, double is, const std::string& what) {
      said_.same(was, is, what, grid_room);
    };
    same(a.area.value, b.area.value, "area");
    same(a.area.spread, b.area.spread, "spread of the area");
    same(a.perimeter.value, b.perimeter.value, "edge");
    same(a.length.value, b.length.value, "length");
    same(a.width.value, b.width.value, "width");
    same(a.head_to_foot.value, b.head_to_foot.value, "head to foot");
    same(a.side_to_side.value, b.side_to_side.value, "side to side");
    said_.near(a.volume.value, b.volume.value, 1e-4 * std::max(1.0, a.volume.value), "volume");
    said_.near(a.pocket_volume_cm3, b.pocket_volume_cm3, 1e-2 * std::max(1.0, a.pocket_volume_cm3),
               "pockets' volume");
    const double far = grid_room + 1e-9 * (1 + norm(a.centroid_cm) + norm(b.centroid_cm));
    said_.near(0, distance(motion_(a.centroid_cm), b.centroid_cm), far, "middle's distance");
  }

  /// Each within a hair of the other. (Their difference itself is no measure: GEOS 3.11 gave half
  /// the area for two equal shapes whose edges lie a grid step apart.)
  void compare_shapes(const geometry::Region& a, const geometry::Region& b, const std::string& what,
                      double room_cm = 10 * tolerance::grid_cm) {
    const GeosShape was(motion_(a)), is(b);
    const double differs =
        (was - is.buffered(room_cm)).area() + (is - was.buffered(room_cm)).area();
    said_.expect(differs <= edge_room(was.edge_length() + is.edge_length()),
                 what + " of " + format_number(was.area(), 5) + " cm2 differs by " +
                     format_number(differs, 5) + " from one of " + format_number(is.area(), 5));
  }

  static bool is_split(const dressing::Plan& plan, const dressing::Layer& layer) {
    return std::ranges::any_of(plan.fill.seams, [&](const dressing::Seam& seam) {
      return seam.wound == layer.wound && seam.layer == layer.index;
    });
  }

  void compare_layers() {
    for (const dressing::Layer& layer : a_.fill.layers) {
      const std::string name = "layer " + std::to_string(layer.index) + " of " + layer.wound;
      const auto other = std::ranges::find_if(b_.fill.layers, [&](const dressing::Layer& l) {
        return l.wound == layer.wound && l.index == layer.index;
      });
      said_.expect(other != b_.fill.layers.end(), name + " is gone");
      if (other == b_.fill.layers.end()) continue;
      if (is_split(a_, layer) || is_split(b_, layer)) continue;  // by the sheets, not the wound
      said_.expect(layer.pieces.size() == other->pieces.size(),
                   name + " has another number of pieces");
      // Arcs of an outset that is inset again have their corners elsewhere once they are moved.
      compare_shapes(layer.pieces, other->pieces, name,
                     layer.reaches_into_pockets ? tolerance::offset_cm : 10 * tolerance::grid_cm);
    }
    said_.expect(a_.fill.layers.size() == b_.fill.layers.size(), "another number of layers");
    said_.expect(a_.fill.strips.size() == b_.fill.strips.size(), "another number of strips");
  }

  const Drape* drape_over(const std::vector<std::string>& wounds) {
    const std::set<std::string> wanted(wounds.begin(), wounds.end());
    for (const Drape& drape : b_.drapes) {
      if (std::set<std::string>(drape.wounds.begin(), drape.wounds.end()) == wanted) return &drape;
    }
    said_.expect(false, "wounds are grouped otherwise");
    return nullptr;
  }

  void compare_drapes(const Drape& a, const Drape& b) {
    said_.near(a.least_border.value, b.least_border.value, 2 * tolerance::circle_cm,
               "least border");
    said_.near(a.least_border.spread, b.least_border.spread, 2 * tolerance::circle_cm,
               "spread of the least border");
    said_.near(a.port.largest_aperture.value, b.port.largest_aperture.value, circles_cm,
               "largest aperture");
    const double spare = std::fabs(a.port.largest_aperture.value - a.port.aperture_diameter_cm);
    if (spare > circles_cm) said_.expect(a.port.fits == b.port.fits, "the port's fit differs");
    if (a.bridges.empty() && b.bridges.empty()) {
      compare_shapes(a.required_outline_cm, b.required_outline_cm, "required film");
      compare_shapes(a.outline_cm, b.outline_cm, "film");
      if (!shelf_is_short_) compare_sheets(a, b);
    } else if (spare > circles_cm) {
      said_.expect(a.bridges.size() == b.bridges.size(), "another number of bridges");
      double was = 0, is = 0;
      for (const auto& bridge : a.bridges) was += bridge.length_cm;
      for (const auto& bridge : b.bridges) is += bridge.length_cm;
      said_.near(was, is, 0.25 * static_cast<double>(a.bridges.size()), "bridges' length");
    }
  }

  /// A cover of many sheets is the best that was found, not the best there is.
  void compare_sheets(const Drape& a, const Drape& b) {
    const std::size_t fewer = std::min(a.sheets.size(), b.sheets.size());
    const std::size_t more = std::max(a.sheets.size(), b.sheets.size());
    constexpr std::size_t few = 4;
    said_.expect(more == fewer || (fewer > few && 10 * (more - fewer) <= fewer),
                 "another number of film sheets: " + std::to_string(a.sheets.size()) + ", " +
                     std::to_string(b.sheets.size()));
    if (a.sheets.size() == 1 && b.sheets.size() == 1) {
      said_.expect(a.sheets[0].item == b.sheets[0].item, "another film sheet");
    }
  }

  const Plan& a_;
  const Plan& b_;
  Motion motion_;
  bool shelf_is_short_;
  Complaints said_;
};

std::vector<std::string> compare(const Plan& plan, const wound::Case& changed,
                                 const Motion& motion) {
  const std::optional<Plan> other = plan_of(changed);
  if (!other) return {};
  const bool shelf_is_short =
      plan.drapes.size() > 1 && std::ranges::any_of(wound::stock_of(changed), [](const auto& item) {
        return item.available.has_value();
      });
  return SamePlan(plan, *other, motion, shelf_is_short).compare();
}

std::vector<std::string> turned_and_moved(const wound::Case& value, const Plan& plan,
                                          std::uint64_t seed) {
  OutlineMaker random(seed);
  const Motion motion{.turn_deg = random.between(0, 360),
                      .about = plan.wounds.front().centroid_cm,
                      .by = {random.between(-50, 50), random.between(-50, 50)}};
  return compare(plan, moved(value, motion), motion);
}

std::vector<std::string> moved_only(const wound::Case& value, const Plan& plan,
                                    std::uint64_t seed) {
  OutlineMaker random(seed);
  // In powers of two, so that nothing is rounded near the origin.
  const Motion motion{.by = {random.whole(-9999, 9999) * 0x1p-6, random.whole(-999, 999) * 0x1p-6}};
  return compare(plan, moved(value, motion), motion);
}

std::vector<std::string> reordered(const wound::Case& value, const Plan& plan, std::uint64_t seed) {
  OutlineMaker random(seed);
  wound::Case other = value;
  for_each_ring(other, [&](Ring& ring) {
    std::ranges::rotate(ring, ring.begin() + random.whole(0, static_cast<int>(ring.size()) - 1));
    if (random.whole(0, 1) == 0) std::ranges::reverse(ring);
  });
  wound::Assessment& seen = other.current();
  for (wound::Wound& wound : seen.wounds) std::ranges::reverse(wound.islands_cm);
  std::ranges::rotate(
      seen.wounds, seen.wounds.begin() + random.whole(0, static_cast<int>(seen.wounds.size()) - 1));
  std::ranges::reverse(seen.skin_zones);
  return compare(plan, other, {});
}

// Monotone ---------------------------------------------------------------------------------------

bool has_bridge(const Plan& plan) {
  return std::ranges::any_of(plan.drapes, [](const Drape& d) { return !d.bridges.empty(); });
}

double film_area(const Plan& plan) {
  double sum = 0;
  for (const Drape& drape : plan.drapes) sum += geometry::area(drape.required_outline_cm);
  return sum;
}

/// Where bridges run depends on which wounds share a film; they are left out.
std::vector<std::string> larger_border(const wound::Case& value, const Plan& plan,
                                       std::uint64_t seed) {
  wound::Case other = value;
  other.dressing.border_cm =
      std::min(20.0, value.dressing.border_cm + OutlineMaker(seed).between(0.01, 2));
  const std::optional<Plan> wider = plan_of(other);
  if (!wider || has_bridge(plan) || has_bridge(*wider)) return {};
  Complaints said;
  said.expect(film_area(*wider) >= film_area(plan) - 1e-6,
              "a larger border needs less film: " + format_number(film_area(plan), 4) + ", " +
                  format_number(film_area(*wider), 4));
  return said.take();
}

std::vector<std::string> larger_inset(const wound::Case& value, const Plan& plan,
                                      std::uint64_t seed) {
  wound::Case other = value;
  other.dressing.inset_cm =
      std::min(2.0, value.dressing.inset_cm + OutlineMaker(seed).between(0.006, 0.3));
  const std::optional<Plan> smaller = plan_of(other);
  if (!smaller) return {};
  Complaints said;
  said.expect(smaller->fill.top_area_cm2 <= plan.fill.top_area_cm2 + 1e-6 &&
                  smaller->fill.area_cm2 <= plan.fill.area_cm2 + 1e-6,
              "a larger inset takes more filler");
  return said.take();
}

const Drape* same_group(const Plan& plan, const Drape& drape) {
  const auto found = std::ranges::find(plan.drapes, drape.wounds, &Drape::wounds);
  return found == plan.drapes.end() ? nullptr : &*found;
}

std::vector<std::string> more_zones(const wound::Case& value, const Plan& plan,
                                    std::uint64_t seed) {
  OutlineMaker random(seed);
  wound::Case other = value;
  const Ring& edge = other.current().wounds.front().outline_cm;
  const Point at =
      edge[static_cast<std::size_t>(random.whole(0, static_cast<int>(edge.size()) - 1))];
  other.current().skin_zones.push_back(
      {.kind = random.whole(0, 1) == 0 ? wound::ZoneKind::no_film : wound::ZoneKind::no_port,
       .outline_cm = geometry::circle(random.between(0.3, 4), at, 40)});
  const std::optional<Plan> barred = plan_of(other);
  if (!barred) return {};
  Complaints said;
  for (const Drape& drape : plan.drapes) {
    const Drape* now = same_group(*barred, drape);
    said.expect(now != nullptr, "a zone changes which wounds share a film");
    if (now == nullptr) continue;
    said.expect(now->port.largest_aperture.value <= drape.port.largest_aperture.value + circles_cm,
                "the largest aperture grows with a zone");
    said.expect(now->least_border.value <= drape.least_border.value + 2 * tolerance::circle_cm,
                "the least border grows with a zone");
  }
  return said.take();
}

// Certainty --------------------------------------------------------------------------------------

/// Every corner moved by at most `error_cm` any way.
Ring retraced(const Ring& ring, double error_cm, OutlineMaker& random) {
  Ring traced = ring;
  for (Point& p : traced) {
    const double angle = random.between(0, 2 * geometry::pi);
    p = p + random.between(0, error_cm) * Point{std::cos(angle), std::sin(angle)};
  }
  return traced;
}

void expect_within(const Figure& stated, double now, double computing, const std::string& what,
                   Complaints& said) {
  if (std::isnan(now)) return;
  said.near(stated.value, now, stated.spread + computing + 1e-9 * std::fabs(now),
            what + " with a spread of " + format_number(stated.spread, 4));
}

/// See docs/geometry.md, "Certainty". What computing adds is the drawing error and the circle's.
void expect_drape_within(const Drape& stated, const Drape& now, Complaints& said) {
  expect_within(stated.least_border, now.least_border.value, 2 * tolerance::circle_cm,
                "least border", said);
  const double computing = 4 * tolerance::circle_cm + 4 * tolerance::offset_cm;
  expect_within(stated.port.largest_aperture, now.port.largest_aperture.value, computing,
                "largest aperture", said);
  if (stated.port.chosen && now.port.chosen && !stated.port.on_bridge && !now.port.on_bridge) {
    expect_within(stated.port.room, now.port.room.value, computing, "room at the chosen place",
                  said);
  }
}

std::vector<std::string> retraced_within(const wound::Case& value, const Plan& plan,
                                         std::uint64_t seed) {
  OutlineMaker random(seed);
  wound::Case other = value;
  const double error_cm = plan.tracing_error_cm;
  for (wound::Wound& wound : other.current().wounds) {
    wound.outline_cm = retraced(wound.outline_cm, error_cm, random);
    for (Ring& island : wound.islands_cm) island = retraced(island, error_cm, random);
  }
  const std::optional<Plan> now = plan_of(other);
  if (!now) return {};
  Complaints said;
  for (std::size_t i = 0; i < plan.wounds.size(); ++i) {
    const auto& stated = plan.wounds[i];
    const auto& again = now->wounds[i];
    const wound::Wound& wound = value.current().wounds[i];
    // The stated spread is of first order in the error: a ring that lies outside everywhere adds
    // pi t2 more.
    const double second_order =
        geometry::pi * error_cm * error_cm * static_cast<double>(1 + wound.islands_cm.size());
    expect_within(stated.area, again.area.value, second_order, "area", said);
    expect_within(stated.volume, again.volume.value,
                  wound.depth_cm * (second_order + 2e-3 * stated.perimeter.value), "volume", said);
    expect_within(stated.length, again.length.value, 0, "length", said);
    expect_within(stated.head_to_foot, again.head_to_foot.value, 0, "head to foot", said);
    expect_within(stated.side_to_side, again.side_to_side.value, 0, "side to side", said);
  }
  for (const Drape& drape : plan.drapes) {
    if (const Drape* again = same_group(*now, drape)) expect_drape_within(drape, *again, said);
  }
  return said.take();
}

constexpr std::array<Relation, 7> all{{{"turned and moved", turned_and_moved},
                                       {"moved", moved_only},
                                       {"re-ordered", reordered},
                                       {"larger border", larger_border},
                                       {"larger inset", larger_inset},
                                       {"more zones", more_zones},
                                       {"retraced", retraced_within}}};

}  // namespace

std::span<const Relation> relations() { return all; }

}  // namespace drapewright::support
