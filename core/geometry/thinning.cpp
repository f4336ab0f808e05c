#include "core/geometry/thinning.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::geometry {
namespace {

/// The point between two that lies farthest from the line between them, and how far.
std::pair<std::size_t, double> farthest_between(const Ring& ring, std::size_t from,
                                                std::size_t to) {
  const std::size_t n = ring.size();
  const Segment chord{ring[from % n], ring[to % n]};
  std::pair<std::size_t, double> farthest{from, -1};
  for (std::size_t i = from + 1; i < to; ++i) {
    const Point away = ring[i % n] - nearest_on(chord, ring[i % n]);
    const double squared = dot(away, away);
    if (squared > farthest.second) farthest = {i, squared};
  }
  return farthest;
}

/// splitmix64 (Steele, Lea, Flood 2014; from memory): small, and the same on every machine.
std::uint64_t next_random(std::uint64_t& state) {
  state += 0x9E3779B97F4A7C15u;
  std::uint64_t z = state;
  z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
  z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
  return z ^ (z >> 31);
}

/// Evenly spread over -1 to 1.
double random_offset(std::uint64_t& state) {
  return static_cast<double>(next_random(state) >> 11) * 0x1p-52 - 1;
}

/// How far along the ring from `from` one edge may bridge it; from + 1 when nowhere.
std::size_t end_of_bridge(const Ring& ring, std::size_t from, double mouth_cm, double side) {
  const std::size_t n = ring.size();
  const Point start = ring[from % n];
  std::size_t end = from + 1;
  for (std::size_t to = from + 2; to < from + n - 1; ++to) {
    if (distance(start, ring[(to - 1) % n]) > mouth_cm) break;  // the chain strays too far
    const Point chord = ring[to % n] - start;
    if (norm(chord) > mouth_cm) continue;
    bool one_sided = true;
    for (std::size_t i = from + 1; one_sided && i < to; ++i) {
      one_sided = side * cross(chord, ring[i % n] - start) >= 0;
    }
    if (one_sided) end = to;
  }
  return end;
}

using Stretch = std::pair<std::size_t, std::size_t>;

/// The points that stay, given that the ends of the stretches do.
Ring kept_points(const Ring& points, std::vector<bool> stays, std::vector<Stretch> open,
                 double tolerance_cm) {
  while (!open.empty()) {
    const auto [from, to] = open.back();
    open.pop_back();
    const auto [farthest, squared] = farthest_between(points, from, to);
    if (squared <= tolerance_cm * tolerance_cm) continue;
    stays[farthest] = true;
    open.push_back({from, farthest});
    open.push_back({farthest, to});
  }
  Ring result;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (stays[i]) result.push_back(points[i]);
  }
  return result;
}

}  // namespace

Ring thinned(const Ring& ring, double tolerance_cm) {
  const std::size_t n = ring.size();
  if (n < 4) return ring;
  // Two points that stay: the first, and the one farthest from it.
  const auto far = std::max_element(ring.begin(), ring.end(), [&](Point a, Point b) {
    return dot(a - ring[0], a - ring[0]) < dot(b - ring[0], b - ring[0]);
  });
  const auto middle = static_cast<std::size_t>(far - ring.begin());
  std::vector<bool> stays(n, false);
  stays[0] = stays[middle] = true;
  return kept_points(ring, std::move(stays), {{0, middle}, {middle, n}}, tolerance_cm);
}

Ring thinned_line(const Ring& line, double tolerance_cm) {
  if (line.size() < 3) return line;
  std::vector<bool> stays(line.size(), false);
  stays.front() = stays.back() = true;
  return kept_points(line, std::move(stays), {{0, line.size() - 1}}, tolerance_cm);
}

Ring without_dents(const Ring& ring, double mouth_cm, Dents dents) {
  const double side = dents == Dents::fill_outer ? 1 : -1;
  const std::size_t n = ring.size();
  if (n < 5) return ring;
  Ring result;
  for (std::size_t i = 0; i < n;) {
    result.push_back(ring[i]);
    i = end_of_bridge(ring, i, mouth_cm, side);
  }
  return result.size() < 3 ? ring : result;
}

Ring jittered(Ring ring, double most_cm, std::uint64_t& seed) {
  for (Point& p : ring) {
    const double x = random_offset(seed);
    const double y = random_offset(seed);
    p = p + most_cm * Point{x, y};
  }
  return ring;
}

}  // namespace drapewright::geometry
