#include "core/picture/calibration.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::picture {

using geometry::Point;

namespace {

/// How many times as far from the camera as the reference a place may lie: a click that is one
/// pixel off is worth ten of them there, and along the slope a hundred.
constexpr double farthest = 10;

Point point_of(Pixel p) { return {p.x, p.y}; }
Pixel pixel_of(Point p) { return {p.x, p.y}; }

std::string in_words(Pixel p) {
  return "(" + format_number(p.x, 0) + ", " + format_number(p.y, 0) + ")";
}

/// Maps the drawing's cm to pixels; the drawing's axes may still point anywhere.
Homography map_of(const KnownLength& known) {
  const Point from = point_of(known.from), to = point_of(known.to);
  const double px_per_cm = distance(from, to) / known.length_cm;
  const Point middle = 0.5 * (from + to);
  return Homography({px_per_cm, 0, middle.x, 0, -px_per_cm, middle.y, 0, 0, 1});
}

Homography map_of(const KnownSquare& known) {
  const auto corners = in_order(known.corners);
  std::array<Point, 4> round;
  std::ranges::transform(corners, round.begin(), point_of);
  const double side = known.side_cm;
  return Homography::of_unit_square(round) *
         Homography({1 / side, 0, 0.5, 0, 1 / side, 0.5, 0, 0, 1});
}

/// Turned about its origin so that y points up as the picture does there.
Homography upright(const Homography& to_picture) {
  const Homography back = to_picture.inverse();
  const Point up = back.step(*to_picture.at({0, 0}), {0, -1});
  const double length = norm(up), sine = up.x / length, cosine = up.y / length;
  return to_picture * Homography({cosine, sine, 0, -sine, cosine, 0, 0, 0, 1});
}

Homography map_of(const Reference& reference) {
  return upright(std::visit([](const auto& known) { return map_of(known); }, reference));
}

const Reference& checked(const Reference& reference) {
  check(reference);
  return reference;
}

}  // namespace

std::array<Pixel, 4> in_order(const std::array<Pixel, 4>& corners) {
  Point middle;
  for (const Pixel corner : corners) middle = middle + 0.25 * point_of(corner);
  std::array<Pixel, 4> out = corners;
  // y points down in a picture: counter-clockwise as seen is by falling angle.
  std::ranges::sort(out, std::ranges::greater{},
                    [middle](Pixel p) { return std::atan2(p.y - middle.y, p.x - middle.x); });
  return out;
}

Calibration::Calibration(const Reference& reference)
    : Calibration(checked(reference), Unchecked{}) {}

Calibration::Calibration(const Reference& reference, Unchecked)
    : to_picture_(map_of(reference)),
      to_plane_(to_picture_.inverse()),
      w_at_reference_(to_plane_.w(*to_picture_.at({0, 0}))),
      takes_out_tilt_(std::holds_alternative<KnownSquare>(reference)) {}

Point Calibration::to_cm(Pixel place) const {
  const Point p = point_of(place);
  if (!(to_plane_.w(p) * farthest > w_at_reference_)) {
    throw InputError(say("the place {1} in the picture lies near the horizon of the square's plane "
                         "or beyond it",
                         {in_words(place)}),
                     say("a place that lies in the plane of the square, and not far from it"));
  }
  return *to_plane_.at(p);
}

geometry::Ring Calibration::to_cm(const PixelChain& places) const {
  geometry::Ring out;
  out.reserve(places.size());
  for (const Pixel place : places) out.push_back(to_cm(place));
  return out;
}

Pixel Calibration::to_pixel(Point point) const {
  const auto place = to_picture_.at(point);
  if (place) return pixel_of(*place);
  throw InputError(say("the point lies behind the camera"),
                   say("a point that the picture can show"),
                   {.drawing = DrawingPosition{point.x, point.y}});
}

PixelChain Calibration::to_pixels(const geometry::Ring& points) const {
  PixelChain out;
  out.reserve(points.size());
  for (const Point point : points) out.push_back(to_pixel(point));
  return out;
}

double Calibration::cm_per_pixel(Pixel place) const {
  to_cm(place);  // refuses what lies beyond the horizon
  const Point x = to_plane_.step(point_of(place), {1, 0});
  const Point y = to_plane_.step(point_of(place), {0, 1});
  // The larger singular value of the two columns.
  const double sum = dot(x, x) + dot(y, y), area = cross(x, y);
  return std::sqrt(0.5 * (sum + std::sqrt(std::max(0.0, sum * sum - 4 * area * area))));
}

}  // namespace drapewright::picture
