#include "app/desktop/document/clock_hours.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/geometry/measures.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double least_shift_cm = 0.3;  ///< below it no hour of a wound of usual size is another
constexpr double least_turn_deg = 5;    ///< a sixth of an hour
constexpr double same_place_cm = 1e-6;

bool has_pockets(const wound::Wound& wound) {
  return !wound.undermining.empty() || !wound.tunnels.empty();
}

Point middle_of(const wound::Wound& wound) {
  return geometry::centroid(geometry::Region{{wound.outline_cm, wound.islands_cm}});
}

bool was_only_shifted(const Ring& before, const Ring& after) {
  if (before.size() != after.size() || before.empty()) return false;
  const Point by = after.front() - before.front();
  return std::ranges::equal(before, after, [&](Point a, Point b) {
    return geometry::distance(a + by, b) < same_place_cm;
  });
}

/// Where the corners are the same ones, by how much the first lies in another direction.
double turn_deg(const Ring& before, const Ring& after) {
  if (before.size() != after.size() || before.empty()) return 0;
  const Point a = before.front() - geometry::centroid(before);
  const Point b = after.front() - geometry::centroid(after);
  return std::fabs(geometry::degrees(std::atan2(geometry::cross(a, b), geometry::dot(a, b))));
}

QString doubt(const wound::Wound& before, const wound::Wound& after) {
  if (was_only_shifted(before.outline_cm, after.outline_cm)) return {};
  const double shift = geometry::distance(middle_of(before), middle_of(after));
  if (shift >= least_shift_cm) {
    return spoken(
        "The middle of wound {1} moved by {2} cm: check the hours of its undermining and "
        "tunnels, which are counted round it.",
        {after.id, format_number(shift, 1)});
  }
  if (turn_deg(before.outline_cm, after.outline_cm) < least_turn_deg) return {};
  return spoken("Wound {1} was turned: check the hours of its undermining and tunnels.",
                {after.id});
}

}  // namespace

QString hours_in_doubt(const wound::Case& before, const wound::Case& after) {
  QStringList doubts;
  for (const wound::Wound& wound : after.current().wounds) {
    const auto& then = before.current().wounds;
    const auto same = std::ranges::find(then, wound.id, &wound::Wound::id);
    if (same == then.end() || !has_pockets(*same) || !has_pockets(wound)) continue;
    if (const QString words = doubt(*same, wound); !words.isEmpty()) doubts << words;
  }
  return doubts.join(' ');
}

}  // namespace drapewright::desktop
