#include "core/casefile/case_json.h"
#include "core/casefile/json_writer.h"
#include "core/casefile/picture_json.h"
#include "core/casefile/settings.h"

namespace drapewright::casefile {
namespace {

void write(JsonWriter& out, const wound::Undermining& value) {
  out.begin_object();
  out.number("from_clock", value.from_clock);
  out.number("to_clock", value.to_clock);
  out.number("extent_cm", value.extent_cm);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::Tunnel& value) {
  out.begin_object();
  out.number("clock", value.clock);
  out.number("length_cm", value.length_cm);
  out.boolean("explored", value.explored);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::SkinZone& value);
void write(JsonWriter& out, const wound::Application& value);

template <typename Part>
void write_list(JsonWriter& out, std::string_view name, const std::vector<Part>& parts) {
  if (parts.empty()) return;
  out.begin_list(name);
  for (const auto& part : parts) write(out, part);
  out.end_list();
}

void write(JsonWriter& out, const wound::Wound& value) {
  out.begin_object();
  out.text("id", value.id);
  out.name("outline_cm");
  out.ring(value.outline_cm, false);
  if (!value.islands_cm.empty()) {
    out.begin_list("islands_cm");
    for (const auto& island : value.islands_cm) out.ring(island, false);
    out.end_list();
  }
  if (!value.trace_cm.empty()) {
    out.name("trace_cm");
    out.ring(value.trace_cm, false);
  }
  out.number("depth_cm", value.depth_cm);
  out.number("wall_run_in_cm", value.wall_run_in_cm);
  write_list(out, "undermining", value.undermining);
  write_list(out, "tunnels", value.tunnels);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::SkinZone& value) {
  out.begin_object();
  out.text("kind", value.kind == wound::ZoneKind::no_film ? "no_film" : "no_port");
  out.name("outline_cm");
  out.ring(value.outline_cm, false);
  if (!value.note.empty()) out.text("note", value.note);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::Assessment& value) {
  out.begin_object();
  out.text("date", value.date);
  out.begin_list("wounds");
  for (const auto& wound : value.wounds) write(out, wound);
  out.end_list();
  write_list(out, "skin_zones", value.skin_zones);
  if (value.exudate_ml_per_day) out.number("exudate_ml_per_day", *value.exudate_ml_per_day);
  if (value.picture) {
    out.name("picture");
    write(out, *value.picture);
  }
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::DressingSettings& value) {
  out.begin_object();
  for (const auto& [name, setting] : settings) out.number(name, value.*setting);
  out.boolean("bridge_wanted", value.bridge_wanted);
  if (!value.port_places_cm.empty()) {
    out.name("port_places_cm");
    out.ring(value.port_places_cm, false);
  }
  if (!value.filler_items.empty()) {
    out.begin_list("filler_items");
    for (const auto& item : value.filler_items) out.text(item);
    out.end_list();
  }
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const supplies::StockItem& value) {
  const auto optional = [&](std::string_view name, const auto& number) {
    if (number) out.number(name, *number);
  };
  out.begin_object();
  out.text("item", value.item);
  out.text("kind", supplies::name_of(value.kind));
  optional("length_cm", value.length_cm);
  optional("width_cm", value.width_cm);
  optional("thickness_cm", value.thickness_cm);
  optional("capacity_ml", value.capacity_ml);
  optional("unit_cost", value.unit_cost);
  optional("available", value.available);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::Application& value) {
  out.begin_object();
  out.text("date", value.date);
  out.number("pieces_placed", value.pieces_placed);
  if (value.pieces_removed) out.number("pieces_removed", *value.pieces_removed);
  if (!value.note.empty()) out.text("note", value.note);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const wound::CautionReview& value) {
  out.begin_object();
  out.boolean("reviewed", value.reviewed);
  out.begin_list("present");
  for (const auto& id : value.present) out.text(id);
  out.end_list();
  out.extra(value.extra);
  out.end_object();
}

}  // namespace

// Settings are written even where they equal their default, so that a case goes on meaning the same
// should a later version change a default. What was not seen or not done is left out.
std::string case_to_json(const wound::Case& value) {
  JsonWriter out;
  out.begin_object();
  out.number("drapewright_case", 1);
  out.text("label", value.label);
  if (!value.body_site.empty()) out.text("body_site", value.body_site);
  if (!value.body_site_id.empty()) out.text("body_site_id", value.body_site_id);
  if (value.limb_girth_cm) out.number("limb_girth_cm", *value.limb_girth_cm);
  out.number("head_direction_deg", value.head_direction_deg);
  out.begin_list("assessments");
  for (const auto& assessment : value.assessments) write(out, assessment);
  out.end_list();
  out.name("dressing");
  write(out, value.dressing);
  out.name("cautions");
  write(out, value.cautions);
  if (value.supplies) {
    out.begin_list("supplies");
    for (const auto& item : *value.supplies) write(out, item);
    out.end_list();
  }
  write_list(out, "applications", value.applications);
  out.extra(value.extra);
  out.end_object();
  return out.take();
}

}  // namespace drapewright::casefile
