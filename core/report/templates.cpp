#include "core/report/templates.h"

#include <algorithm>
#include <optional>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/border_lines.h"
#include "core/geometry/clock.h"
#include "core/geometry/crossings.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/practice/limits.h"
#include "core/report/cut_words.h"
#include "core/report/inner_point.h"
#include "core/report/sketch.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {

using dressing::Plan;
using geometry::Point;
using geometry::Ring;

namespace {

constexpr double tick_cm = 0.4;        ///< of the clock, inwards from the edge
constexpr double figure_in_cm = 0.75;  ///< from the edge to the middle of the hour's figure
constexpr double far_cm = 400;         ///< beyond any film
/// A piece narrower than this along 12 o'clock takes no tick.
constexpr double least_for_tick_cm = 1;

std::string cm(double value) { return format_short(value, 2) + "\u00A0cm"; }

Ring closed(Ring ring) {
  ring.push_back(ring.front());
  return ring;
}

void add_rings(Template& into, LayerKind kind, const geometry::Region& region) {
  for (const geometry::Polygon& polygon : region) {
    into.lines.push_back({kind, closed(polygon.outer)});
    for (const Ring& hole : polygon.holes) into.lines.push_back({kind, closed(hole)});
  }
}

void add_circle(Template& into, LayerKind kind, Point centre, double diameter_cm) {
  into.lines.push_back({kind, closed(geometry::circle(diameter_cm, centre))});
}

/// A small cross: the middle to measure or prick through.
void add_cross(Template& into, Point centre) {
  constexpr double arm_cm = 0.3;
  into.lines.push_back({LayerKind::panel, {centre - Point{arm_cm, 0}, centre + Point{arm_cm, 0}}});
  into.lines.push_back({LayerKind::panel, {centre - Point{0, arm_cm}, centre + Point{0, arm_cm}}});
}

Point along(double direction_deg) { return geometry::turned(Point{1, 0}, direction_deg); }

/// Where a ray from a point leaves a region for good; nothing when it never meets it.
std::optional<geometry::Span> last_span(Point from, double direction_deg,
                                        const geometry::Region& region) {
  const auto spans = geometry::spans_inside({from, from + far_cm * along(direction_deg)}, region);
  return spans.empty() ? std::nullopt : std::optional(spans.back());
}

/// A tick and a figure inside the film's edge at every hour, seen from the wounds' middle.
void add_clock(Template& into, const dressing::Drape& drape, double head_deg) {
  for (int hour = 1; hour <= 12; ++hour) {
    const double direction = geometry::clock_direction_deg(hour, head_deg);
    const auto span = last_span(drape.centroid_cm, direction, drape.outline_cm);
    if (!span || span->length_cm() < 2 * figure_in_cm) continue;
    const auto at = [&](double cm) { return drape.centroid_cm + cm * along(direction); };
    into.lines.push_back({LayerKind::panel, {at(span->to_cm - tick_cm), at(span->to_cm)}});
    into.words.push_back({at(span->to_cm - figure_in_cm), std::to_string(hour)});
  }
}

/// The border's two lines, as common practice has them.
void add_borders(Template& into, const wound::Case& value, const dressing::Drape& drape) {
  const practice::Limit& usual = practice::limit("border_cm");
  const auto add = [&](LayerKind kind, double border_cm, const char* looks) {
    const geometry::Offset line = dressing::border_line(value, drape, border_cm);
    if (line.verified) add_rings(into, kind, line.region);
    into.notes.push_back(
        line.verified ? say(looks, {cm(border_cm)})
                      : say("The line of a border of {1} could not be worked out with certainty "
                            "and is left out.",
                            {cm(border_cm)}));
  };
  add(LayerKind::usual_border, usual.usual_maximum.value(),
      term("Long dashes: a border of {1}, where it is not the trim line."));
  add(LayerKind::least_border, usual.usual_minimum.value(),
      term("Dash and dot: a border of {1}, where it is not the trim line."));
}

void add_port_place(Template& into, const dressing::Port& port) {
  if (!port.centre_cm) return;
  add_circle(into, LayerKind::cut_line, *port.centre_cm, port.aperture_diameter_cm);
  add_circle(into, LayerKind::guide, *port.centre_cm, port.base_diameter_cm);
  add_cross(into, *port.centre_cm);
}

Template film_template(const wound::Case& value, const Plan& plan, std::size_t index) {
  const dressing::Drape& drape = plan.drapes[index];
  Template result{.part = TemplatePart::film,
                  .title = say("Film {1} of {2}", {index + 1, plan.drapes.size()}),
                  .twelve_deg = plan.head_direction_deg,
                  .twelve = plan.twelve};
  add_rings(result, LayerKind::cut_line, drape.outline_cm);
  result.notes.push_back(
      say("Solid: trim here with the backing still on; the inner circle is the aperture."));
  add_borders(result, value, drape);
  result.notes.push_back(say("Dots: wound edge, bridge and port base, for laying it on."));
  for (const wound::Wound& wound : value.current().wounds) {
    if (std::ranges::find(drape.wounds, wound.id) == drape.wounds.end()) continue;
    result.lines.push_back({LayerKind::guide, closed(wound.outline_cm)});
    for (const Ring& island : wound.islands_cm) {
      result.lines.push_back({LayerKind::guide, closed(island)});
    }
  }
  for (const auto& bridge : drape.bridges) add_rings(result, LayerKind::guide, bridge.strip);
  for (const auto& seam : drape.seams) {
    result.lines.push_back({LayerKind::guide, {seam.from, seam.to}});
  }
  if (!drape.seams.empty()) {
    result.notes.push_back(say("Dotted straight lines: the middle of where sheets overlap."));
  }
  add_port_place(result, drape.port);
  add_clock(result, drape, plan.head_direction_deg);
  return result;
}

std::vector<Template> protection_templates(const Plan& plan) {
  std::vector<Template> all;
  for (const auto& drape : plan.drapes) {
    for (const auto& bridge : drape.bridges) {
      if (bridge.skin_protection.empty()) continue;
      Template result{.part = TemplatePart::film,
                      .title = say("Film under a bridge, to protect the skin"),
                      .notes = {say("Solid: trim here with the backing still on.")},
                      .twelve_deg = plan.head_direction_deg,
                      .twelve = plan.twelve};
      add_rings(result, LayerKind::cut_line, bridge.skin_protection);
      all.push_back(std::move(result));
    }
  }
  return all;
}

/// A piece as it lies in the wound, by name, with its number among all that are counted.
struct NumberedPiece {
  std::string name;
  int number = 1;
  geometry::Polygon outline_cm;
  double sheet_cm = 0;               ///< the sheet's thickness
  std::optional<double> thinned_cm;  ///< what the sheet is thinned to
  bool in_wound = true;              ///< else it has no place in the drawing: a strip
};

std::optional<double> thinned_to(const dressing::Layer& layer) {
  const bool thinned = layer.thickness_cm < layer.sheet_thickness_cm - 1e-9;
  return thinned ? std::optional(layer.thickness_cm) : std::nullopt;
}

std::string piece_note(const NumberedPiece& piece, std::size_t of) {
  std::vector<Insert> inserts{piece.number, of, piece.name, cm(piece.sheet_cm)};
  if (!piece.thinned_cm) return say("Piece {1} of {2}: {3}, from a sheet {4} thick.", inserts);
  inserts.emplace_back(cm(*piece.thinned_cm));
  return say("Piece {1} of {2}: {3}, from a sheet {4} thick, thinned to {5}.", inserts);
}

/// Back from its sheet to where it lies in the drawing.
geometry::Polygon off_the_sheet(const dressing::Placement& placement) {
  const auto back = [&](const Ring& ring) {
    return geometry::turned(geometry::moved(ring, -1.0 * placement.shift_cm), -placement.angle_deg);
  };
  geometry::Polygon outline{back(placement.outline_cm.outer), {}};
  for (const Ring& hole : placement.outline_cm.holes) outline.holes.push_back(back(hole));
  return outline;
}

std::vector<NumberedPiece> numbered_pieces(const Plan& plan) {
  const bool several = plan.wounds.size() > 1;
  std::vector<NumberedPiece> all;
  const auto add = [&](NumberedPiece piece) {
    piece.number = static_cast<int>(all.size()) + 1;
    all.push_back(std::move(piece));
  };
  for (const auto& layer : plan.fill.layers) {
    int piece = 0;
    for (const auto& outline : layer.pieces) {
      add({.name = piece_name(layer.wound, layer.index, ++piece, several),
           .outline_cm = outline,
           .sheet_cm = layer.sheet_thickness_cm,
           .thinned_cm = thinned_to(layer)});
    }
  }
  for (const auto use : {dressing::PieceUse::strip, dressing::PieceUse::bridge}) {
    for (const auto& sheet : plan.cut_layout) {
      for (const auto& placement : sheet.placements) {
        if (placement.use != use) continue;
        add({.name = placement_name(placement, several),
             .outline_cm = off_the_sheet(placement),
             .sheet_cm = sheet.thickness_cm,
             .in_wound = use == dressing::PieceUse::bridge});
      }
    }
  }
  return all;
}

/// On the edge at 12 o'clock, inwards: how the piece is turned.
void add_tick(Template& into, const geometry::Polygon& piece, double head_deg) {
  const Point middle = inner_point(piece);
  const auto span = last_span(middle, head_deg, {piece});
  if (!span || span->length_cm() < least_for_tick_cm) return;
  const auto at = [&](double cm) { return middle + cm * along(head_deg); };
  into.lines.push_back({LayerKind::panel, {at(span->to_cm - tick_cm), at(span->to_cm)}});
}

Template piece_template(const NumberedPiece& piece, const Plan& plan) {
  Template result{.part = TemplatePart::filler};
  add_rings(result, LayerKind::cut_line, {piece.outline_cm});
  result.words.push_back({inner_point(piece.outline_cm), piece.name, true});
  if (!piece.in_wound) return result;
  result.twelve_deg = plan.head_direction_deg;
  result.twelve = plan.twelve;
  add_tick(result, piece.outline_cm, plan.head_direction_deg);
  return result;
}

/// Pieces of one outline, cut alike, share a template.
std::vector<Template> filler_templates(const Plan& plan) {
  const std::vector<NumberedPiece> pieces = numbered_pieces(plan);
  std::vector<bool> done(pieces.size());
  std::vector<Template> all;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (done[i]) continue;
    Template result = piece_template(pieces[i], plan);
    std::string names, numbers;
    int times = 0;
    for (std::size_t j = i; j < pieces.size(); ++j) {
      if (done[j] || pieces[j].outline_cm != pieces[i].outline_cm) continue;
      done[j] = true;
      ++times;
      names += (names.empty() ? "" : ", ") + pieces[j].name;
      result.notes.push_back(piece_note(pieces[j], pieces.size()));
    }
    result.title =
        times > 1 ? say("Filler {1}: cut {2}", {names, times}) : say("Filler {1}", {names});
    result.words.front().text = names;
    all.push_back(std::move(result));
  }
  return all;
}

std::vector<Template> port_templates(const Plan& plan) {
  std::vector<std::pair<double, double>> sizes;
  for (const auto& drape : plan.drapes) {
    const std::pair size{drape.port.aperture_diameter_cm, drape.port.base_diameter_cm};
    if (std::ranges::find(sizes, size) == sizes.end()) sizes.push_back(size);
  }
  std::vector<Template> all;
  for (const auto& [aperture, base] : sizes) {
    Template result{.part = TemplatePart::port,
                    .title = say("Aperture {1}, port base {2}", {cm(aperture), cm(base)}),
                    .notes = {say("Solid: the aperture, cut out of the film over filler."),
                              say("Dots: the port's base.")}};
    add_circle(result, LayerKind::cut_line, {}, aperture);
    add_circle(result, LayerKind::guide, {}, base);
    add_cross(result, {});
    all.push_back(std::move(result));
  }
  return all;
}

Template sheet_template(const dressing::CutSheet& sheet, const std::string& title, bool several) {
  Template result{
      .part = TemplatePart::sheets,
      .title = title,
      .notes = {say("Seen from the side that faces you in the wound: pieces are turned, never "
                    "turned over. Dots: the sheet's edge.")}};
  result.lines.push_back({LayerKind::guide, closed(geometry::rectangle(
                                                sheet.length_cm, sheet.width_cm,
                                                {0.5 * sheet.length_cm, 0.5 * sheet.width_cm}))});
  for (const auto& placement : sheet.placements) {
    add_rings(result, LayerKind::cut_line, {placement.outline_cm});
    result.words.push_back(
        {inner_point(placement.outline_cm), placement_name(placement, several), true});
  }
  return result;
}

std::vector<Template> sheet_templates(const Plan& plan) {
  std::vector<Template> all;
  const auto add = [&](const std::vector<dressing::CutSheet>& layout, const char* title) {
    for (std::size_t i = 0; i < layout.size(); ++i) {
      all.push_back(sheet_template(
          layout[i], say(title, {i + 1, layout.size(), supplies::shown_name(layout[i].item)}),
          plan.wounds.size() > 1));
    }
  };
  add(plan.cut_layout, term("Filler sheet {1} of {2}: {3}"));
  add(plan.film_layout, term("Shared film sheet {1} of {2}: {3}"));
  return all;
}

std::vector<Template> film_templates(const wound::Case& value, const Plan& plan) {
  std::vector<Template> all;
  for (std::size_t i = 0; i < plan.drapes.size(); ++i) {
    all.push_back(film_template(value, plan, i));
  }
  std::ranges::move(protection_templates(plan), std::back_inserter(all));
  return all;
}

}  // namespace

std::string_view name_of(TemplatePart part) {
  switch (part) {
    case TemplatePart::film:
      return "film";
    case TemplatePart::filler:
      return "filler";
    case TemplatePart::port:
      return "port";
    case TemplatePart::sheets:
      break;
  }
  return "sheets";
}

std::vector<Template> templates(const wound::Case& value, const Plan& plan, TemplatePart part) {
  switch (part) {
    case TemplatePart::film:
      return film_templates(value, plan);
    case TemplatePart::filler:
      return filler_templates(plan);
    case TemplatePart::port:
      return port_templates(plan);
    case TemplatePart::sheets:
      break;
  }
  return sheet_templates(plan);
}

Template mirrored(Template value) {
  value.mirrored = !value.mirrored;
  for (TemplateLine& line : value.lines) {
    for (Point& p : line.points) p.x = -p.x;
  }
  for (TemplateWord& word : value.words) word.at_cm.x = -word.at_cm.x;
  if (value.twelve_deg) value.twelve_deg = 180 - *value.twelve_deg;
  return value;
}

}  // namespace drapewright::report
