#include "core/picture/limb.h"

#include <algorithm>
#include <cmath>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/geometry/measures.h"

namespace drapewright::picture {

using geometry::Point;
using geometry::Ring;

namespace {

/// An edge is halved at most this often: 1024 parts of an edge across a whole limb are far finer
/// than the drawing error.
constexpr int most_halvings = 10;

[[noreturn]] void refuse(const std::string& problem, const std::string& expected, Point where) {
  throw InputError(problem, expected, {.drawing = DrawingPosition{where.x, where.y}});
}

[[noreturn]] void refuse_beyond(Point where) {
  refuse(say("the outline reaches beyond the limb's visible edge"),
         say("an outline on the side that the picture shows, the limb's girth and its middle line "
             "right"),
         where);
}

}  // namespace

Limb::Limb(const LimbView& view, const Calibration& calibration, Pixel middle) {
  check(view);
  const Point from = calibration.to_cm(view.axis_from), to = calibration.to_cm(view.axis_to);
  origin_ = 0.5 * (from + to);
  direction_ = (1 / distance(from, to)) * (to - from);
  radius_cm_ = view.girth_cm / (2 * geometry::pi);
  distance_cm_ = view.camera_distance_cm;
  if (distance_cm_) camera_ = local(calibration.to_cm(middle));
}

Limb::Local Limb::local(Point p) const {
  const Point d = p - origin_;
  return {.along = dot(d, direction_), .across = -cross(d, direction_)};
}

Point Limb::drawn(Local p) const {
  const Point across{-direction_.y, direction_.x};
  return origin_ + p.along * direction_ + p.across * across;
}

/// In the plane across the limb, with its middle at the origin and the camera in direction +z.
Limb::OnSkin Limb::on_skin(Point flat) const {
  const Local at = local(flat);
  const double r = radius_cm_;
  if (!distance_cm_) {
    if (std::fabs(at.across) > r) refuse_beyond(flat);
    return {.along = at.along, .angle = std::asin(at.across / r)};
  }
  // lens + t ray, t = 1 in the plane of the reference; the nearer of the two places where it meets
  // the circle.
  const Point lens{camera_.across, r + *distance_cm_};
  const Point ray = Point{at.across, r} - lens;
  const double a = dot(ray, ray), b = dot(lens, ray), c = dot(lens, lens) - r * r;
  const double root2 = b * b - a * c;
  if (root2 < 0) refuse_beyond(flat);
  const double t = (-b - std::sqrt(root2)) / a;
  const Point skin = lens + t * ray;
  return {.along = camera_.along + t * (at.along - camera_.along),
          .angle = std::atan2(skin.x, skin.y)};
}

Point Limb::unrolled(Point flat) const {
  const OnSkin at = on_skin(flat);
  return drawn({.along = at.along, .across = radius_cm_ * at.angle});
}

Point Limb::flat(Point unrolled) const {
  const Local at = local(unrolled);
  const double r = radius_cm_, angle = at.across / r;
  const Point skin{r * std::sin(angle), r * std::cos(angle)};
  const double height = r + distance_cm_.value_or(0);
  // The limb's edge is where the line of sight grazes it.
  const bool seen = distance_cm_ ? dot(skin, Point{camera_.across, height}) >= r * r
                                 : std::fabs(angle) <= geometry::pi / 2;
  if (!seen || std::fabs(angle) > geometry::pi) {
    refuse(say("the point lies on the side of the limb that the picture does not show"),
           say("a point on the side that it shows"), unrolled);
  }
  if (!distance_cm_) return drawn({.along = at.along, .across = skin.x});
  const double spread = *distance_cm_ / (height - skin.y);
  return drawn({.along = camera_.along + spread * (at.along - camera_.along),
                .across = camera_.across + spread * (skin.x - camera_.across)});
}

Ring Limb::unrolled(const Ring& flat) const {
  Ring out;
  for (std::size_t i = 0; i < flat.size(); ++i) {
    append_edge(flat[i], flat[(i + 1) % flat.size()], 0, out);
  }
  return out;
}

void Limb::append_edge(Point from, Point to, int depth, Ring& out) const {
  const Point middle = 0.5 * (from + to);
  const Point start = unrolled(from), end = unrolled(to);
  const double bend = distance(unrolled(middle), 0.5 * (start + end));
  // The first halving is always looked into: an edge that crosses the axis evenly bends nowhere at
  // its middle.
  if (depth >= 2 && (bend <= tolerance::offset_cm || depth == most_halvings)) {
    out.push_back(start);
    return;
  }
  append_edge(from, middle, depth + 1, out);
  append_edge(middle, to, depth + 1, out);
}

double Limb::turn_deg(Point flat) const {
  return geometry::degrees(std::fabs(on_skin(flat).angle));
}

double Limb::across_deg() const {
  return geometry::degrees(std::atan2(direction_.x, -direction_.y));
}

UnrolledDifference unrolled_difference(const Limb& limb, const Ring& flat) {
  const Ring unrolled = limb.unrolled(flat);
  UnrolledDifference out{
      .flat_area_cm2 = geometry::area(flat),
      .unrolled_area_cm2 = geometry::area(unrolled),
      .flat_width_cm = geometry::extent_along(flat, limb.across_deg()),
      .unrolled_width_cm = geometry::extent_along(unrolled, limb.across_deg()),
  };
  for (const Point p : flat) out.farthest_deg = std::max(out.farthest_deg, limb.turn_deg(p));
  return out;
}

std::string in_words(const UnrolledDifference& difference) {
  const auto per_cent = [](double share) {
    return (share < 0 ? "- " : "+ ") + format_number(100 * std::fabs(share), 1) + " %";
  };
  return say("unrolled: area {1}, width across the limb {2}; it reaches {3} degrees round",
             {per_cent(difference.area_share()), per_cent(difference.width_share()),
              format_number(difference.farthest_deg, 0)});
}

}  // namespace drapewright::picture
