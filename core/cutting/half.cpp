#include "core/cutting/half.h"

#include <algorithm>
#include <cmath>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/validity.h"

namespace drapewright::cutting {
namespace {

using geometry::Point;
using geometry::Ring;

/// An overlay moves its corners by up to a grid spacing in x and in y.
constexpr double on_cut_cm = 3 * tolerance::grid_cm;

Point along(const Cut& cut) { return {-cut.normal.y, cut.normal.x}; }

/// The near side of a ring; where it comes back over the cut, the way there runs along the cut,
/// there and back, which adds nothing to its area.
Ring near_ring(const Ring& ring, const Cut& cut, std::vector<double>& crossings) {
  Ring result;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Point p = ring[k], q = ring[(k + 1) % ring.size()];
    const double hp = cut.height(p), hq = cut.height(q);
    if (hp <= 0) result.push_back(p);
    if ((hp <= 0) == (hq <= 0)) continue;
    const Point meeting = p + (hp / (hp - hq)) * (q - p);
    result.push_back(meeting);
    crossings.push_back(geometry::dot(along(cut), meeting));
  }
  return result;
}

/// A rectangle that covers the near side of the cut as far as the piece reaches.
geometry::Polygon near_side(const geometry::Polygon& piece, const Cut& cut) {
  const geometry::Box box = geometry::bounding_box(piece.outer);
  const double size = 2 * (box.width() + box.height()) + 1;
  const Point centre = 0.5 * (box.low + box.high);
  const Point foot = centre - cut.height(centre) * cut.normal;
  const Point side = size * along(cut), back = -size * cut.normal;
  return {{foot - side, foot - side + back, foot + side + back, foot + side}, {}};
}

struct Stretch {
  double low = 0;
  double high = 0;
};

/// Where the edges of a region run along the cut.
std::vector<Stretch> edges_on(const geometry::Region& region, const Cut& cut) {
  std::vector<Stretch> result;
  auto add = [&](const Ring& ring) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const Point p = ring[k], q = ring[(k + 1) % ring.size()];
      if (std::abs(cut.height(p)) > on_cut_cm || std::abs(cut.height(q)) > on_cut_cm) continue;
      const auto [low, high] =
          std::minmax({geometry::dot(along(cut), p), geometry::dot(along(cut), q)});
      if (high - low > on_cut_cm) result.push_back({low, high});
    }
  };
  for (const auto& polygon : region) {
    add(polygon.outer);
    for (const auto& hole : polygon.holes) add(hole);
  }
  return result;
}

/// Stretches that both sides share; those that follow one upon another joined.
std::vector<Stretch> shared(const std::vector<Stretch>& near, const std::vector<Stretch>& far) {
  std::vector<Stretch> all;
  for (const auto& a : near) {
    for (const auto& b : far) {
      const Stretch both{std::max(a.low, b.low), std::min(a.high, b.high)};
      if (both.high - both.low > on_cut_cm) all.push_back(both);
    }
  }
  std::sort(all.begin(), all.end(), [](auto& a, auto& b) { return a.low < b.low; });
  std::vector<Stretch> result;
  for (const auto& stretch : all) {
    if (!result.empty() && stretch.low <= result.back().high + on_cut_cm) {
      result.back().high = std::max(result.back().high, stretch.high);
    } else {
      result.push_back(stretch);
    }
  }
  return result;
}

}  // namespace

Half near_half(const geometry::Polygon& piece, const Cut& cut) {
  Half half;
  std::vector<double> crossings;
  half.points = near_ring(piece.outer, cut, crossings);
  half.area_cm2 = geometry::signed_area(half.points);
  for (const auto& hole : piece.holes) {
    half.area_cm2 += geometry::signed_area(near_ring(hole, cut, crossings));
  }
  std::sort(crossings.begin(), crossings.end());
  for (std::size_t k = 0; k + 1 < crossings.size(); k += 2) {
    half.seam_cm += crossings[k + 1] - crossings[k];
    ++half.seams;
  }
  return half;
}

Halves cut_apart(const geometry::Polygon& piece, const Cut& cut) {
  const geometry::Region whole{piece}, side{near_side(piece, cut)};
  const auto near = geometry::intersect(whole, side), far = geometry::subtract(whole, side);
  Halves result{near, {}};
  result.parts.insert(result.parts.end(), far.begin(), far.end());
  std::erase_if(result.parts, geometry::is_thread);
  for (const auto& seam : shared(edges_on(near, cut), edges_on(far, cut))) {
    const Point foot = cut.at * cut.normal;
    result.seams.push_back({foot + seam.low * along(cut), foot + seam.high * along(cut)});
  }
  return result;
}

}  // namespace drapewright::cutting
