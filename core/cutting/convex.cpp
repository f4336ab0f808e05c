#include "core/cutting/convex.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/cutting/random.h"

namespace drapewright::cutting {
namespace {

using geometry::cross;

/// Up to so many, pieces are taken apart with all the care there is.
constexpr std::size_t few_corners = 32;

using Chain = std::vector<int>;  ///< corner numbers, counter-clockwise

double turn_at(const std::vector<Point>& points, int a, int b, int c) {
  const auto& p = points[static_cast<std::size_t>(b)];
  return cross(p - points[static_cast<std::size_t>(a)], points[static_cast<std::size_t>(c)] - p);
}

/// Whether segments ab and cd cross or touch, ends that they share left out.
bool meet(Point a, Point b, Point c, Point d) {
  if (a == c || a == d || b == c || b == d) return false;
  const double abc = cross(b - a, c - a), abd = cross(b - a, d - a);
  const double cda = cross(d - c, a - c), cdb = cross(d - c, b - c);
  return ((abc <= 0 && abd >= 0) || (abc >= 0 && abd <= 0)) &&
         ((cda <= 0 && cdb >= 0) || (cda >= 0 && cdb <= 0));
}

/// All rings joined into one by a bridge, run both ways, from every hole to what is joined so far.
class Bridged {
 public:
  explicit Bridged(const geometry::Polygon& polygon) {
    add_ring(polygon.outer);
    for (const auto& hole : polygon.holes) add_ring(hole);
    chain_ = rings_.front();
    std::vector<std::size_t> holes;
    for (std::size_t i = 1; i < rings_.size(); ++i) holes.push_back(i);
    // Rightmost first, so that a bridge to the right meets only what is joined already.
    std::sort(holes.begin(), holes.end(), [&](auto a, auto b) {
      return points_[rightmost(rings_[a])].x > points_[rightmost(rings_[b])].x;
    });
    for (const auto hole : holes) join(rings_[hole]);
  }
  const std::vector<Point>& points() const { return points_; }
  const Chain& chain() const { return chain_; }

 private:
  void add_ring(const geometry::Ring& ring) {
    Chain chain;
    for (const auto& p : ring) {
      chain.push_back(static_cast<int>(points_.size()));
      points_.push_back(p);
    }
    rings_.push_back(chain);
  }
  std::size_t rightmost(const Chain& chain) const {
    return static_cast<std::size_t>(
        *std::max_element(chain.begin(), chain.end(), [&](int a, int b) {
          return points_[static_cast<std::size_t>(a)].x < points_[static_cast<std::size_t>(b)].x;
        }));
  }
  bool sees(Point a, Point b) const {
    for (const auto& ring : rings_) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const auto c = points_[static_cast<std::size_t>(ring[i])];
        const auto d = points_[static_cast<std::size_t>(ring[(i + 1) % ring.size()])];
        if (meet(a, b, c, d)) return false;
      }
    }
    return true;
  }
  void join(const Chain& hole) {
    const auto from = rightmost(hole);
    std::size_t best = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < chain_.size(); ++i) {
      const auto q = points_[static_cast<std::size_t>(chain_[i])];
      const double length = geometry::distance(points_[from], q);
      if (length < least && sees(points_[from], q)) {
        least = length;
        best = i;
      }
    }
    const auto start = std::find(hole.begin(), hole.end(), static_cast<int>(from));
    Chain bridge(start, hole.end());
    bridge.insert(bridge.end(), hole.begin(), start);
    bridge.push_back(static_cast<int>(from));
    bridge.push_back(chain_[best]);
    chain_.insert(chain_.begin() + static_cast<std::ptrdiff_t>(best) + 1, bridge.begin(),
                  bridge.end());
  }

  std::vector<Point> points_;
  std::vector<Chain> rings_;
  Chain chain_;
};

bool inside_triangle(Point p, Point a, Point b, Point c) {
  return cross(b - a, p - a) >= 0 && cross(c - b, p - b) >= 0 && cross(a - c, p - c) >= 0;
}

bool is_ear(const std::vector<Point>& points, const Chain& chain, std::size_t i) {
  const std::size_t n = chain.size();
  const int before = chain[(i + n - 1) % n], at = chain[i], after = chain[(i + 1) % n];
  if (turn_at(points, before, at, after) <= 0) return false;
  const auto a = points[static_cast<std::size_t>(before)], b = points[static_cast<std::size_t>(at)],
             c = points[static_cast<std::size_t>(after)];
  return std::none_of(chain.begin(), chain.end(), [&](int other) {
    const auto p = points[static_cast<std::size_t>(other)];
    return !(p == a || p == b || p == c) && inside_triangle(p, a, b, c);
  });
}

/// Cuts off ears, starting the search at corner `first`; drops corners that lie on a line.
std::vector<Chain> triangles(const std::vector<Point>& points, Chain chain, std::size_t first) {
  std::vector<Chain> result;
  std::size_t i = first;
  std::size_t misses = 0;
  while (chain.size() > 3 && misses <= chain.size()) {
    const std::size_t n = chain.size();
    i %= n;
    const int before = chain[(i + n - 1) % n], after = chain[(i + 1) % n];
    if (is_ear(points, chain, i)) {
      result.push_back({before, chain[i], after});
      chain.erase(chain.begin() + static_cast<std::ptrdiff_t>(i));
      misses = 0;
    } else {
      ++misses;
      ++i;
    }
  }
  if (chain.size() == 3 && turn_at(points, chain[0], chain[1], chain[2]) > 0) {
    result.push_back(chain);
  }
  return result;
}

/// `into` and `from` joined along their common edge if that leaves a convex chain.
std::optional<Chain> joined(const std::vector<Point>& points, const Chain& into, const Chain& from,
                            double slack) {
  const std::size_t n = into.size(), m = from.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < m; ++j) {
      if (into[i] != from[(j + 1) % m] || into[(i + 1) % n] != from[j]) continue;
      Chain chain;
      for (std::size_t k = 1; k <= n; ++k) chain.push_back(into[(i + k) % n]);
      for (std::size_t k = 2; k < m; ++k) chain.push_back(from[(j + k) % m]);
      const std::size_t size = chain.size();
      for (std::size_t k = 0; k < size; ++k) {
        if (turn_at(points, chain[(k + size - 1) % size], chain[k], chain[(k + 1) % size]) < -slack)
          return std::nullopt;
      }
      return chain;
    }
  }
  return std::nullopt;
}

/// Joins neighbours for as long as the result stays convex (Hertel and Mehlhorn, 1983).
void join_neighbours(const std::vector<Point>& points, std::vector<Chain>& parts, double slack) {
  for (std::size_t i = 0; i < parts.size();) {
    bool grown = false;
    for (std::size_t j = 0; j < parts.size() && !grown; ++j) {
      if (i == j) continue;
      if (auto chain = joined(points, parts[i], parts[j], slack)) {
        parts[i] = std::move(*chain);
        parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(j));
        if (j < i) --i;
        grown = true;
      }
    }
    if (!grown) ++i;
  }
}

void add_normals(Convex& part) {
  for (std::size_t k = 0; k < part.corners.size(); ++k) {
    const auto along = part.corners[(k + 1) % part.corners.size()] - part.corners[k];
    part.normals.push_back((1 / geometry::norm(along)) * Point{along.y, -along.x});
  }
}

Convex convex_of(const std::vector<Point>& points, const Chain& chain, double slack) {
  Convex result;
  const std::size_t n = chain.size();
  for (std::size_t k = 0; k < n; ++k) {
    if (turn_at(points, chain[(k + n - 1) % n], chain[k], chain[(k + 1) % n]) > slack) {
      result.corners.push_back(points[static_cast<std::size_t>(chain[k])]);
    }
  }
  add_normals(result);
  return result;
}

}  // namespace

Convex convex_hull_of(const geometry::Polygon& polygon) {
  Convex result{geometry::convex_hull(polygon.outer), {}};
  add_normals(result);
  return result;
}

std::vector<Convex> convex_parts(const geometry::Polygon& polygon) {
  const Bridged bridged(polygon);
  const auto& points = bridged.points();
  const double extent = geometry::bounding_box(points).width() + 1e-30;
  const double slack = 1e-13 * extent * extent;
  std::vector<Chain> best;
  Random random(1);
  // Which triangles are joined first decides how many parts are left; few parts make every later
  // question cheaper, so several orders are tried.
  const std::size_t corners = bridged.chain().size();
  // Each costs by the square of the corners.
  const std::size_t starts = std::max<std::size_t>(
      1, std::min(corners, 16 * few_corners / std::max(corners, few_corners)));
  for (std::size_t start = 0; start < starts && best.size() != 1; ++start) {
    const auto cut = triangles(points, bridged.chain(), start * corners / starts);
    for (int order = 0; order < 6; ++order) {
      auto parts = cut;
      random.shuffle(parts);
      join_neighbours(points, parts, slack);
      if (best.empty() || parts.size() < best.size()) best = std::move(parts);
    }
  }
  std::vector<Convex> result;
  for (const auto& chain : best) {
    auto part = convex_of(points, chain, slack);
    if (part.corners.size() >= 3) result.push_back(std::move(part));
  }
  return result;
}

}  // namespace drapewright::cutting
