#include "tests/support/pixel_trace.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace drapewright::support {
namespace {

using geometry::pi;
using geometry::Point;
using geometry::Ring;

constexpr double pixel_cm = 0.0587;

/// A drawing in pixels: a blob with a few whiskers, one pixel wide.
class Mask {
 public:
  Mask(OutlineMaker& random, int radius) : size_(4 * radius) {
    const Ring edge = random.blob(60, radius);
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

  void draw_whisker(OutlineMaker& random) {
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

}  // namespace

Ring traced_along_edges(OutlineMaker& maker, int radius_px) {
  return Mask(maker, radius_px).edge_trace();
}

Ring traced_through_centres(OutlineMaker& maker, int radius_px) {
  return Mask(maker, radius_px).centre_trace();
}

}  // namespace drapewright::support
