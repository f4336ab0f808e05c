#include "core/casefile/picture_json.h"

#include <array>

#include "core/base/say.h"
#include "core/casefile/member_reader.h"

namespace drapewright::casefile {
namespace {

using picture::KnownLength;
using picture::KnownSquare;
using picture::LimbView;
using picture::Pixel;

Pixel pixel_in(const JsonValue& value) {
  const geometry::Point p = point_in(value);
  return {p.x, p.y};
}

template <std::size_t count>
std::array<Pixel, count> pixels_in(const JsonValue& value) {
  const auto items = list_in(value, term("places in the picture"));
  if (items.size() != count) {
    value.fail(say("found {1} places", {items.size()}),
               say("{1} places [x, y] in pixels", {count}));
  }
  std::array<Pixel, count> out;
  for (std::size_t i = 0; i < count; ++i) out[i] = pixel_in(items[i]);
  return out;
}

KnownLength known_length_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 3> names{"from_px", "to_px", "length_cm"};
  const MemberReader members(value, term("a known length"), names);
  return {.from = pixel_in(members.required("from_px")),
          .to = pixel_in(members.required("to_px")),
          .length_cm = number_in(members.required("length_cm")),
          .extra = members.extra()};
}

KnownSquare known_square_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 2> names{"corners_px", "side_cm"};
  const MemberReader members(value, term("a known square"), names);
  return {.corners = pixels_in<4>(members.required("corners_px")),
          .side_cm = number_in(members.required("side_cm")),
          .extra = members.extra()};
}

LimbView limb_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 3> names{"axis_px", "girth_cm", "camera_distance_cm"};
  const MemberReader members(value, term("a limb in a picture"), names);
  const auto axis = pixels_in<2>(members.required("axis_px"));
  LimbView limb{.axis_from = axis[0],
                .axis_to = axis[1],
                .girth_cm = number_in(members.required("girth_cm")),
                .extra = members.extra()};
  members.number("camera_distance_cm", limb.camera_distance_cm);
  return limb;
}

void write(JsonWriter& out, std::string_view name, Pixel place) {
  out.name(name);
  out.point({place.x, place.y});
}

template <std::size_t count>
void write(JsonWriter& out, std::string_view name, const std::array<Pixel, count>& places) {
  geometry::Ring points;
  for (const Pixel p : places) points.push_back({p.x, p.y});
  out.name(name);
  out.ring(points, false);
}

void write(JsonWriter& out, const KnownLength& value) {
  out.begin_object();
  write(out, "from_px", value.from);
  write(out, "to_px", value.to);
  out.number("length_cm", value.length_cm);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const KnownSquare& value) {
  out.begin_object();
  write(out, "corners_px", value.corners);
  out.number("side_cm", value.side_cm);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const LimbView& value) {
  out.begin_object();
  write(out, "axis_px", std::array{value.axis_from, value.axis_to});
  out.number("girth_cm", value.girth_cm);
  if (value.camera_distance_cm) out.number("camera_distance_cm", *value.camera_distance_cm);
  out.extra(value.extra);
  out.end_object();
}

void write(JsonWriter& out, const picture::Reference& value) {
  out.name(std::holds_alternative<KnownSquare>(value) ? "known_square" : "known_length");
  std::visit([&](const auto& known) { write(out, known); }, value);
}

}  // namespace

picture::Picture picture_in(const JsonValue& value) {
  constexpr std::array<std::string_view, 8> names{"file",           "width_px",     "height_px",
                                                  "click_error_px", "known_length", "known_square",
                                                  "check_lengths",  "limb"};
  const MemberReader members(value, term("a picture"), names);
  picture::Picture out{.file = text_in(members.required("file")),
                       .width_px = count_in(members.required("width_px")),
                       .height_px = count_in(members.required("height_px")),
                       .extra = members.extra()};
  members.number("click_error_px", out.click_error_px);
  const auto length = members.optional("known_length"), square = members.optional("known_square");
  if (length && square)
    square->fail(say("found both a known length and a known square"), say("one of them"));
  if (length) out.reference = known_length_in(*length);
  if (square) out.reference = known_square_in(*square);
  for (const auto& known : members.list("check_lengths")) {
    out.checks.push_back(known_length_in(known));
  }
  if (const auto limb = members.optional("limb")) out.limb = limb_in(*limb);
  return out;
}

void write(JsonWriter& out, const picture::Picture& value) {
  out.begin_object();
  out.text("file", value.file);
  out.number("width_px", value.width_px);
  out.number("height_px", value.height_px);
  out.number("click_error_px", value.click_error_px);
  if (value.reference) write(out, *value.reference);
  if (!value.checks.empty()) {
    out.begin_list("check_lengths");
    for (const KnownLength& known : value.checks) write(out, known);
    out.end_list();
  }
  if (value.limb) {
    out.name("limb");
    write(out, *value.limb);
  }
  out.extra(value.extra);
  out.end_object();
}

}  // namespace drapewright::casefile
