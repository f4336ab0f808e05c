#include "core/casefile/plan_json.h"

#include <array>
#include <span>

#include "core/casefile/cut_json.h"
#include "core/casefile/json_writer.h"
#include "core/casefile/shape_json.h"

namespace drapewright::casefile {
namespace {

using dressing::Figure;

/// "area" and "cm2" give area_cm2 and area_spread_cm2.
void write_figure(JsonWriter& out, const std::string& name, const std::string& unit,
                  const Figure& figure) {
  out.number(name + "_" + unit, figure.value);
  out.number(name + "_spread_" + unit, figure.spread);
}

/// Below all writers, since it must know them.
template <typename Part>
void write_list(JsonWriter& out, std::string_view name, const std::vector<Part>& parts);

void write(JsonWriter& out, const dressing::WoundMeasures& wound) {
  out.begin_object();
  out.text("id", wound.id);
  write_figure(out, "area", "cm2", wound.area);
  out.number("perimeter_cm", wound.perimeter.value);
  write_figure(out, "length", "cm", wound.length);
  out.number("length_direction_deg", wound.length_direction_deg);
  write_figure(out, "width", "cm", wound.width);
  write_figure(out, "head_to_foot", "cm", wound.head_to_foot);
  write_figure(out, "side_to_side", "cm", wound.side_to_side);
  out.number("rectangle_area_cm2", wound.rectangle_area_cm2);
  out.number("ellipse_area_cm2", wound.ellipse_area_cm2);
  write_figure(out, "volume", "cm3", wound.volume);
  out.number("pocket_volume_cm3", wound.pocket_volume_cm3);
  out.number("kundin_volume_cm3", wound.kundin_volume_cm3);
  write_point(out, "centroid_cm", wound.centroid_cm);
  write_line(out, "length_line_cm", wound.length_line);
  write_line(out, "width_line_cm", wound.width_line);
  out.end_object();
}

void write(JsonWriter& out, const dressing::Layer& layer) {
  out.begin_object();
  out.text("wound", layer.wound);
  out.number("index", layer.index);
  out.number("top_cm", layer.top_cm);
  out.number("thickness_cm", layer.thickness_cm);
  out.number("sheet_thickness_cm", layer.sheet_thickness_cm);
  out.number("inset_cm", layer.inset_cm);
  out.boolean("reaches_into_pockets", layer.reaches_into_pockets);
  write_pieces(out, "pieces", layer.pieces);
  out.end_object();
}

void write(JsonWriter& out, const dressing::TunnelStrip& strip) {
  out.begin_object();
  out.text("wound", strip.wound);
  out.number("clock", strip.clock);
  out.number("length_cm", strip.length_cm);
  out.number("width_cm", strip.width_cm);
  out.number("parts", strip.parts);
  out.end_object();
}

void write(JsonWriter& out, const dressing::Seam& seam) {
  out.begin_object();
  out.text("wound", seam.wound);
  out.number("layer", seam.layer);
  write_line(out, "line_cm", seam.line);
  out.end_object();
}

void write(JsonWriter& out, const dressing::Fill& fill) {
  out.begin_object();
  write_list(out, "layers", fill.layers);
  write_list(out, "strips", fill.strips);
  write_list(out, "seams", fill.seams);
  out.number("piece_count", fill.piece_count);
  out.number("area_cm2", fill.area_cm2);
  out.number("volume_cm3", fill.volume_cm3);
  out.number("top_area_cm2", fill.top_area_cm2);
  out.number("unfilled_cm2", fill.unfilled_cm2);
  write_pieces(out, "unfilled_outline_cm", fill.unfilled);
  out.end_object();
}

void write(JsonWriter& out, const dressing::Bridge& bridge) {
  out.begin_object();
  out.name("line_cm");
  out.ring(bridge.line, false);
  out.number("length_cm", bridge.length_cm);
  out.number("width_cm", bridge.width_cm);
  out.number("pad_diameter_cm", bridge.pad_diameter_cm);
  write_pieces(out, "strip", bridge.strip);
  write_pieces(out, "skin_protection", bridge.skin_protection);
  out.boolean("crosses_no_port", bridge.crosses_no_port);
  out.end_object();
}

/// @param bridge  that the port sits on; null when it sits on the wound
void write(JsonWriter& out, const dressing::Port& port, const dressing::Bridge* bridge) {
  out.begin_object();
  write_point(out, "centre_cm", port.centre_cm);
  out.number("aperture_diameter_cm", port.aperture_diameter_cm);
  out.number("aperture_limit_cm", port.aperture_limit_cm);
  write_figure(out, "largest_aperture", "cm", port.largest_aperture);
  write_figure(out, "room", "cm", port.room);
  out.boolean("fits", port.fits_on_wound());
  out.boolean("aperture_on_filler", port.fits);
  out.number("base_diameter_cm", port.base_diameter_cm);
  out.boolean("chosen", port.chosen);
  out.boolean("on_bridge", port.on_bridge);
  out.name("bridge");
  if (bridge) {
    write(out, *bridge);
  } else {
    out.null();
  }
  out.end_object();
}

void write(JsonWriter& out, const dressing::FilmSheet& sheet) {
  out.begin_object();
  out.text("item", sheet.item);
  write_point(out, "centre_cm", sheet.place.centre);
  out.number("angle_deg", sheet.place.angle_deg);
  out.number("length_cm", sheet.place.length_cm);
  out.number("width_cm", sheet.place.width_cm);
  if (sheet.shared > 0) out.number("shared", sheet.shared);
  out.end_object();
}

void write_numbers(JsonWriter& out, std::string_view name, std::span<const double> numbers) {
  out.name(name);
  out.numbers(numbers);
}

void write(JsonWriter& out, const dressing::BorderStretch& stretch) {
  out.begin_object();
  out.text("kind", dressing::name_of(stretch.kind));
  out.number("length_cm", stretch.length_cm);
  write_figure(out, "least", "cm", stretch.least);
  write_line(out, "least_line_cm", stretch.least_line);
  out.name("line_cm");
  out.ring(stretch.line, false);
  if (stretch.advice) {
    out.name("advice");
    out.begin_object();
    out.number("strip_length_cm", stretch.advice->strip_length_cm);
    out.number("strip_width_cm", stretch.advice->strip_width_cm);
    if (stretch.advice->reach_round_cm) {
      out.number("reach_round_cm", *stretch.advice->reach_round_cm);
    }
    out.end_object();
  }
  out.end_object();
}

/// The bridges between pieces of filler, and then the port with its own.
void write_bridges_and_port(JsonWriter& out, const dressing::Drape& drape) {
  const bool to_port = drape.port.on_bridge && !drape.bridges.empty();
  const std::span<const dressing::Bridge> bridges = drape.bridges;
  out.begin_list("joins");
  for (const auto& join : bridges.first(bridges.size() - (to_port ? 1 : 0))) write(out, join);
  out.end_list();
  out.name("port");
  write(out, drape.port, to_port ? &bridges.back() : nullptr);
}

void write(JsonWriter& out, const dressing::Drape& drape) {
  out.begin_object();
  out.begin_list("wounds");
  for (const auto& id : drape.wounds) out.text(id);
  out.end_list();
  write_pieces(out, "required_outline_cm", drape.required_outline_cm);
  write_pieces(out, "outline_cm", drape.outline_cm);
  out.number("area_cm2", drape.area_cm2);
  write_numbers(out, "rectangle_cm",
                std::array{drape.rectangle.length_cm, drape.rectangle.width_cm});
  write_point(out, "rectangle_centre_cm", drape.rectangle.centre);
  out.number("rectangle_angle_deg", drape.rectangle.angle_deg);
  write_figure(out, "least_border", "cm", drape.least_border);
  write_line(out, "least_border_line_cm", drape.least_border_line);
  write_numbers(out, "border_by_clock_cm", drape.border_by_clock_cm);
  out.number("border_enough_cm", drape.border_enough_cm);
  write_list(out, "border_stretches", drape.border_stretches);
  write_point(out, "centroid_cm", drape.centroid_cm);
  write_bridges_and_port(out, drape);
  write_list(out, "sheets", drape.sheets);
  write_list(out, "protection_sheets", drape.protection_sheets);
  out.begin_list("seams_cm");
  for (const auto& seam : drape.seams) out.ring({seam.from, seam.to}, false);
  out.end_list();
  out.end_object();
}

void write(JsonWriter& out, const dressing::Consumable& line) {
  out.begin_object();
  out.text("item", line.item);
  out.text("kind", supplies::name_of(line.kind));
  out.number("per_application", line.per_application);
  out.number("per_course", line.per_course);
  out.text("basis", line.basis);
  out.boolean("estimate", line.estimate);
  out.end_object();
}

void write(JsonWriter& out, const dressing::Finding& finding) {
  out.begin_object();
  out.text("severity", dressing::name_of(finding.severity));
  out.text("code", finding.code);
  out.text("text", finding.text);
  if (!finding.source.empty()) out.text("source", finding.source);
  if (!finding.wound.empty()) out.text("wound", finding.wound);
  if (finding.where_cm) write_point(out, "where_cm", finding.where_cm);
  out.end_object();
}

template <typename Part>
void write_list(JsonWriter& out, std::string_view name, const std::vector<Part>& parts) {
  out.begin_list(name);
  for (const auto& part : parts) write(out, part);
  out.end_list();
}

}  // namespace

std::string plan_to_json(const dressing::Plan& plan, bool compact) {
  JsonWriter out(compact);
  out.begin_object();
  out.number("drapewright_plan", 1);
  out.text("label", plan.label);
  out.text("date", plan.date);
  if (!plan.body_site.empty()) out.text("body_site", plan.body_site);
  out.number("head_direction_deg", plan.head_direction_deg);
  out.text("twelve_oclock", practice::name_of(plan.twelve));
  out.number("tracing_error_cm", plan.tracing_error_cm);
  out.number("border_cm", plan.border_cm);
  out.number("applications", plan.applications);
  write_list(out, "wounds", plan.wounds);
  out.name("fill");
  write(out, plan.fill);
  write_list(out, "drapes", plan.drapes);
  write_cut_layout(out, plan);
  write_list(out, "consumables", plan.consumables);
  write_list(out, "findings", plan.findings);
  out.end_object();
  return out.take();
}

}  // namespace drapewright::casefile
