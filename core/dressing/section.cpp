#include "core/dressing/section.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/dressing/pockets.h"
#include "core/geometry/clock.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/validity.h"

namespace drapewright::dressing {
namespace {

using geometry::Point;
using geometry::Segment;
using geometry::Span;

/// How far the usual line reaches beyond the film, so that the film's ends are seen.
constexpr double beyond_film_cm = 1;

/// A line that only grazes a pocket's corner shows none of it.
constexpr double least_pocket_cm = 0.05;

/// The floor under a sloping wall is drawn in chords of about this length.
constexpr double floor_step_cm = 0.05;
constexpr int most_floor_steps = 400;

Point place_on(const Segment& line, double at_cm) {
  const double length = distance(line.from, line.to);
  return line.from + (at_cm / length) * (line.to - line.from);
}

/// The stretch of a line that lies in a circle.
std::optional<Span> span_in(const Segment& line, const geometry::Circle& circle) {
  const double length = distance(line.from, line.to);
  const Point along = (1 / length) * (line.to - line.from);
  const double middle = dot(along, circle.centre - line.from);
  const double off = cross(along, circle.centre - line.from);
  if (std::abs(off) >= circle.radius_cm) return std::nullopt;
  const double half = std::sqrt(circle.radius_cm * circle.radius_cm - off * off);
  const Span span{std::max(0.0, middle - half), std::min(length, middle + half)};
  return span.length_cm() > 0 ? std::optional(span) : std::nullopt;
}

void add_filler(const Layer& layer, Section& section) {
  for (std::size_t i = 0; i < layer.pieces.size(); ++i) {
    for (const Span& span : geometry::spans_inside(section.line, {layer.pieces[i]})) {
      section.filler.push_back({.wound = layer.wound,
                                .layer = layer.index,
                                .piece = static_cast<int>(i) + 1,
                                .span = span,
                                .top_cm = layer.top_cm,
                                .bottom_cm = layer.top_cm + layer.thickness_cm,
                                .thinned = layer.thickness_cm < layer.sheet_thickness_cm});
    }
  }
}

void add_port(const Port& port, Section& section) {
  if (!port.centre_cm) return;
  if (const auto base = span_in(section.line, {*port.centre_cm, port.base_diameter_cm / 2})) {
    section.port_bases.push_back(*base);
  }
  if (const auto hole = span_in(section.line, {*port.centre_cm, port.aperture_diameter_cm / 2})) {
    section.apertures.push_back(*hole);
  }
}

void add_drape(const Drape& drape, Section& section) {
  for (const Span& span : geometry::spans_inside(section.line, drape.outline_cm)) {
    section.film.push_back(span);
  }
  for (const Bridge& bridge : drape.bridges) {
    const auto protection = geometry::spans_inside(section.line, bridge.skin_protection);
    for (const Span& span : geometry::spans_inside(section.line, bridge.strip)) {
      section.bridges.push_back({span, protection});
    }
  }
  add_port(drape.port, section);
}

/// Through a point, as far as the region reaches along it and a little beyond.
Segment line_through(Point point, Point along, const std::vector<Point>& covered) {
  double low = 0, high = 0;
  for (const Point& p : covered) {
    low = std::min(low, dot(along, p - point));
    high = std::max(high, dot(along, p - point));
  }
  return {point + (low - beyond_film_cm) * along, point + (high + beyond_film_cm) * along};
}

/// Along the deepest pocket, which is what cannot be seen from above; else along the length.
Point usual_direction(const wound::Wound& wound, const WoundMeasures& measures, double head_deg) {
  if (!wound.undermining.empty()) {
    const wound::Undermining& deepest =
        *std::ranges::max_element(wound.undermining, {}, &wound::Undermining::extent_cm);
    const double hours = geometry::clock_span(deepest.from_clock, deepest.to_clock);
    const double start = geometry::clock_direction_deg(deepest.from_clock, head_deg);
    const double middle = geometry::radians(start - 30 * hours / 2);
    return {std::cos(middle), std::sin(middle)};
  }
  const Segment& length = measures.length_line;
  const double size = distance(length.from, length.to);
  return size > 0 ? (1 / size) * (length.to - length.from) : Point{1, 0};
}

Segment usual_line_of(const wound::Case& value, const Plan& plan) {
  if (plan.wounds.empty()) return {};
  const WoundMeasures& largest = *std::ranges::max_element(
      plan.wounds, {}, [](const WoundMeasures& wound) { return wound.area.value; });
  const wound::Wound& wound =
      *std::ranges::find(value.current().wounds, largest.id, &wound::Wound::id);
  std::vector<Point> covered = wound.outline_cm;
  for (const Drape& drape : plan.drapes) {
    if (std::ranges::find(drape.wounds, largest.id) == drape.wounds.end()) continue;
    const std::vector<Point> film = geometry::outer_points(drape.outline_cm);
    covered.insert(covered.end(), film.begin(), film.end());
  }
  const Point along = usual_direction(wound, largest, value.head_direction_deg);
  const bool pocket = !wound.undermining.empty();
  return line_through(pocket ? largest.centroid_cm : largest.length_line.from, along, covered);
}

}  // namespace

SectionCutter::SectionCutter(const wound::Case& value, const Plan& plan)
    : layers_(plan.fill.layers),
      drapes_(plan.drapes),
      no_film_(zones_of_kind(value.current(), wound::ZoneKind::no_film)),
      no_port_(zones_of_kind(value.current(), wound::ZoneKind::no_port)),
      usual_line_(usual_line_of(value, plan)) {
  for (const wound::Wound& wound : value.current().wounds) {
    add_wound(wound, plan, value.head_direction_deg);
  }
}

void SectionCutter::add_wound(const wound::Wound& wound, const Plan& plan, double head_deg) {
  PreparedWound prepared{&wound, geometry::tidy({wound.outline_cm, wound.islands_cm}).region,
                         nullptr};
  auto cut = std::make_unique<WoundCut>(prepared.shape);
  cut->id = wound.id;
  cut->depth_cm = wound.depth_cm;
  cut->run_in_cm = wound.depth_cm > 0 ? wound.wall_run_in_cm : 0;
  cut->depth_given = wound.depth_cm > 0;
  for (const Layer& layer : plan.fill.layers) {
    if (layer.wound != wound.id) continue;
    if (!cut->depth_given) cut->depth_cm = layer.top_cm + layer.thickness_cm;
    cut->pocket_top_cm = layer.top_cm;
  }
  // Pockets that could not be verified are findings of the plan; the section leaves them out.
  if (const auto pockets = pockets_of(prepared, head_deg)) {
    for (const dressing::Pocket& pocket : *pockets) {
      cut->pockets = geometry::unite(cut->pockets, pocket.region);
    }
  }
  wounds_.push_back(std::move(cut));
}

/// Insets at every depth are what lies farther from the edge than the wall has run in there: so
/// the depth at a place follows from its distance to the edge.
double SectionCutter::depth_at(const WoundCut& wound, Point place) const {
  if (wound.run_in_cm <= 0) return wound.depth_cm;
  return wound.depth_cm * std::min(1.0, wound.index.room_cm(place) / wound.run_in_cm);
}

void SectionCutter::add_cavities(const WoundCut& wound, Section& section) const {
  for (const Span& span : geometry::spans_inside(section.line, wound.shape)) {
    Section::Cavity cavity{wound.id, span, {{span.from_cm, 0}}, wound.depth_cm, wound.depth_given};
    const bool sloping = wound.run_in_cm > 0;
    const int steps =
        sloping ? std::clamp(static_cast<int>(std::ceil(span.length_cm() / floor_step_cm)), 8,
                             most_floor_steps)
                : 1;
    for (int i = 0; i <= steps; ++i) {
      const double at = span.from_cm + span.length_cm() * i / steps;
      const bool edge = sloping && (i == 0 || i == steps);
      cavity.floor.push_back({at, edge ? 0 : depth_at(wound, place_on(section.line, at))});
    }
    cavity.floor.push_back({span.to_cm, 0});
    section.cavities.push_back(std::move(cavity));
  }
  for (const Span& span : geometry::spans_inside(section.line, wound.pockets)) {
    if (span.length_cm() < least_pocket_cm) continue;
    section.pockets.push_back({wound.id, span, wound.pocket_top_cm, wound.depth_cm});
  }
}

/// On either side of a film's stretch: from its end to the first wound's edge.
void SectionCutter::add_borders(Section& section) const {
  for (const Span& film : section.film) {
    const auto under = [&](const Section::Cavity& cavity) {
      return cavity.span.to_cm > film.from_cm && cavity.span.from_cm < film.to_cm;
    };
    std::vector<const Section::Cavity*> covered;
    for (const Section::Cavity& cavity : section.cavities) {
      if (under(cavity)) covered.push_back(&cavity);
    }
    if (covered.empty()) continue;
    const auto start = [](const Section::Cavity* cavity) { return cavity->span.from_cm; };
    const auto end = [](const Section::Cavity* cavity) { return cavity->span.to_cm; };
    const auto* first = *std::ranges::min_element(covered, {}, start);
    const auto* last = *std::ranges::max_element(covered, {}, end);
    if (first->span.from_cm > film.from_cm) {
      section.borders.push_back({{film.from_cm, first->span.from_cm}, first->wound});
    }
    if (last->span.to_cm < film.to_cm) {
      section.borders.push_back({{last->span.to_cm, film.to_cm}, last->wound});
    }
  }
}

Section SectionCutter::cut(const Segment& line) const {
  Section section;
  section.line = line;
  section.length_cm = distance(line.from, line.to);
  if (!(section.length_cm > 0)) return section;
  for (const auto& wound : wounds_) add_cavities(*wound, section);
  for (const Layer& layer : layers_) add_filler(layer, section);
  for (const Drape& drape : drapes_) add_drape(drape, section);
  section.no_film = geometry::spans_inside(line, no_film_);
  section.no_port = geometry::spans_inside(line, no_port_);
  add_borders(section);
  for (const Section::Cavity& cavity : section.cavities) {
    section.depth_cm = std::max(section.depth_cm, cavity.depth_cm);
  }
  for (const Section::Filler& piece : section.filler) {
    section.depth_cm = std::max(section.depth_cm, piece.bottom_cm);
  }
  return section;
}

}  // namespace drapewright::dressing
