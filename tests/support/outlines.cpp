#include "tests/support/outlines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <random>
#include <set>
#include <utility>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::support {
namespace {

using geometry::pi;
using geometry::Point;
using geometry::Polygon;
using geometry::Ring;

/// Numbers that are the same on every machine: the standard's engine, not its distributions.
class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }

 private:
  std::mt19937_64 engine_;
};

Point polar(double radius, double angle) {
  return {radius * std::cos(angle), radius * std::sin(angle)};
}

Ring placed(Ring ring, Random& random) {
  return moved(turned(std::move(ring), random.between(0, 360)),
               {random.between(-20, 20), random.between(-20, 20)});
}

/// A smooth closed curve r(angle): a few waves of falling height on a circle.
Ring blob(Random& random, int points, double radius) {
  std::array<std::pair<double, double>, 6> waves;
  for (std::size_t k = 0; k < waves.size(); ++k) {
    waves[k] = {random.between(0, 0.25) / static_cast<double>(k + 1), random.between(0, 2 * pi)};
  }
  Ring ring;
  for (int i = 0; i < points; ++i) {
    const double angle = 2 * pi * i / points;
    double r = 1;
    for (std::size_t k = 0; k < waves.size(); ++k) {
      r += waves[k].first * std::sin(static_cast<double>(k + 2) * angle + waves[k].second);
    }
    ring.push_back(polar(radius * std::max(r, 0.15), angle));
  }
  return ring;
}

Polygon star(Random& random) {
  const int tips = random.whole(3, 20);
  const double outer = random.between(1, 8);
  const double inner = outer * random.between(0.2, 0.9);
  Ring ring;
  for (int i = 0; i < 2 * tips; ++i) {
    ring.push_back(polar((i % 2 == 0 ? outer : inner) * random.between(0.8, 1.2), pi * i / tips));
  }
  return {placed(ring, random), {}};
}

Polygon smooth(Random& random) {
  return {placed(blob(random, random.whole(30, 300), random.between(0.5, 8)), random), {}};
}

Polygon comb(Random& random) {
  const int teeth = random.whole(2, 12);
  const double width = random.between(0.3, 1.2);
  const double gap = random.between(0.05, 1);
  Ring ring{{0, -1}, {teeth * (width + gap) - gap, -1}};
  for (int i = teeth - 1; i >= 0; --i) {
    const double left = i * (width + gap);
    const double height = random.between(0.5, 5);
    ring.push_back({left + width, height});
    ring.push_back({left, height});
    if (i > 0) ring.insert(ring.end(), {{left, 0}, {left - gap, 0}});
  }
  return {placed(ring, random), {}};
}

Polygon collinear_runs(Random& random) {
  const Ring corners = blob(random, random.whole(4, 12), random.between(1, 6));
  Ring ring;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point a = corners[i];
    const Point b = corners[(i + 1) % corners.size()];
    const int parts = random.whole(1, 30);
    for (int k = 0; k < parts; ++k) ring.push_back(a + (static_cast<double>(k) / parts) * (b - a));
    if (random.whole(0, 3) == 0) ring.push_back(ring.back());
  }
  return {placed(ring, random), {}};
}

/// Two wide ends joined by an arm, some 0.05 to 1.2 cm wide, tapering.
Polygon narrow_arm(Random& random) {
  const double length = random.between(2, 8);
  const double near = random.between(0.05, 1.2);
  const double far = random.between(0.05, 1.2);
  const double end = random.between(0.7, 2);
  Ring ring{{-2 * end, -end}, {0, -end}, {0, -near / 2}, {length, -far / 2}, {length, -end}};
  ring.insert(ring.end(), {{length + 2 * end, -end},
                           {length + 2 * end, end},
                           {length, end},
                           {length, far / 2},
                           {0, near / 2},
                           {0, end},
                           {-2 * end, end}});
  return {placed(ring, random), {}};
}

/// Steps of 0.2 cm whose edges lie a few hundred-thousandths of a cm off the axes.
Polygon skyline(Random& random) {
  const int steps = random.whole(5, 40);
  const auto hair = [&] { return 1e-5 * random.whole(-200, 200); };
  Ring ring{{hair(), hair()}, {0.2 * steps + hair(), hair()}};
  int height = random.whole(1, 10);
  for (int i = steps; i > 0; --i) {
    ring.push_back({0.2 * i + hair(), 1 + 0.2 * height + hair()});
    ring.push_back({0.2 * (i - 1) + hair(), 1 + 0.2 * height + hair()});
    height = (height + random.whole(1, 9)) % 10;  // never the same twice
  }
  return {moved(ring, {random.between(-5, 5), random.between(-5, 5)}), {}};
}

Polygon islands(Random& random) {
  const double radius = random.between(3, 7);
  Polygon polygon{blob(random, 120, radius), {}};
  const double turn = random.between(0, 2 * pi);
  const int count = random.whole(1, 3);
  for (int i = 0; i < count; ++i) {
    // Between the middle and the edge in its own third, as near as 0.02 cm to the edge.
    const double angle = turn + 2 * pi * i / 3;
    const auto at = static_cast<std::size_t>(std::fmod(angle, 2 * pi) / (2 * pi) * 120);
    const double edge = geometry::norm(polygon.outer[at]);
    const double size = edge * random.between(0.03, 0.12);
    const double away = edge * 0.85 - size - random.between(0, 0.4) * edge;
    if (away < 2.4 * size) continue;
    Ring island = blob(random, random.whole(6, 40), size / 2);
    polygon.holes.push_back(moved(island, polar(away, 2 * pi * static_cast<double>(at) / 120)));
  }
  return polygon;
}

// ---- Traced from pixels ----

constexpr double pixel_cm = 0.0587;

/// A drawing in pixels: a blob with a few whiskers, one pixel wide.
class Mask {
 public:
  Mask(Random& random, int radius) : size_(4 * radius) {
    const Ring edge = blob(random, 60, radius);
    for (int y = 0; y < size_; ++y) {
      for (int x = 0; x < size_; ++x) {
        const Point p = centred(x, y);
        const double angle = std::atan2(p.y, p.x) + (p.y < 0 ? 2 * pi : 0);
        const auto at = std::min<std::size_t>(59, static_cast<std::size_t>(angle / (2 * pi) * 60));
        if (geometry::norm(p) < geometry::norm(edge[at])) filled_.insert({x, y});
      }
    }
    const int whiskers = random.whole(0, 4);
    for (int i = 0; i < whiskers; ++i) draw_whisker(random);
  }

  bool filled(int x, int y) const { return filled_.count({x, y}) > 0; }

  /// Along the pixels' edges, the shape on the left: a staircase. The longest loop.
  Ring edge_trace() const {
    using Corner = std::pair<int, int>;
    std::multimap<Corner, Corner> next;
    for (const auto& [x, y] : filled_) {
      if (!filled(x, y - 1)) next.insert({{x, y}, {x + 1, y}});
      if (!filled(x + 1, y)) next.insert({{x + 1, y}, {x + 1, y + 1}});
      if (!filled(x, y + 1)) next.insert({{x + 1, y + 1}, {x, y + 1}});
      if (!filled(x - 1, y)) next.insert({{x, y + 1}, {x, y}});
    }
    Ring longest;
    while (!next.empty()) {
      Ring loop;
      for (auto step = next.begin(); step != next.end();) {
        loop.push_back({pixel_cm * step->first.first, pixel_cm * step->first.second});
        const Corner to = step->second;
        next.erase(step);
        step = next.find(to);
      }
      if (loop.size() > longest.size()) longest = std::move(loop);
    }
    return longest;
  }

  /// Through the pixels' centres, all round (Moore's method, from memory): whiskers become spikes
  /// without width.
  Ring centre_trace() const {
    constexpr std::array<std::pair<int, int>, 8> round{
        {{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}};
    const auto [start_x, start_y] = *std::min_element(
        filled_.begin(), filled_.end(),
        [](auto a, auto b) { return std::pair(a.second, a.first) < std::pair(b.second, b.first); });
    Ring ring;
    int x = start_x;
    int y = start_y;
    std::size_t from = 4;  // came from the left
    // The loop begins where the walk comes back to a state that it was in before.
    std::map<std::array<int, 3>, std::size_t> seen;
    for (;;) {
      const auto [before, is_new] = seen.try_emplace({x, y, static_cast<int>(from)}, ring.size());
      if (!is_new) {
        ring.erase(ring.begin(), ring.begin() + static_cast<std::ptrdiff_t>(before->second));
        return ring;
      }
      ring.push_back({pixel_cm * x, pixel_cm * y});
      std::size_t turn = 1;
      while (turn <= 8) {
        const auto [dx, dy] = round[(from + turn) % 8];
        if (filled(x + dx, y + dy)) break;
        ++turn;
      }
      if (turn > 8) return ring;  // a single pixel
      const auto [dx, dy] = round[(from + turn) % 8];
      x += dx;
      y += dy;
      from = (from + turn + 4) % 8;
    }
  }

 private:
  Point centred(int x, int y) const { return {x - size_ / 2 + 0.5, y - size_ / 2 + 0.5}; }

  void draw_whisker(Random& random) {
    const double angle = random.between(0, 2 * pi);
    int x = size_ / 2;
    int y = size_ / 2;
    double at = 0;
    while (filled(x, y)) {
      at += 0.5;
      x = size_ / 2 + static_cast<int>(std::lround(at * std::cos(angle)));
      y = size_ / 2 + static_cast<int>(std::lround(at * std::sin(angle)));
    }
    const int length = random.whole(1, 8);
    for (int i = 0; i < length; ++i) filled_.insert({x + (std::cos(angle) > 0 ? i : -i), y});
  }

  int size_;
  std::set<std::pair<int, int>> filled_;
};

Polygon staircase(Random& random) { return {Mask(random, random.whole(4, 35)).edge_trace(), {}}; }
Polygon spiky(Random& random) { return {Mask(random, random.whole(4, 35)).centre_trace(), {}}; }

}  // namespace

std::vector<GeneratedOutline> generated_outlines(int count, std::uint64_t seed) {
  constexpr std::array<std::pair<const char*, Polygon (*)(Random&)>, 9> kinds{
      {{"star", star},
       {"blob", smooth},
       {"comb", comb},
       {"staircase", staircase},
       {"spiky", spiky},
       {"collinear", collinear_runs},
       {"arm", narrow_arm},
       {"skyline", skyline},
       {"islands", islands}}};
  Random random(seed);
  std::vector<GeneratedOutline> outlines;
  for (int i = 0; i < count; ++i) {
    const auto& [name, make] = kinds[static_cast<std::size_t>(i) % kinds.size()];
    outlines.push_back({std::string(name) + " " + std::to_string(i), make(random)});
  }
  return outlines;
}

Ring generated_blob(int points, std::uint64_t seed) {
  Random random(seed);
  return blob(random, points, 4);
}

}  // namespace drapewright::support
