#include <algorithm>
#include <cmath>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/shape.h"
#include "core/picture/calibration.h"
#include "core/picture/picture.h"
#include "core/practice/limits.h"

namespace drapewright::picture {
namespace {

using geometry::Point;

/// The least that a reference may measure in the picture: with clicks one pixel off at either end
/// its length is then known to a tenth.
constexpr double shortest_px = 20;

/// How far a square's corner must lie off the line between its neighbours: below it the camera
/// looked along the square, and a click that is a pixel off turns everything round.
constexpr double flattest_px = 8;

[[noreturn]] void refuse(std::string problem, std::string expected, std::string pointer) {
  throw InputError(std::move(problem), std::move(expected), {.pointer = std::move(pointer)});
}

void check_number(double value, std::string_view limit_id, std::string_view member,
                  const std::string& pointer) {
  const practice::Limit& limit = practice::limit(limit_id);
  if (practice::within_bounds(limit, value)) return;
  refuse(say("`{1}` is {2}", {member, format_short(value, 4)}), practice::bounds_in_words(limit),
         pointer + "/" + std::string(member));
}

void check_finite(Pixel p, const std::string& pointer) {
  if (std::isfinite(p.x) && std::isfinite(p.y)) return;
  refuse(say("a place in the picture is not finite"), say("two finite numbers [x, y] in pixels"),
         pointer);
}

double distance(Pixel a, Pixel b) { return std::hypot(b.x - a.x, b.y - a.y); }

void check_apart(Pixel a, Pixel b, const char* problem, const std::string& pointer) {
  check_finite(a, pointer);
  check_finite(b, pointer);
  if (distance(a, b) >= shortest_px) return;
  refuse(say(problem, {format_number(distance(a, b), 0)}),
         say("{1} pixels or more: too small in the picture to measure by",
             {format_number(shortest_px, 0)}),
         pointer);
}

void check(const KnownLength& value, const std::string& pointer) {
  check_number(value.length_cm, "known_length_cm", "length_cm", pointer);
  check_apart(value.from, value.to,
              term("the two places of the known length lie only {1} pixels apart"), pointer);
}

/// How far b lies outside of the line from a to c, for corners that go round counter-clockwise as
/// seen; y points down.
double bulge(Pixel a, Pixel b, Pixel c) {
  const Point chord{c.x - a.x, c.y - a.y};
  return cross(chord, Point{b.x - a.x, b.y - a.y}) / norm(chord);
}

void check(const KnownSquare& value, const std::string& pointer) {
  check_number(value.side_cm, "known_length_cm", "side_cm", pointer);
  for (const Pixel corner : value.corners) check_finite(corner, pointer);
  for (std::size_t i = 0; i < 4; ++i) {
    for (std::size_t j = i + 1; j < 4; ++j) {
      check_apart(value.corners[i], value.corners[j],
                  term("two corners of the square lie only {1} pixels apart"), pointer);
    }
  }
  const auto corners = in_order(value.corners);
  for (std::size_t i = 0; i < 4; ++i) {
    const double out = bulge(corners[i], corners[(i + 1) % 4], corners[(i + 2) % 4]);
    if (out >= flattest_px) continue;
    const std::string expected = say("the four corners of a flat square, not seen along its plane");
    if (out <= -flattest_px) {
      refuse(say("one corner lies inside the triangle of the others"), expected, pointer);
    }
    refuse(say("three of the four corners lie nearly on a line"), expected, pointer);
  }
}

void check_size(const Picture& value, const std::string& pointer) {
  if (value.width_px > 0 && value.height_px > 0) return;
  refuse(say("the picture is {1} x {2} pixels", {value.width_px, value.height_px}),
         say("a width and a height above 0"), pointer);
}

/// A case file that comes from elsewhere must not lead to other folders.
void check_file_name(const std::string& name, const std::string& pointer) {
  const bool bare =
      !name.empty() && name.size() <= 255 && name.front() != '.' &&
      name.find_first_of("/\\:") == std::string::npos &&
      std::ranges::none_of(name, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
  if (bare && (name.ends_with(".png") || name.ends_with(".jpg"))) return;
  refuse(say("the picture's file is \"{1}\"", {name}),
         say("the bare name of a .png or .jpg file that lies beside the case file"),
         pointer + "/file");
}

std::string member_of(const Reference& reference) {
  return std::holds_alternative<KnownSquare>(reference) ? "/known_square" : "/known_length";
}

}  // namespace

void check(const LimbView& value, const std::string& pointer) {
  check_number(value.girth_cm, "limb_girth_cm", "girth_cm", pointer);
  if (value.camera_distance_cm) {
    check_number(*value.camera_distance_cm, "camera_distance_cm", "camera_distance_cm", pointer);
  }
  check_apart(value.axis_from, value.axis_to,
              term("the two places on the limb's middle line lie only {1} pixels apart"),
              pointer + "/axis_px");
}

void check(const Reference& value, const std::string& pointer) {
  std::visit([&](const auto& known) { check(known, pointer); }, value);
}

void check(const Picture& value, const std::string& pointer) {
  check_file_name(value.file, pointer);
  check_size(value, pointer);
  check_number(value.click_error_px, "click_error_px", "click_error_px", pointer);
  if (value.reference) check(*value.reference, pointer + member_of(*value.reference));
  for (std::size_t i = 0; i < value.checks.size(); ++i) {
    check(value.checks[i], pointer + "/check_lengths/" + std::to_string(i));
  }
  if (value.limb) check(*value.limb, pointer + "/limb");
}

}  // namespace drapewright::picture
