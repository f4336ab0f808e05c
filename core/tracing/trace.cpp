#include "core/tracing/trace.h"

#include <algorithm>

#include "core/geometry/measures.h"
#include "core/geometry/thinning.h"

namespace drapewright::tracing {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr int passes = 3;

Ring without_repeats(const Ring& drawn, Ends ends) {
  Ring result;
  for (const Point& p : drawn) {
    if (result.empty() || !(result.back() == p)) result.push_back(p);
  }
  if (ends == Ends::joined) {
    while (result.size() > 1 && result.front() == result.back()) result.pop_back();
  }
  return result;
}

bool is_a_dot(const Ring& line, double tolerance_cm) {
  const geometry::Box box = geometry::bounding_box(line);
  return std::max(box.width(), box.height()) <= tolerance_cm;
}

Point held_near(Point wanted, Point home, double most_cm) {
  const Point away = wanted - home;
  const double far = geometry::norm(away);
  return far <= most_cm ? wanted : home + (most_cm / far) * away;
}

/// Each point halfway to the middle of its neighbours, a few times over. No point, and so no point
/// of an edge either, ends up farther than `most_cm` from where it was drawn.
Ring steadied(const Ring& drawn, Ends ends, double most_cm) {
  Ring now = drawn;
  const std::size_t count = drawn.size();
  const std::size_t margin = ends == Ends::open ? 1 : 0;
  for (int pass = 0; pass < passes; ++pass) {
    const Ring before = now;
    for (std::size_t i = margin; i + margin < count; ++i) {
      const Point middle = 0.5 * (before[(i + count - 1) % count] + before[(i + 1) % count]);
      now[i] = held_near(0.5 * (before[i] + middle), drawn[i], most_cm);
    }
  }
  return now;
}

}  // namespace

Ring smoothed(const Ring& drawn, Ends ends, double tolerance_cm) {
  const Ring line = without_repeats(drawn, ends);
  if (line.size() < 3 || is_a_dot(line, tolerance_cm)) {
    return {line.begin(), line.begin() + std::min<std::ptrdiff_t>(2, std::ssize(line))};
  }
  const Ring steady = steadied(line, ends, tolerance_cm / 2);
  return ends == Ends::joined ? geometry::thinned(steady, tolerance_cm / 2)
                              : geometry::thinned_line(steady, tolerance_cm / 2);
}

}  // namespace drapewright::tracing
