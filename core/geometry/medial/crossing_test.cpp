#include "core/geometry/medial/crossing_test.h"

#include <algorithm>
#include <set>

namespace drapewright::geometry::medial {
namespace {

/// An edge with its ends in sweep order: left to right, upwards where it stands upright.
struct SweepEdge {
  GridPoint left;
  GridPoint right;
  int corner;  ///< where it starts in the outline
};

bool before(GridPoint a, GridPoint b) { return a.x != b.x ? a.x < b.x : a.y < b.y; }

int sign(std::int64_t v) { return v > 0 ? 1 : v < 0 ? -1 : 0; }

/// Closed segments with a point in common.
bool meet(const SweepEdge& a, const SweepEdge& b) {
  const int a_left = sign(turn(b.left, b.right, a.left));
  const int a_right = sign(turn(b.left, b.right, a.right));
  const int b_left = sign(turn(a.left, a.right, b.left));
  const int b_right = sign(turn(a.left, a.right, b.right));
  if (a_left * a_right > 0 || b_left * b_right > 0) return false;
  if (a_left != 0 || a_right != 0 || b_left != 0 || b_right != 0) return true;
  return !before(a.right, b.left) && !before(b.right, a.left);  // on one line
}

/// Which edge lies lower where the later of the two begins. Edges that meet may be put in any
/// order: they are found out when they become neighbours.
struct Lower {
  bool operator()(const SweepEdge* a, const SweepEdge* b) const {
    if (a == b) return false;
    int side = 0;
    if (before(a->left, b->left)) {
      side = sign(turn(a->left, a->right, b->left));
      if (side == 0) side = sign(turn(a->left, a->right, b->right));
    } else {
      side = -sign(turn(b->left, b->right, a->left));
      if (side == 0) side = -sign(turn(b->left, b->right, a->right));
    }
    return side != 0 ? side > 0 : a->corner < b->corner;
  }
};

class Sweep {
 public:
  explicit Sweep(const Outline& outline) : outline_(outline) {
    edges_.reserve(outline.corners.size());
    for (int i = 0; i < outline.size(); ++i) {
      const auto index = static_cast<std::size_t>(i);
      const GridPoint a = outline.corners[index];
      const GridPoint b = outline.corners[static_cast<std::size_t>(outline.next[index])];
      edges_.push_back(before(a, b) ? SweepEdge{a, b, i} : SweepEdge{b, a, i});
    }
  }

  bool finds_meeting() {
    struct Event {
      GridPoint at;
      bool begins;
      const SweepEdge* edge;
    };
    std::vector<Event> events;
    events.reserve(2 * edges_.size());
    for (const SweepEdge& edge : edges_) {
      events.push_back({edge.left, true, &edge});
      events.push_back({edge.right, false, &edge});
    }
    // At one point edges begin before others end, so that a touching there is seen.
    std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) {
      if (!(a.at == b.at)) return before(a.at, b.at);
      return a.begins != b.begins ? a.begins : a.edge->corner < b.edge->corner;
    });
    std::vector<Status::iterator> place(edges_.size());
    for (const Event& event : events) {
      auto& here = place[static_cast<std::size_t>(event.edge->corner)];
      if (event.begins ? begin(event.edge, here) : end(here)) return true;
    }
    return false;
  }

 private:
  using Status = std::set<const SweepEdge*, Lower>;

  bool begin(const SweepEdge* edge, Status::iterator& here) {
    const auto [at, is_new] = status_.insert(edge);
    here = at;
    if (!is_new) return true;
    const auto above = std::next(at);
    return (at != status_.begin() && wrong(*std::prev(at), edge)) ||
           (above != status_.end() && wrong(edge, *above));
  }

  bool end(Status::iterator here) {
    const auto above = status_.erase(here);
    return above != status_.begin() && above != status_.end() && wrong(*std::prev(above), *above);
  }

  /// Neighbours along a ring share their corner; anything else that meets is wrong. (Neighbours
  /// on one line were taken out of the outline.)
  bool wrong(const SweepEdge* a, const SweepEdge* b) const {
    const auto next = [&](const SweepEdge* e) {
      return outline_.next[static_cast<std::size_t>(e->corner)];
    };
    return next(a) != b->corner && next(b) != a->corner && meet(*a, *b);
  }

  const Outline& outline_;
  std::vector<SweepEdge> edges_;
  Status status_;
};

}  // namespace

bool edges_meet(const Outline& outline) { return Sweep(outline).finds_meeting(); }

}  // namespace drapewright::geometry::medial
