#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/validity.h"
#include "core/practice/limits.h"
#include "core/wound/case.h"

namespace drapewright::wound {
namespace {

[[noreturn]] void refuse(std::string problem, std::string expected, std::string pointer) {
  throw InputError(std::move(problem), std::move(expected), {.pointer = std::move(pointer)});
}

std::string child(const std::string& pointer, std::string_view member) {
  return pointer + "/" + std::string(member);
}
std::string child(const std::string& pointer, std::size_t index) {
  return pointer + "/" + std::to_string(index);
}

/// A number against its row in the table of limits.
void check_number(double value, std::string_view id, const std::string& pointer) {
  const practice::Limit& limit = practice::limit(id);
  if (practice::within_bounds(limit, value)) return;
  const std::string member = pointer.substr(pointer.rfind('/') + 1);
  refuse(say("`{1}` is {2}", {member, format_short(value, 4)}), practice::bounds_in_words(limit),
         pointer);
}

void check_clock(double hour, const std::string& pointer) {
  if (std::isfinite(hour) && hour > 0 && hour <= 12) return;
  refuse(say("the clock position is {1}", {format_short(hour, 4)}),
         say("an hour above 0, up to 12"), pointer);
}

/// @param fault says how many characters there are, at its place {1}
void check_text(const std::string& text, std::size_t longest, std::string_view fault,
                const std::string& pointer) {
  // Characters, not bytes: continuation bytes of UTF-8 do not count.
  const auto characters = std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
  if (characters >= 1 && static_cast<std::size_t>(characters) <= longest) return;
  refuse(say(fault, {static_cast<int>(characters)}), say("{1} to {2}", {1, longest}), pointer);
}

bool is_leap(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

bool is_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0, 1, 2, 3, 5, 6, 8, 9}) {
    if (text[i] < '0' || text[i] > '9') return false;
  }
  const int year = std::stoi(text.substr(0, 4));
  const int month = std::stoi(text.substr(5, 2));
  const int day = std::stoi(text.substr(8, 2));
  if (month < 1 || month > 12 || day < 1) return false;
  constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return day <= days[month - 1] + (month == 2 && is_leap(year) ? 1 : 0);
}

void check_date(const std::string& text, const std::string& pointer) {
  if (is_date(text)) return;
  refuse(say("\"{1}\" is not a date", {text}), say("a day of the calendar as YYYY-MM-DD"), pointer);
}

void check_undermining(const Undermining& value, const std::string& pointer) {
  check_clock(value.from_clock, child(pointer, "from_clock"));
  check_clock(value.to_clock, child(pointer, "to_clock"));
  check_number(value.extent_cm, "undermining_extent_cm", child(pointer, "extent_cm"));
}

void check_tunnel(const Tunnel& value, const std::string& pointer) {
  check_clock(value.clock, child(pointer, "clock"));
  check_number(value.length_cm, "tunnel_length_cm", child(pointer, "length_cm"));
}

void check_wound(const Wound& value, const std::string& pointer) {
  check_text(value.id, 16, term("the wound's id has {1} characters"), child(pointer, "id"));
  check_outline(value.outline_cm, value.islands_cm, pointer);
  check_number(value.depth_cm, "depth_cm", child(pointer, "depth_cm"));
  check_number(value.wall_run_in_cm, "wall_run_in_cm", child(pointer, "wall_run_in_cm"));
  for (std::size_t i = 0; i < value.undermining.size(); ++i) {
    check_undermining(value.undermining[i], child(child(pointer, "undermining"), i));
  }
  for (std::size_t i = 0; i < value.tunnels.size(); ++i) {
    check_tunnel(value.tunnels[i], child(child(pointer, "tunnels"), i));
  }
}

void check_assessment(const Assessment& value, const std::string& pointer) {
  check_date(value.date, child(pointer, "date"));
  const std::string wounds = child(pointer, "wounds");
  if (value.wounds.empty()) refuse(say("there is no wound"), say("one wound or more"), wounds);
  std::set<std::string> seen;
  for (std::size_t i = 0; i < value.wounds.size(); ++i) {
    check_wound(value.wounds[i], child(wounds, i));
    if (!seen.insert(value.wounds[i].id).second) {
      refuse(say("a second wound has the id \"{1}\"", {value.wounds[i].id}),
             say("an id of its own for every wound"), child(child(wounds, i), "id"));
    }
  }
  for (std::size_t i = 0; i < value.skin_zones.size(); ++i) {
    const std::string zone = child(child(pointer, "skin_zones"), i);
    check_outline(value.skin_zones[i].outline_cm, {}, zone);
  }
  if (value.exudate_ml_per_day) {
    check_number(*value.exudate_ml_per_day, "exudate_ml_per_day",
                 child(pointer, "exudate_ml_per_day"));
  }
  if (value.picture) picture::check(*value.picture, child(pointer, "picture"));
}

void check_port_places(const std::vector<geometry::Point>& places, const std::string& pointer) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (std::isfinite(places[i].x) && std::isfinite(places[i].y)) continue;
    refuse(say("the port's place is not finite"), say("two finite numbers [x, y] in cm"),
           child(pointer, i));
  }
}

void check_settings(const DressingSettings& value) {
  const auto check = [](double number, std::string_view id) {
    check_number(number, id, child("/dressing", id));
  };
  check(value.inset_cm, "inset_cm");
  check(value.border_cm, "border_cm");
  check(value.filler_thickness_cm, "filler_thickness_cm");
  check(value.film_overlap_cm, "film_overlap_cm");
  check(value.aperture_diameter_cm, "aperture_diameter_cm");
  check(value.port_base_diameter_cm, "port_base_diameter_cm");
  check(value.bridge_width_cm, "bridge_width_cm");
  check(value.piece_gap_cm, "piece_gap_cm");
  check(value.pressure_mmhg, "pressure_mmhg");
  check(value.change_every_h, "change_every_h");
  check(value.course_days, "course_days");
  check(value.canister_ml, "canister_ml");
  check(value.canister_max_days, "canister_max_days");
  check(value.battery_days, "battery_days");
  check(value.tracing_error_mm, "tracing_error_mm");
  check_port_places(value.port_places_cm, "/dressing/port_places_cm");
}

/// Sheets without sides cannot be laid out, so a list that has such a line is refused.
void check_stock_item(const supplies::StockItem& value, const std::string& pointer) {
  if (value.item.empty()) {
    refuse(say("the item has no name"), say("a name"), child(pointer, "item"));
  }
  const bool sheet =
      value.kind == supplies::Kind::filler_sheet || value.kind == supplies::Kind::film_sheet;
  const auto side = [&](const std::optional<double>& number, std::string_view id, bool needed) {
    if (!number && needed) {
      refuse(say("`{1}` is missing in a {2}", {id, supplies::name_of(value.kind)}),
             say("a length in cm"), pointer);
    }
    if (number && !(std::isfinite(*number) && *number > 0 && *number <= 500)) {
      refuse(say("`{1}` is {2}", {id, format_short(*number)}), say("above 0, up to 500"),
             child(pointer, id));
    }
  };
  side(value.length_cm, "length_cm", sheet);
  side(value.width_cm, "width_cm", sheet);
  side(value.thickness_cm, "thickness_cm", value.kind == supplies::Kind::filler_sheet);
  if (value.capacity_ml && !(std::isfinite(*value.capacity_ml) && *value.capacity_ml > 0)) {
    refuse(say("`{1}` is {2}", {"capacity_ml", format_short(*value.capacity_ml)}), say("above 0"),
           child(pointer, "capacity_ml"));
  }
  if (value.unit_cost && !(std::isfinite(*value.unit_cost) && *value.unit_cost >= 0)) {
    refuse(say("`{1}` is {2}", {"unit_cost", format_short(*value.unit_cost)}), say("0 or more"),
           child(pointer, "unit_cost"));
  }
  if (value.available && *value.available < 0) {
    refuse(say("`{1}` is {2}", {"available", *value.available}), say("0 or more"),
           child(pointer, "available"));
  }
}

void check_application(const Application& value, const std::string& pointer) {
  check_date(value.date, child(pointer, "date"));
  if (value.pieces_placed < 0) {
    refuse(say("`{1}` is {2}", {"pieces_placed", value.pieces_placed}), say("0 or more"),
           child(pointer, "pieces_placed"));
  }
  if (value.pieces_removed && *value.pieces_removed < 0) {
    refuse(say("`{1}` is {2}", {"pieces_removed", *value.pieces_removed}), say("0 or more"),
           child(pointer, "pieces_removed"));
  }
}

}  // namespace

void check_outline(const geometry::Ring& outline, const std::vector<geometry::Ring>& islands,
                   const std::string& pointer) {
  const double largest = practice::limit("outline_extent_cm").maximum;
  const auto report = [](const geometry::ShapeFault& fault, const std::string& at) {
    Place place{.pointer = at};
    if (std::isfinite(fault.where.x) && std::isfinite(fault.where.y)) {
      place.drawing = DrawingPosition{fault.where.x, fault.where.y};
    }
    throw InputError(fault.problem, fault.expected, place);
  };
  if (const auto fault = geometry::find_fault(outline, largest)) {
    report(*fault, child(pointer, "outline_cm"));
  }
  for (std::size_t i = 0; i < islands.size(); ++i) {
    if (const auto fault = geometry::find_fault(islands[i], largest)) {
      report(*fault, child(child(pointer, "islands_cm"), i));
    }
  }
  if (const auto fault = geometry::find_island_fault(outline, islands, largest)) {
    report(*fault, child(pointer, "islands_cm"));
  }
}

void check(const Case& value) {
  check_text(value.label, 80, term("the label has {1} characters"), "/label");
  if (!std::isfinite(value.head_direction_deg) || std::fabs(value.head_direction_deg) > 360) {
    refuse(say("`{1}` is {2}", {"head_direction_deg", format_short(value.head_direction_deg)}),
           say("{1} to {2}", {-360, 360}), "/head_direction_deg");
  }
  if (value.limb_girth_cm) check_number(*value.limb_girth_cm, "limb_girth_cm", "/limb_girth_cm");
  if (value.assessments.empty()) {
    refuse(say("there is no assessment"), say("one assessment or more"), "/assessments");
  }
  for (std::size_t i = 0; i < value.assessments.size(); ++i) {
    check_assessment(value.assessments[i], child("/assessments", i));
    // The last is planned: in a list out of order that would be an old wound.
    if (i > 0 && value.assessments[i].date < value.assessments[i - 1].date) {
      refuse(say("the assessment of {1} stands after that of {2}",
                 {value.assessments[i].date, value.assessments[i - 1].date}),
             say("assessments with the oldest first"), child(child("/assessments", i), "date"));
    }
  }
  check_settings(value.dressing);
  if (value.supplies) {
    for (std::size_t i = 0; i < value.supplies->size(); ++i) {
      check_stock_item((*value.supplies)[i], child("/supplies", i));
    }
  }
  for (std::size_t i = 0; i < value.applications.size(); ++i) {
    check_application(value.applications[i], child("/applications", i));
  }
}

}  // namespace drapewright::wound
