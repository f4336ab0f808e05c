#include "core/cutting/simplify.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::cutting {
namespace {

using geometry::cross;
using geometry::Point;
using geometry::Ring;

constexpr double never = std::numeric_limits<double>::infinity();

/// What taking out one corner, or the edge from it to the next, would do.
struct Cut {
  double excess = never;         ///< how far the outline would then lie outside the original
  std::optional<Point> meeting;  ///< in place of the edge; nothing: cut across
};

struct Corner {
  Point at;
  double excess = 0;       ///< of the edge from here to the next corner
  std::optional<Cut> cut;  ///< the better of the two, once worked out
};
using Chain = std::vector<Corner>;

bool cross_or_touch(Point a, Point b, Point c, Point d) {
  const double abc = cross(b - a, c - a), abd = cross(b - a, d - a);
  const double cda = cross(d - c, a - c), cdb = cross(d - c, b - c);
  return ((abc <= 0 && abd >= 0) || (abc >= 0 && abd <= 0)) &&
         ((cda <= 0 && cdb >= 0) || (cda >= 0 && cdb <= 0));
}

class Simplifier {
 public:
  Simplifier(const geometry::Polygon& polygon, double most)
      : most_(most), original_(geometry::Region{polygon}) {
    add(polygon.outer);
    for (const auto& hole : polygon.holes) add(hole);
  }

  geometry::Polygon run() {
    for (auto& chain : chains_) {
      while (chain.size() > 3 && simplify_once(chain)) {
      }
    }
    geometry::Polygon result;
    for (std::size_t k = 0; k < chains_.size(); ++k) {
      Ring ring;
      for (const auto& corner : chains_[k]) ring.push_back(corner.at);
      if (k == 0) {
        result.outer = ring;
      } else if (geometry::signed_area(ring) < 0) {
        result.holes.push_back(ring);
      }
    }
    return result;
  }

 private:
  void add(const Ring& ring) {
    Chain chain;
    for (const auto& p : ring) chain.push_back({p, 0, {}});
    chains_.push_back(std::move(chain));
  }
  static const Corner& after(const Chain& chain, std::size_t k, std::size_t by) {
    return chain[(k + by) % chain.size()];
  }
  static Cut across(const Chain& chain, std::size_t k) {
    const auto &a = after(chain, k, chain.size() - 1), &b = chain[k], &c = after(chain, k, 1);
    const Point chord = c.at - a.at;
    const double length = geometry::norm(chord);
    const double depth = length > 0 ? -cross(b.at - a.at, c.at - b.at) / length : 0;
    if (depth < 0) return {};
    return {depth + std::max(a.excess, b.excess), {}};
  }
  Cut extended(const Chain& chain, std::size_t k) const {
    const Point a = after(chain, k, chain.size() - 1).at, b = chain[k].at,
                c = after(chain, k, 1).at, d = after(chain, k, 2).at;
    const Point in = b - a, edge = c - b, out = d - c;
    const double turn = cross(in, out);
    if (cross(in, edge) <= 0 || cross(edge, out) <= 0 || turn <= 0) return {};
    const Point meeting = b + (cross(edge, out) / turn) * in;
    if (-cross(edge, meeting - b) > most_ * geometry::norm(edge)) return {};
    return {original_.nearest(meeting).distance_cm, meeting};
  }
  /// Whether the new edges would meet others than their neighbours.
  bool clear(const Chain& chain, std::size_t at) const {
    const Cut& cut = *chain[at].cut;
    const std::size_t n = chain.size();
    const Point a = after(chain, at, n - 1).at, b = after(chain, at, 1).at;
    for (const auto& other : chains_) {
      for (std::size_t k = 0; k < other.size(); ++k) {
        const Point p = other[k].at, q = after(other, k, 1).at;
        if (cut.meeting) {
          if (p == a || p == chain[at].at || p == b) continue;
          if (cross_or_touch(chain[at].at, *cut.meeting, p, q) ||
              cross_or_touch(*cut.meeting, b, p, q)) {
            return false;
          }
        } else {
          if (p == a || q == a || p == b || q == b) continue;
          if (cross_or_touch(a, b, p, q)) return false;
        }
      }
    }
    return true;
  }
  bool simplify_once(Chain& chain) {
    std::vector<std::size_t> order;
    for (std::size_t k = 0; k < chain.size(); ++k) {
      if (!chain[k].cut) {
        const Cut one = across(chain, k), other = extended(chain, k);
        chain[k].cut = one.excess <= other.excess ? one : other;
      }
      if (chain[k].cut->excess <= most_) order.push_back(k);
    }
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return chain[a].cut->excess < chain[b].cut->excess;
    });
    const auto best =
        std::find_if(order.begin(), order.end(), [&](std::size_t k) { return clear(chain, k); });
    if (best == order.end()) return false;
    apply(chain, *best);
    return true;
  }
  static void apply(Chain& chain, std::size_t at) {
    const std::size_t n = chain.size();
    const Cut cut = *chain[at].cut;
    auto& before = chain[(at + n - 1) % n];
    auto& next = chain[(at + 1) % n];
    if (cut.meeting) {
      next.at = *cut.meeting;  // the edges on both sides run on to there
      next.excess = std::max(next.excess, cut.excess);
      before.excess = std::max(before.excess, cut.excess);
    } else {
      before.excess = cut.excess;
    }
    for (const std::size_t back : {n - 2, n - 1, std::size_t{1}, std::size_t{2}}) {
      chain[(at + back) % n].cut.reset();
    }
    chain.erase(chain.begin() + static_cast<std::ptrdiff_t>(at));
  }

  double most_;
  geometry::EdgeIndex original_;
  std::vector<Chain> chains_;
};

}  // namespace

geometry::Polygon simplify_outwards(const geometry::Polygon& polygon, double most_cm) {
  return Simplifier(polygon, most_cm).run();
}

}  // namespace drapewright::cutting
