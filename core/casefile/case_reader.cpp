#include <algorithm>
#include <array>
#include <limits>

#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/json_document.h"
#include "core/casefile/member_reader.h"
#include "core/casefile/picture_json.h"
#include "core/casefile/settings.h"

namespace drapewright::casefile {
namespace {

wound::Undermining undermining_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 3> names{"from_clock", "to_clock", "extent_cm"};
  const MemberReader members(value, term("an undermined part"), names);
  return {.from_clock = number_in(members.required("from_clock")),
          .to_clock = number_in(members.required("to_clock")),
          .extent_cm = number_in(members.required("extent_cm")),
          .extra = members.extra()};
}

wound::Tunnel tunnel_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 3> names{"clock", "length_cm", "explored"};
  const MemberReader members(value, term("a tunnel"), names);
  wound::Tunnel tunnel{.clock = number_in(members.required("clock")),
                       .length_cm = number_in(members.required("length_cm")),
                       .extra = members.extra()};
  members.boolean("explored", tunnel.explored);
  return tunnel;
}

wound::Wound wound_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 8> names{"id",          "outline_cm", "islands_cm",
                                                  "trace_cm",    "depth_cm",   "wall_run_in_cm",
                                                  "undermining", "tunnels"};
  const MemberReader members(value, term("a wound"), names);
  wound::Wound wound{.id = text_in(members.required("id")),
                     .outline_cm = ring_in(members.required("outline_cm")),
                     .extra = members.extra()};
  for (const auto& island : members.list("islands_cm")) wound.islands_cm.push_back(ring_in(island));
  if (const auto trace = members.optional("trace_cm")) wound.trace_cm = ring_in(*trace);
  members.number("depth_cm", wound.depth_cm);
  members.number("wall_run_in_cm", wound.wall_run_in_cm);
  for (const auto& part : members.list("undermining")) {
    wound.undermining.push_back(undermining_in(part));
  }
  for (const auto& tunnel : members.list("tunnels")) wound.tunnels.push_back(tunnel_in(tunnel));
  return wound;
}

wound::ZoneKind zone_kind_in(const JsonValue& value) {
  const std::string kind = text_in(value);
  if (kind == "no_film") return wound::ZoneKind::no_film;
  if (kind == "no_port") return wound::ZoneKind::no_port;
  value.fail(say("found the kind of zone {1}", {in_quotes(kind)}),
             say("\"no_film\" or \"no_port\""));
}

wound::SkinZone skin_zone_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 3> names{"kind", "outline_cm", "note"};
  const MemberReader members(value, term("a skin zone"), names);
  wound::SkinZone zone{.kind = zone_kind_in(members.required("kind")),
                       .outline_cm = ring_in(members.required("outline_cm")),
                       .extra = members.extra()};
  members.text("note", zone.note);
  return zone;
}

wound::Assessment assessment_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 5> names{"date", "wounds", "skin_zones",
                                                  "exudate_ml_per_day", "picture"};
  const MemberReader members(value, term("an assessment"), names);
  wound::Assessment assessment{.date = text_in(members.required("date")), .extra = members.extra()};
  for (const auto& wound : list_in(members.required("wounds"), term("wounds"))) {
    assessment.wounds.push_back(wound_in(wound));
  }
  for (const auto& zone : members.list("skin_zones")) {
    assessment.skin_zones.push_back(skin_zone_in(zone));
  }
  members.number("exudate_ml_per_day", assessment.exudate_ml_per_day);
  if (const auto picture = members.optional("picture")) assessment.picture = picture_in(*picture);
  return assessment;
}

wound::DressingSettings dressing_in(const JsonValue& value) {
  const MemberReader members(value, term("the dressing"), setting_names);
  wound::DressingSettings dressing;
  for (const auto& [name, setting] : settings) members.number(name, dressing.*setting);
  members.boolean("bridge_wanted", dressing.bridge_wanted);
  for (const auto& place : members.list("port_places_cm")) {
    dressing.port_places_cm.push_back(point_in(place));
  }
  for (const auto& item : members.list("filler_items")) {
    dressing.filler_items.push_back(text_in(item));
  }
  dressing.extra = members.extra();
  return dressing;
}

supplies::Kind stock_kind_in(const JsonValue& value) {
  const std::string name = text_in(value);
  const auto kind = supplies::kind_named(name);
  if (!kind) {
    value.fail(say("found the kind of item {1}", {in_quotes(name)}),
               say("filler_sheet, film_sheet, port, canister, battery or other"));
  }
  return *kind;
}

supplies::StockItem stock_item_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 8> names{"item",      "kind",         "length_cm",
                                                  "width_cm",  "thickness_cm", "capacity_ml",
                                                  "unit_cost", "available"};
  const MemberReader members(value, term("a stock item"), names);
  supplies::StockItem item{.item = text_in(members.required("item")),
                           .kind = stock_kind_in(members.required("kind")),
                           .extra = members.extra()};
  members.number("length_cm", item.length_cm);
  members.number("width_cm", item.width_cm);
  members.number("thickness_cm", item.thickness_cm);
  members.number("capacity_ml", item.capacity_ml);
  members.number("unit_cost", item.unit_cost);
  members.count("available", item.available);
  return item;
}

wound::Application application_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 4> names{"date", "pieces_placed", "pieces_removed",
                                                  "note"};
  const MemberReader members(value, term("an application"), names);
  wound::Application application{.date = text_in(members.required("date")),
                                 .pieces_placed = count_in(members.required("pieces_placed")),
                                 .extra = members.extra()};
  members.count("pieces_removed", application.pieces_removed);
  members.text("note", application.note);
  return application;
}

wound::CautionReview cautions_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 2> names{"reviewed", "present"};
  const MemberReader members(value, term("the cautions"), names);
  wound::CautionReview cautions;
  members.boolean("reviewed", cautions.reviewed);
  for (const auto& id : members.list("present")) cautions.present.push_back(text_in(id));
  cautions.extra = members.extra();
  return cautions;
}

/// Before anything else, since all else depends on it.
void check_version(const JsonValue& root) {
  const auto version = root.member("drapewright_case");
  if (!version) {
    if (root.member("drapewright_plan")) {
      root.fail(say("this is a plan, not a case"),
                say("the case file that the plan was made from"));
    }
    return;  // missing or misspelt: the reader of the members says which
  }
  const double number = number_in(*version);
  if (number == 1) return;
  const auto found = version->raw().substr(0, 40);
  version->fail(number > 1 ? say("found version {1}, which is newer than this program", {found})
                           : say("found version {1}", {found}),
                "\"drapewright_case\": 1");
}

/// A setting beside `dressing` instead of inside it would be kept as an unknown member, and the
/// default would be planned with.
void check_for_stray_settings(const JsonValue& root) {
  for (const auto& member : root.members()) {
    if (std::ranges::find(setting_names, member.name) == setting_names.end()) continue;
    member.key.fail(say("\"{1}\" stands outside of \"dressing\"", {member.name}),
                    say("this setting inside \"dressing\": { }"));
  }
}

/// Parts of the time that reading takes, roughly; the rest is checking.
constexpr double indexed_at = 0.5;
constexpr double decoded_at = 0.7;

wound::Case case_in(const JsonValue& root) {
  check_version(root);
  check_for_stray_settings(root);
  constexpr std::array<std::string_view, 11> names{
      "drapewright_case", "label",         "body_site",
      "body_site_id",     "limb_girth_cm", "head_direction_deg",
      "assessments",      "dressing",      "supplies",
      "applications",     "cautions"};
  const MemberReader members(root, term("the case"), names);
  members.required("drapewright_case");
  wound::Case out{.label = text_in(members.required("label")), .extra = members.extra()};
  members.text("body_site", out.body_site);
  members.text("body_site_id", out.body_site_id);
  members.number("limb_girth_cm", out.limb_girth_cm);
  members.number("head_direction_deg", out.head_direction_deg);
  for (const auto& item : list_in(members.required("assessments"), term("assessments"))) {
    out.assessments.push_back(assessment_in(item));
  }
  if (const auto value = members.optional("dressing")) out.dressing = dressing_in(*value);
  if (const auto value = members.optional("supplies")) {
    out.supplies.emplace();
    for (const auto& item : list_in(*value, term("stock items"))) {
      out.supplies->push_back(stock_item_in(item));
    }
  }
  for (const auto& item : members.list("applications")) {
    out.applications.push_back(application_in(item));
  }
  if (const auto value = members.optional("cautions")) out.cautions = cautions_in(*value);
  return out;
}

double distance_to_edge(geometry::Point p, geometry::Point from, geometry::Point to) {
  const geometry::Point along = to - from;
  const double length2 = dot(along, along);
  const double t = length2 > 0 ? std::clamp(dot(p - from, along) / length2, 0.0, 1.0) : 0;
  return distance(p, from + t * along);
}

bool is_ring(const JsonValue& value) {
  const auto points = value.items();
  if (points.size() < 3) return false;
  const auto numbers = points.front().items();
  return numbers.size() == 2 && numbers.front().kind() == JsonKind::number;
}

/// The corner where the edge nearest to `fault` begins, and how far that edge is.
std::pair<double, JsonValue> nearest_corner(const JsonValue& ring, geometry::Point fault) {
  const auto points = ring.items();
  const auto corner = [&](std::size_t i) {
    const auto numbers = points[i % points.size()].items();
    return geometry::Point{numbers[0].number(), numbers[1].number()};
  };
  std::pair<double, JsonValue> nearest{std::numeric_limits<double>::infinity(), points[0]};
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double away = distance_to_edge(fault, corner(i), corner(i + 1));
    if (away < nearest.first) nearest = {away, points[i]};
  }
  return nearest;
}

/// Where the fault of a shape lies in the file: where the shape begins says little when it has
/// hundreds of points. `value` is an outline, or a list of them, or something else.
TextPosition position_of_fault(const JsonValue& value, const DrawingPosition& fault) {
  std::pair<double, JsonValue> nearest{std::numeric_limits<double>::infinity(), value};
  const auto rings = is_ring(value) ? std::vector<JsonValue>{value} : value.items();
  for (const auto& ring : rings) {
    if (!is_ring(ring)) continue;
    const auto corner = nearest_corner(ring, {fault.x_cm, fault.y_cm});
    if (corner.first < nearest.first) nearest = corner;
  }
  return *nearest.second.place().text;
}

}  // namespace

wound::Case case_from_json(std::string_view text, const std::string& file,
                           const Progress& progress) {
  const Progress indexing({}, [&](double part) { progress.at(indexed_at * part); });
  const JsonDocument document(text, file, indexing);
  progress.at(indexed_at);
  wound::Case out = case_in(document.root());
  progress.at(decoded_at);
  try {
    wound::check(out);
  } catch (const InputError& fault) {
    const JsonValue value = document.nearest(fault.place().pointer);
    Place place = value.place();
    if (fault.place().drawing) place.text = position_of_fault(value, *fault.place().drawing);
    throw fault.within(place);
  }
  return out;
}

}  // namespace drapewright::casefile
