#include "core/casefile/cut_json.h"

#include "core/casefile/shape_json.h"

namespace drapewright::casefile {
namespace {

std::string_view name_of(dressing::PieceUse use) {
  switch (use) {
    case dressing::PieceUse::strip:
      return "strip";
    case dressing::PieceUse::bridge:
      return "bridge";
    case dressing::PieceUse::film:
      return "film";
    case dressing::PieceUse::skin_protection:
      return "skin_protection";
    case dressing::PieceUse::layer:
      break;
  }
  return "layer";
}

/// Two opposite corners, the lower left first; null where nothing is left.
void write_off_cut(JsonWriter& out, const std::optional<geometry::Box>& box) {
  out.name("off_cut_cm");
  if (box) {
    out.ring({box->low, box->high}, false);
  } else {
    out.null();
  }
}

void write(JsonWriter& out, const dressing::Placement& placement) {
  out.begin_object();
  out.text("use", name_of(placement.use));
  out.text("wound", placement.wound);
  out.number("layer", placement.layer);
  out.number("piece", placement.piece);
  if (placement.part > 0) out.number("part", placement.part);
  out.number("angle_deg", placement.angle_deg);
  out.name("shift_cm");
  out.point(placement.shift_cm);
  out.name("outline_cm");
  write_piece(out, placement.outline_cm);
  out.end_object();
}

void write(JsonWriter& out, const dressing::CutSheet& sheet) {
  out.begin_object();
  out.text("item", sheet.item);
  out.number("length_cm", sheet.length_cm);
  out.number("width_cm", sheet.width_cm);
  if (sheet.thickness_cm > 0) out.number("thickness_cm", sheet.thickness_cm);
  out.number("used_fraction", sheet.used_fraction);
  out.begin_list("placements");
  for (const auto& placement : sheet.placements) write(out, placement);
  out.end_list();
  write_off_cut(out, sheet.off_cut);
  out.end_object();
}

void write_cost(JsonWriter& out, std::string_view name, const std::optional<double>& cost) {
  out.name(name);
  if (cost) {
    out.number(*cost);
  } else {
    out.null();
  }
}

void write(JsonWriter& out, const dressing::SheetChoice& choice) {
  out.begin_object();
  out.begin_list("items");
  for (const auto& item : choice.items) out.text(item);
  out.end_list();
  out.begin_list("opened");
  for (const auto& [item, sheets] : choice.opened) {
    out.begin_object();
    out.text("item", item);
    out.number("sheets", sheets);
    out.end_object();
  }
  out.end_list();
  out.number("sheets", choice.sheets);
  write_cost(out, "cost", choice.cost);
  out.number("used_fraction", choice.used_fraction);
  out.number("pieces", choice.pieces);
  out.number("seams", choice.seams);
  out.number("missing", choice.missing);
  write_off_cut(out, choice.off_cut);
  out.boolean("best_possible", choice.best_possible);
  out.number("fewer_possible", choice.fewer_possible);
  write_cost(out, "cheaper_possible", choice.cheaper_possible);
  out.boolean("chosen", choice.chosen);
  out.end_object();
}

void write(JsonWriter& out, const dressing::SheetComparison& comparison) {
  out.begin_object();
  out.number("thickness_cm", comparison.thickness_cm);
  out.begin_list("choices");
  for (const auto& choice : comparison.choices) write(out, choice);
  out.end_list();
  out.end_object();
}

template <typename Part>
void write_list(JsonWriter& out, std::string_view name, const std::vector<Part>& parts) {
  out.begin_list(name);
  for (const auto& part : parts) write(out, part);
  out.end_list();
}

}  // namespace

void write_cut_layout(JsonWriter& out, const dressing::Plan& plan) {
  write_list(out, "cut_layout", plan.cut_layout);
  write_list(out, "film_layout", plan.film_layout);
  write_list(out, "sheet_comparison", plan.sheet_comparison);
}

}  // namespace drapewright::casefile
