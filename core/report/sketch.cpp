#include "core/report/sketch.h"

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/clock.h"
#include "core/geometry/distance.h"
#include "core/geometry/rectangle.h"
#include "core/geometry/shapes.h"
#include "core/report/inner_point.h"
#include "core/report/sketch_builder.h"
#include "core/report/text_size.h"
#include "core/report/undermining_sketch.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {

using geometry::Point;
using geometry::Polygon;
using geometry::Region;

namespace {

constexpr std::size_t longest_note = 36;  ///< bytes; longer notes are cut in the drawing

std::string cm(double value) { return format_number(value, 1) + " cm"; }

void add_undermining(SketchBuilder& builder, const wound::Wound& wound, double head_deg) {
  if (wound.undermining.empty() && wound.tunnels.empty()) return;
  const Point centre = geometry::centroid(Region{Polygon{wound.outline_cm, wound.islands_cm}});
  const UnderminingSketch sketch(wound.outline_cm, centre, head_deg);
  for (const wound::Undermining& undermining : wound.undermining) {
    const Polygon pocket = sketch.pocket(undermining);
    builder.add_area(LayerKind::undermining, pocket);
    builder.add_caption({LayerKind::undermining, pocket.outer[pocket.outer.size() / 4],
                         say("undermined {1}", {cm(undermining.extent_cm)})});
  }
  for (const wound::Tunnel& tunnel : wound.tunnels) {
    const geometry::Segment way = sketch.tunnel(tunnel);
    builder.add_chain(LayerKind::undermining, {{way.from, way.to}, true});
    builder.add_caption({LayerKind::undermining, way.to,
                         tunnel.explored
                             ? say("tunnel {1}", {cm(tunnel.length_cm)})
                             : say("tunnel {1}, not explored", {cm(tunnel.length_cm)})});
  }
}

void add_wound(SketchBuilder& builder, const wound::Wound& wound, double head_deg) {
  builder.add_area(LayerKind::wound, {wound.outline_cm, wound.islands_cm});
  for (const geometry::Ring& island : wound.islands_cm) {
    builder.add_area(LayerKind::island, {island, {}});
    builder.add_caption(
        {LayerKind::island, inner_point({island, {}}), say("skin"), Caption::Where::on_if_clear});
  }
  const Point top = *std::ranges::max_element(wound.outline_cm, {}, &Point::y);
  builder.add_caption(
      {LayerKind::wound, top, say("wound {1}", {wound.id}), Caption::Where::beside, true});
  add_undermining(builder, wound, head_deg);
}

void add_zone(SketchBuilder& builder, const wound::SkinZone& zone) {
  const bool film = zone.kind == wound::ZoneKind::no_film;
  const LayerKind kind = film ? LayerKind::no_film_zone : LayerKind::no_port_zone;
  const Polygon area{zone.outline_cm, {}};
  builder.add_area(kind, area);
  const std::string note = zone.note.empty() ? "" : ": " + shortened(zone.note, longest_note);
  builder.add_caption({kind, inner_point(area), (film ? say("no film") : say("no port")) + note,
                       Caption::Where::on_if_clear});
}

void add_case(SketchBuilder& builder, const wound::Case& value) {
  const practice::BodySite* site = wound::site_of(value);
  builder.set_clock(value.head_direction_deg, site ? site->twelve : practice::Twelve::head);
  for (const wound::Wound& wound : value.current().wounds) {
    if (wound.outline_cm.size() >= 3) add_wound(builder, wound, value.head_direction_deg);
  }
  for (const wound::SkinZone& zone : value.current().skin_zones) {
    if (zone.outline_cm.size() >= 3) add_zone(builder, zone);
  }
}

/// Names of stacked pieces are written together where the deeper one lies under the upper one.
void add_fill(SketchBuilder& builder, const dressing::Fill& fill, bool several_wounds) {
  struct Named {
    const Polygon* piece;
    std::string wound;
    Caption caption;
  };
  std::vector<Named> named;
  for (const dressing::Layer& layer : fill.layers) {
    const LayerKind kind = layer.index == 1 ? LayerKind::filler : LayerKind::deeper_filler;
    builder.add_region(kind, layer.pieces);
    int number = 0;
    for (const Polygon& piece : layer.pieces) {
      const std::string name = piece_name(layer.wound, layer.index, ++number, several_wounds);
      const Point at = inner_point(piece);
      const auto above = std::ranges::find_if(named, [&](const Named& other) {
        return other.wound == layer.wound && geometry::contains(*other.piece, at);
      });
      if (above == named.end()) {
        named.push_back(
            {&piece, layer.wound, {LayerKind::filler, at, name, Caption::Where::on, true}});
      } else {
        above->caption.text += ", " + piece_name({}, layer.index, number, false);
      }
    }
  }
  for (const dressing::Seam& seam : fill.seams) {
    builder.add_chain(LayerKind::seam, {{seam.line.from, seam.line.to}, false});
  }
  for (Named& piece : named) builder.add_caption(std::move(piece.caption));
  if (fill.layers.empty()) return;
  // The last piece's name says the most: both its numbers are seldom 1.
  const dressing::Layer& last = fill.layers.back();
  const auto number = static_cast<int>(last.pieces.size());
  const std::vector<Insert> inserts{piece_name(last.wound, last.index, number, several_wounds),
                                    last.index, number, last.wound};
  builder.set_piece_example(several_wounds
                                ? say("{1} on filler: wound {4}, layer {2}, piece {3}", inserts)
                                : say("{1} on filler: layer {2}, piece {3}", inserts));
}

/// Each lies in its tunnel, with its tail in the wound.
void add_strips(SketchBuilder& builder, const wound::Case& value, const dressing::Fill& fill) {
  for (const dressing::TunnelStrip& strip : fill.strips) {
    const auto& wounds = value.current().wounds;
    const auto wound = std::ranges::find(wounds, strip.wound, &wound::Wound::id);
    if (wound == wounds.end()) continue;
    const auto tunnel = std::ranges::find_if(wound->tunnels, [&](const wound::Tunnel& t) {
      return t.explored && t.clock == strip.clock;
    });
    if (tunnel == wound->tunnels.end()) continue;
    const Point centre = geometry::centroid(Region{Polygon{wound->outline_cm, wound->islands_cm}});
    const auto way =
        UnderminingSketch(wound->outline_cm, centre, value.head_direction_deg).tunnel(*tunnel);
    const Point along = way.to - way.from;
    const double length_cm = geometry::norm(along);
    if (length_cm <= 0) continue;
    const Point tail_end = way.to - (strip.length_cm / length_cm) * along;
    builder.add_area(
        LayerKind::deeper_filler,
        {geometry::rectangle(strip.length_cm, strip.width_cm, 0.5 * (tail_end + way.to),
                             geometry::degrees(std::atan2(along.y, along.x))),
         {}});
  }
}

void add_unfilled(SketchBuilder& builder, const dressing::Fill& fill) {
  builder.add_region(LayerKind::unfilled, fill.unfilled);
  const auto largest = std::ranges::max_element(
      fill.unfilled, {}, [](const Polygon& part) { return geometry::area(part); });
  if (largest == fill.unfilled.end() || fill.unfilled_cm2 < 0.05) return;
  builder.add_caption({LayerKind::unfilled, inner_point(*largest),
                       say("no filler: {1}", {format_number(fill.unfilled_cm2, 1) + " cm\u00b2"})});
}

void add_port(SketchBuilder& builder, const dressing::Port& port) {
  if (!port.centre_cm) return;
  const Point centre = *port.centre_cm;
  const geometry::Ring base = geometry::circle(port.base_diameter_cm, centre, 90);
  builder.add_area(LayerKind::port_base, {base, {}});
  builder.add_area(LayerKind::aperture,
                   {geometry::circle(port.aperture_diameter_cm, centre, 72), {}});
  const double radius = port.aperture_diameter_cm / 2;
  const double hair = 1.2 * radius;
  builder.add_chain(LayerKind::aperture,
                    {{centre - Point{hair, 0}, centre + Point{hair, 0}}, false});
  builder.add_chain(LayerKind::aperture,
                    {{centre - Point{0, hair}, centre + Point{0, hair}}, false});
  builder.keep_clear({centre, radius});
  builder.add_caption({LayerKind::port_base, base[base.size() / 8],
                       port.fits ? say("port") : say("aperture does not fit here")});
}

/// Halfway along an open line.
Point middle_of(const std::vector<Point>& line) {
  double length = 0;
  for (std::size_t i = 1; i < line.size(); ++i) length += geometry::distance(line[i - 1], line[i]);
  double left = length / 2;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double step = geometry::distance(line[i - 1], line[i]);
    if (step > 0 && left <= step) return line[i - 1] + (left / step) * (line[i] - line[i - 1]);
    left -= step;
  }
  return line.back();
}

void add_bridge(SketchBuilder& builder, const dressing::Bridge& bridge) {
  builder.add_region(LayerKind::skin_protection, bridge.skin_protection);
  builder.add_region(LayerKind::bridge, bridge.strip);
}

/// Where it joins pieces, on the strip itself, so that no name of a neighbouring piece is taken for
/// the bridge's.
void name_bridge(SketchBuilder& builder, const dressing::Bridge& bridge) {
  if (bridge.line.empty()) return;
  const bool to_port = bridge.pad_diameter_cm > 0;  // its end is crowded: a leader reads better
  const auto where = to_port ? Caption::Where::on_if_clear : Caption::Where::on;
  builder.add_caption({LayerKind::bridge, middle_of(bridge.line),
                       say("bridge {1}", {cm(bridge.length_cm)}), where, true});
}

void add_least_border(SketchBuilder& builder, const dressing::Drape& drape) {
  if (!drape.least_border_line) return;
  const geometry::Segment line = *drape.least_border_line;
  builder.add_dimension(
      {line, line, line, {}, say("border {1}", {border_in_words(drape.least_border.value)})});
}

LayerKind look_of(dressing::BorderKind kind) {
  switch (kind) {
    case dressing::BorderKind::enough:
      return LayerKind::border_enough;
    case dressing::BorderKind::may_be_short:
    case dressing::BorderKind::too_short:
      return LayerKind::border_short;
    case dressing::BorderKind::none:
      break;
  }
  return LayerKind::border_none;
}

/// A band along the wound's edge; none where the border is enough all round.
void add_border(SketchBuilder& builder, const dressing::Drape& drape) {
  const bool all_enough = std::ranges::all_of(drape.border_stretches, [](const auto& stretch) {
    return stretch.kind == dressing::BorderKind::enough;
  });
  if (all_enough) return;
  for (const dressing::BorderStretch& stretch : drape.border_stretches) {
    builder.add_chain(look_of(stretch.kind), {stretch.line, false});
  }
}

void add_drape(SketchBuilder& builder, const dressing::Drape& drape) {
  builder.add_region(LayerKind::film_required, drape.required_outline_cm);
  builder.add_region(LayerKind::film, drape.outline_cm);
  for (const dressing::FilmSheet& sheet : drape.sheets) {
    if (sheet.shared > 0) continue;  // it lies over this wound only on the cutting table
    const geometry::Ring corners = geometry::corners(sheet.place);
    builder.add_area(LayerKind::film_sheet, {corners, {}});
    builder.add_caption({LayerKind::film_sheet, corners.front(), supplies::shown_name(sheet.item)});
  }
  for (const geometry::Segment& seam : drape.seams) {
    builder.add_chain(LayerKind::seam, {{seam.from, seam.to}, false});
  }
  for (const dressing::Bridge& bridge : drape.bridges) add_bridge(builder, bridge);
  add_border(builder, drape);
  add_port(builder, drape.port);
  add_least_border(builder, drape);
}

/// The side of the oriented box around the outline that lies farthest along `away`.
geometry::Segment box_side(const geometry::Segment& measured, const geometry::Ring& outline,
                           Point away) {
  double farthest = -1e300;
  for (const Point p : outline) farthest = std::max(farthest, geometry::dot(p, away));
  const auto on_side = [&](Point p) { return p + (farthest - geometry::dot(p, away)) * away; };
  return {on_side(measured.from), on_side(measured.to)};
}

void add_extent(SketchBuilder& builder, const geometry::Ring& outline, double direction_deg,
                const std::string& text) {
  const geometry::Segment measured = geometry::extremes_along(outline, direction_deg);
  const double angle = geometry::radians(direction_deg);
  Point away{std::sin(angle), -std::cos(angle)};  // prefers below and to the right
  if (away.y > 1e-9 || (std::abs(away.y) <= 1e-9 && away.x < 0)) away = -1.0 * away;
  builder.add_dimension({measured, box_side(measured, outline, away),
                         box_side(measured, outline, -1.0 * away), away, text});
}

void add_measures(SketchBuilder& builder, const wound::Case& value, const dressing::Plan& plan) {
  for (const dressing::WoundMeasures& measures : plan.wounds) {
    const auto& wounds = value.current().wounds;
    const auto wound = std::ranges::find(wounds, measures.id, &wound::Wound::id);
    if (wound == wounds.end() || wound->outline_cm.empty()) continue;
    const double direction = measures.length_direction_deg;
    add_extent(builder, wound->outline_cm, direction,
               say("length {1}", {cm(measures.length.value)}));
    add_extent(builder, wound->outline_cm, direction + 90,
               say("width {1}", {cm(measures.width.value)}));
  }
}

}  // namespace

std::string piece_name(const std::string& wound, int layer, int piece, bool several_wounds) {
  return (several_wounds ? wound + " " : "") + std::to_string(layer) + "." + std::to_string(piece);
}

std::string border_in_words(double border_cm) {
  return format_short(std::floor(border_cm * 100 + 1e-6) / 100, 2) + " cm";
}

Sketch sketch_case(const wound::Case& value) {
  SketchBuilder builder;
  add_case(builder, value);
  return builder.finish();
}

Sketch sketch_plan(const wound::Case& value, const dressing::Plan& plan) {
  SketchBuilder builder;
  for (const dressing::Drape& drape : plan.drapes) {
    for (const dressing::Bridge& bridge : drape.bridges) name_bridge(builder, bridge);
  }
  add_fill(builder, plan.fill, plan.wounds.size() > 1);
  add_case(builder, value);
  add_strips(builder, value, plan.fill);
  for (const dressing::Drape& drape : plan.drapes) add_drape(builder, drape);
  add_unfilled(builder, plan.fill);
  add_measures(builder, value, plan);
  return builder.finish();
}

}  // namespace drapewright::report
