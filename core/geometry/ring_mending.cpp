#include "core/geometry/ring_mending.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"

namespace drapewright::geometry {
namespace {

enum class Corner { needed, repeated, collinear, spike };

Corner kind_of(Point before, Point at, Point after) {
  const Point in = at - before;
  const Point out = after - at;
  const double in_length = norm(in);
  const double out_length = norm(out);
  if (std::min(in_length, out_length) <= tolerance::same_point_cm) return Corner::repeated;
  const double longer = std::max(in_length, out_length);
  // How far the point on the shorter arm lies from the longer arm's line.
  if (std::abs(cross(in, out)) > tolerance::collinear_cm * longer) return Corner::needed;
  return dot(in, out) < 0 ? Corner::spike : Corner::collinear;
}

/// Walks round a ring and drops what is not needed; where something was dropped it steps back, as
/// the point before may have become needless too.
class Mending {
 public:
  explicit Mending(const Ring& ring)
      : ring_(ring), links_(ring.size()), is_foot_(ring.size()), left_(ring.size()) {
    for (std::size_t i = 0; i < left_; ++i) {
      links_[i] = {i == 0 ? left_ - 1 : i - 1, i + 1 < left_ ? i + 1 : 0};
    }
  }

  MendedRing run() {
    std::size_t at = 0;
    for (std::size_t kept_in_a_row = 0; left_ >= 3 && kept_in_a_row < left_;) {
      const auto [before, after] = links_[at];
      const Corner kind = kind_of(ring_[before], ring_[at], ring_[after]);
      if (kind == Corner::needed) {
        ++kept_in_a_row;
        at = after;
      } else {
        kept_in_a_row = 0;
        drop(at, kind);
        at = before;
      }
    }
    for (std::size_t i = 0; left_ >= 3 && i < left_; ++i, at = links_[at].after) {
      result_.ring.push_back(ring_[at]);
    }
    start_where_the_ring_did();
    return std::move(result_);
  }

 private:
  struct Links {
    std::size_t before;
    std::size_t after;
  };

  void drop(std::size_t at, Corner kind) {
    const auto [before, after] = links_[at];
    links_[before].after = after;
    links_[after].before = before;
    --left_;
    if (kind == Corner::spike) {
      // A long spike is cut back point by point and still counts as one.
      if (!is_foot_[at] && result_.spikes_removed++ == 0) result_.where = ring_[at];
      is_foot_[before] = is_foot_[after] = true;
    } else if (is_foot_[at]) {
      is_foot_[after] = true;
    }
  }

  void start_where_the_ring_did() {
    Ring& ring = result_.ring;
    for (const Point& p : ring_) {
      const auto first = std::find(ring.begin(), ring.end(), p);
      if (first == ring.end()) continue;
      std::rotate(ring.begin(), first, ring.end());
      return;
    }
  }

  const Ring& ring_;
  std::vector<Links> links_;
  std::vector<bool> is_foot_;  // of a spike: where one was cut back to
  std::size_t left_;
  MendedRing result_;
};

}  // namespace

MendedRing mended(const Ring& ring) { return Mending(ring).run(); }

std::vector<Ring> loops_of(const Ring& ring) {
  std::vector<Ring> loops;
  Ring path;
  std::map<std::pair<double, double>, std::size_t> place;  // of a point on the path
  for (const Point& p : ring) {
    const auto [seen, is_new] = place.try_emplace({p.x, p.y}, path.size());
    if (is_new) {
      path.push_back(p);
      continue;
    }
    const auto start = path.begin() + static_cast<std::ptrdiff_t>(seen->second);
    Ring loop(start, path.end());
    for (std::size_t i = 1; i < loop.size(); ++i) place.erase({loop[i].x, loop[i].y});
    path.erase(start + 1, path.end());
    if (loop.size() >= 3) loops.push_back(std::move(loop));
  }
  if (path.size() >= 3) loops.push_back(std::move(path));
  return loops;
}

Ring reversed(Ring ring) {
  std::reverse(ring.begin(), ring.end());
  return ring;
}

void orient(Polygon& polygon) {
  if (signed_area(polygon.outer) < 0) polygon.outer = reversed(std::move(polygon.outer));
  for (Ring& hole : polygon.holes) {
    if (signed_area(hole) > 0) hole = reversed(std::move(hole));
  }
}

}  // namespace drapewright::geometry
