#include "core/tracing/reshape.h"

#include <algorithm>
#include <numeric>
#include <vector>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/tracing/edge_place.h"
#include "core/tracing/line.h"

namespace drapewright::tracing {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double same_place_cm = 1e-6;
constexpr int steps_in_window = 4;
constexpr int smoothing_passes = 8;  // spread a corner over about half the window either way
constexpr double finest_step_cm = 0.05;

/// Where a line that was drawn along an edge starts and ends on it, and the stretch meant.
struct Stretch {
  EdgePlace from, to;    ///< in the ring's order
  bool against = false;  ///< the line was drawn the other way
};

/// A chain on points no farther apart than `step_cm`; its own corners stay.
Ring dense(const Ring& chain, double step_cm) {
  Ring result{chain.front()};
  for (std::size_t i = 1; i < chain.size(); ++i) {
    const Point from = chain[i - 1], way = chain[i] - from;
    const int parts = std::max(1, static_cast<int>(std::ceil(geometry::norm(way) / step_cm)));
    for (int k = 1; k <= parts; ++k)
      result.push_back(from + (static_cast<double>(k) / parts) * way);
  }
  return result;
}

double distance_to_chain(const Ring& chain, Point p) {
  double least = geometry::distance(chain.front(), p);
  for (std::size_t i = 1; i < chain.size(); ++i) {
    least =
        std::min(least, geometry::distance(geometry::nearest_on({chain[i - 1], chain[i]}, p), p));
  }
  return least;
}

/// How far a stretch of the edge lies from the line, on the average.
double mean_distance(const Ring& stretch, const Ring& line) {
  const Ring points = dense(stretch, std::max(line_length(stretch) / 60, 1e-4));
  const double sum = std::accumulate(points.begin(), points.end(), 0.0, [&](double far, Point p) {
    return far + distance_to_chain(line, p);
  });
  return sum / static_cast<double>(points.size());
}

std::optional<Stretch> stretch_under(const Ring& ring, const Ring& line, double reach_cm) {
  if (ring.size() < 3 || line.size() < 2) return std::nullopt;
  const EdgePlace start = nearest_on_edge(ring, line.front());
  const EdgePlace end = nearest_on_edge(ring, line.back());
  if (start.distance_cm > reach_cm || end.distance_cm > reach_cm) return std::nullopt;
  if (geometry::distance(start.at, end.at) <= same_place_cm) return std::nullopt;
  const double along = mean_distance(stretch_between(ring, start, end), line);
  const double round = mean_distance(stretch_between(ring, end, start), line);
  return along <= round ? Stretch{start, end, false} : Stretch{end, start, true};
}

/// What stays of the ring, followed by what takes the stretch's place; neither end twice.
Ring with_stretch(const Ring& ring, const Stretch& under, Ring instead) {
  Ring result = stretch_between(ring, under.to, under.from);
  if (instead.size() > 2) {
    result.insert(result.end(), instead.begin() + 1, instead.end() - 1);
  }
  return result;
}

Ring relaxed(const Ring& chain) {
  Ring now = chain;
  for (int pass = 0; pass < smoothing_passes; ++pass) {
    const Ring before = now;
    for (std::size_t i = 1; i + 1 < now.size(); ++i) {
      now[i] = 0.5 * before[i] + 0.25 * (before[i - 1] + before[i + 1]);
    }
  }
  return now;
}

/// Where the line crosses the ring, in the line's order.
struct Cut {
  double on_line = 0;  ///< index of the line's edge, and part of it
  EdgePlace on_ring;
};

std::vector<Cut> cuts_of(const Ring& ring, const Ring& line) {
  std::vector<Cut> cuts;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Point a = line[i], b = line[i + 1];
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const Point c = ring[k], d = ring[(k + 1) % ring.size()];
      const double turn = geometry::cross(b - a, d - c);
      if (turn == 0) continue;
      const double t = geometry::cross(c - a, d - c) / turn;
      const double s = geometry::cross(c - a, b - a) / turn;
      if (t < 0 || t >= 1 || s < 0 || s >= 1) continue;
      cuts.push_back({static_cast<double>(i) + t, {k, s, c + s * (d - c), 0}});
    }
  }
  std::ranges::sort(cuts, {}, &Cut::on_line);
  return cuts;
}

/// The line's own corners between two cuts.
Ring corners_between(const Ring& line, const Cut& from, const Cut& to) {
  Ring result;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const auto place = static_cast<double>(i);
    if (place > from.on_line && place < to.on_line) result.push_back(line[i]);
  }
  return result;
}

bool runs_inside(const Ring& ring, const Ring& line, const Cut& from, const Cut& to) {
  const Ring corners = corners_between(line, from, to);
  const Point next = corners.empty() ? to.on_ring.at : corners.front();
  return geometry::contains(geometry::Polygon{ring, {}}, 0.5 * (from.on_ring.at + next));
}

}  // namespace

std::optional<Ring> retraced(const Ring& ring, const Ring& line, double reach_cm) {
  const auto under = stretch_under(ring, line, reach_cm);
  if (!under) return std::nullopt;
  Ring instead = line;
  if (under->against) std::ranges::reverse(instead);
  instead.front() = under->from.at;
  instead.back() = under->to.at;
  return with_stretch(ring, *under, std::move(instead));
}

std::optional<Ring> smoothed_stretch(const Ring& ring, const Ring& line, double reach_cm,
                                     double window_cm) {
  const auto under = stretch_under(ring, line, reach_cm);
  if (!under) return std::nullopt;
  const Ring stretch = stretch_between(ring, under->from, under->to);
  const double step_cm = std::max(window_cm / steps_in_window, finest_step_cm);
  return with_stretch(ring, *under, relaxed(dense(stretch, step_cm)));
}

std::optional<std::pair<Ring, Ring>> split(const Ring& ring, const Ring& line) {
  if (ring.size() < 3 || line.size() < 2) return std::nullopt;
  const auto cuts = cuts_of(ring, line);
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const Cut &in = cuts[i], &out = cuts[i + 1];
    if (!runs_inside(ring, line, in, out)) continue;
    const Ring seam = corners_between(line, in, out);
    Ring one = stretch_between(ring, in.on_ring, out.on_ring);
    one.insert(one.end(), seam.rbegin(), seam.rend());
    Ring other = stretch_between(ring, out.on_ring, in.on_ring);
    other.insert(other.end(), seam.begin(), seam.end());
    if (geometry::area(one) < geometry::area(other)) std::swap(one, other);
    return std::pair(std::move(one), std::move(other));
  }
  return std::nullopt;
}

}  // namespace drapewright::tracing
