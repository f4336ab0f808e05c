#include <array>

#include "core/base/say.h"
#include "core/casefile/layout_json.h"
#include "core/casefile/member_reader.h"
#include "core/cutting/job_check.h"

namespace drapewright::casefile {
namespace {

geometry::Polygon piece_in(const JsonValue& value) {
  if (value.kind() == JsonKind::list) return {ring_in(value), {}};
  if (value.kind() != JsonKind::object) {
    value.fail(say("found {1}", {value.in_words()}),
               say("a list of points, or an object with outer and holes"));
  }
  constexpr std::array<std::string_view, 2> names{"outer", "holes"};
  const MemberReader members(value, term("a piece"), names);
  geometry::Polygon piece{ring_in(members.required("outer")), {}};
  for (const auto& hole : members.list("holes")) piece.holes.push_back(ring_in(hole));
  return piece;
}

cutting::SheetKind sheet_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 4> names{"length_cm", "width_cm", "unit_cost",
                                                  "available"};
  const MemberReader members(value, term("a sheet"), names);
  cutting::SheetKind sheet{.length_cm = number_in(members.required("length_cm")),
                           .width_cm = number_in(members.required("width_cm")),
                           .unit_cost = number_in(members.required("unit_cost")),
                           .available = {}};
  members.count("available", sheet.available);
  return sheet;
}

cutting::Job job_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 7> names{
      "pieces",         "gap_cm", "edge_gap_cm",     "rotations_deg",
      "strip_width_cm", "sheets", "least_off_cut_cm"};
  const MemberReader members(value, term("a layout job"), names);
  cutting::Job job;
  for (const auto& piece : list_in(members.required("pieces"), term("pieces"))) {
    job.pieces.push_back(piece_in(piece));
  }
  members.number("gap_cm", job.gap_cm);
  job.edge_gap_cm = job.gap_cm;
  members.number("edge_gap_cm", job.edge_gap_cm);
  members.number("least_off_cut_cm", job.least_off_cut_cm);
  members.number("strip_width_cm", job.strip_width_cm);
  for (const auto& sheet : members.list("sheets")) job.sheets.push_back(sheet_in(sheet));
  if (const auto turns = members.optional("rotations_deg")) {
    job.rotations_deg.emplace();
    for (const auto& turn : list_in(*turns, term("angles"))) {
      job.rotations_deg->push_back(number_in(turn));
    }
  }
  return job;
}

}  // namespace

cutting::Job layout_job_from_json(std::string_view text, const std::string& file) {
  const JsonDocument document(text, file);
  cutting::Job job = job_in(document.root());
  try {
    cutting::check(job);
  } catch (const InputError& error) {
    throw error.within(document.nearest(error.place().pointer).place());
  }
  return job;
}

}  // namespace drapewright::casefile
