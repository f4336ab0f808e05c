#include "core/picture/certainty.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/measures.h"

namespace drapewright::picture {

using geometry::Point;

namespace {

/// For the derivatives: small against a reference of 20 pixels and more, large against rounding.
constexpr double step_px = 1e-3;

/// Lengths are looked at in this many directions over the half turn.
constexpr int directions = 12;

std::vector<Pixel*> clicks_of(KnownLength& known) { return {&known.from, &known.to}; }
std::vector<Pixel*> clicks_of(KnownSquare& known) {
  std::vector<Pixel*> out;
  for (Pixel& corner : known.corners) out.push_back(&corner);
  return out;
}
std::vector<Pixel*> clicks_of(Reference& reference) {
  return std::visit([](auto& known) { return clicks_of(known); }, reference);
}

/// How fast `value` changes, per pixel, when the click moves in its worst direction.
double slope(Pixel& click, const std::function<double()>& value) {
  const auto along = [&](double& coordinate) {
    const double here = coordinate;
    coordinate = here + step_px;
    const double above = value();
    coordinate = here - step_px;
    const double below = value();
    coordinate = here;
    return (above - below) / (2 * step_px);
  };
  return std::hypot(along(click.x), along(click.y));
}

double length_between(const Calibration& calibration, Pixel from, Pixel to) {
  return distance(calibration.to_cm(from), calibration.to_cm(to));
}

struct Span {
  Pixel from;
  Pixel to;
};

/// The outline's extremes in every direction.
std::vector<Span> spans_of(const PixelChain& outline) {
  std::vector<Point> points;
  for (const Pixel p : outline) points.push_back({p.x, p.y});
  std::vector<Span> out;
  for (int i = 0; i < directions; ++i) {
    const auto span = geometry::extremes_along(points, 180.0 * i / directions);
    out.push_back({{span.from.x, span.from.y}, {span.to.x, span.to.y}});
  }
  return out;
}

Pixel middle_of(const PixelChain& outline) {
  Pixel sum;
  for (const Pixel p : outline) sum = {sum.x + p.x, sum.y + p.y};
  const auto count = static_cast<double>(outline.size());
  return {sum.x / count, sum.y / count};
}

/// In per cent to a tenth, rounded up: an error must not be understated.
std::string per_cent(double share) {
  return format_number(std::ceil(1000 * share - 1e-9) / 10, 1) + " %";
}

}  // namespace

double click_spread(const Reference& reference, double click_error_px, const Measure& measure) {
  Reference moved = reference;
  const double size = measure(Calibration(moved));
  double sum = 0;
  for (Pixel* click : clicks_of(moved)) {
    sum += slope(*click, [&] { return measure(Calibration(moved, Unchecked{})); });
  }
  return sum * click_error_px / size;
}

Spread spread_at(const Reference& reference, double click_error_px, const PixelChain& outline) {
  const auto area = [&](const Calibration& by) { return geometry::area(by.to_cm(outline)); };
  const Calibration calibration(reference);
  if (!(area(calibration) > 0)) {
    throw InputError(say("the outline in the picture has no area"),
                     say("three places or more round an area"));
  }
  Spread out{.area_share = click_spread(reference, click_error_px, area),
             .cm_per_pixel = calibration.cm_per_pixel(middle_of(outline))};
  for (const Span& span : spans_of(outline)) {
    const auto length = [&](const Calibration& by) {
      return length_between(by, span.from, span.to);
    };
    if (!(length(calibration) > 0)) continue;
    out.length_share = std::max(out.length_share, click_spread(reference, click_error_px, length));
  }
  return out;
}

std::string in_words(const Spread& spread) {
  return say("lengths ± {1}, area ± {2}",
             {per_cent(spread.length_share), per_cent(spread.area_share)});
}

bool LengthCheck::agrees() const { return std::fabs(difference_share()) <= clicks_share; }

LengthCheck check_length(const Reference& reference, double click_error_px,
                         const KnownLength& known) {
  check(Reference(known));
  const Calibration calibration(reference);
  LengthCheck out{.typed_cm = known.length_cm,
                  .measured_cm = length_between(calibration, known.from, known.to)};
  const double of_reference = click_spread(reference, click_error_px, [&](const Calibration& by) {
    return length_between(by, known.from, known.to);
  });
  // Its own two clicks, by the same rule.
  KnownLength moved = known;
  double own = 0;
  for (Pixel* click : clicks_of(moved)) {
    own += slope(*click, [&] { return length_between(calibration, moved.from, moved.to); });
  }
  out.clicks_share = of_reference + own * click_error_px / out.measured_cm;
  return out;
}

std::string in_words(const LengthCheck& check) {
  const double difference = check.difference_share();
  const std::string sign = difference < 0 ? "- " : "+ ";
  return say("{1} cm measures {2} cm: {3} %, of which clicks explain {4}",
             {format_short(check.typed_cm, 1), format_number(check.measured_cm, 1),
              sign + format_number(100 * std::fabs(difference), 1), per_cent(check.clicks_share)});
}

}  // namespace drapewright::picture
