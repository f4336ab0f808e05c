#pragma once

#include <array>
#include <limits>
#include <utility>
#include <vector>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Boxes over runs of consecutive edges, and boxes over those, up to one over all. Edges of an
/// outline that follow each other lie near each other, so the tree needs no sorting, is built in
/// one pass and prunes as well as one that was sorted. For this room's own use.
class EdgeTree {
 public:
  explicit EdgeTree(std::vector<Segment> edges);

  const std::vector<Segment>& edges() const { return edges_; }
  bool empty() const { return edges_.empty(); }

  struct Nearest {
    double squared = std::numeric_limits<double>::infinity();
    std::size_t edge = 0;
    Point on_edge;
  };
  /// The edge point nearest to p. @pre not empty
  Nearest nearest(Point p) const;
  /// True when an edge lies within `within_cm` of p: cheaper than asking how near the nearest is.
  bool comes_within(Point p, double within_cm) const;
  /// The shortest way between `segment` and the edges if it is shorter than `below_cm`.
  Nearest nearest(const Segment& segment, double below_cm) const;
  /// Inside by the even-odd rule; a point exactly on an edge may come out either way.
  bool inside(Point p) const;

  /// Calls visit(i, j) for every pair of an edge here and an edge there whose boxes come as near
  /// as `within_cm`, until it returns false.
  template <class Visit>
  void for_close_boxes(const EdgeTree& other, double within_cm, Visit visit) const;
  /// The same within this tree, i < j.
  template <class Visit>
  void for_close_boxes(double within_cm, Visit visit) const;

  /// Calls visit(i, j) for pairs that may be nearer to each other than visit's last answer, which
  /// it gives as a squared distance; near parts come first.
  template <class Visit>
  void for_near_pairs(const EdgeTree& other, Visit visit) const;

 private:
  static constexpr std::size_t run_length = 4;  // measured: 4 to 8 edges a leaf are about as fast

  std::size_t leaf_count() const { return boxes_.size() / 2; }
  bool is_leaf(std::size_t node) const { return node >= leaf_count(); }
  std::pair<std::size_t, std::size_t> run(std::size_t leaf) const;

  std::vector<Segment> edges_;
  std::vector<Box> boxes_;  // node k has the children 2k and 2k + 1; node 1 is the root
};

/// Squared distances between boxes, points and segments; 0 where they touch.
double squared_distance(const Box& box, Point p);
double squared_distance(const Box& a, const Box& b);
/// The shortest way from a to b.
Segment shortest_between(const Segment& a, const Segment& b);

/// The edges of a ring, a polygon, a region; edges without length are left out unless the ring
/// has no other.
std::vector<Segment> edges_of(const Ring& ring);
std::vector<Segment> edges_of(const Polygon& polygon);
std::vector<Segment> edges_of(const Region& region);

inline bool close(const Box& a, const Box& b, double within_cm) {
  return a.low.x <= b.high.x + within_cm && b.low.x <= a.high.x + within_cm &&
         a.low.y <= b.high.y + within_cm && b.low.y <= a.high.y + within_cm;
}
Box box_of(const Segment& segment);

template <class Visit>
void EdgeTree::for_close_boxes(const EdgeTree& other, double within_cm, Visit visit) const {
  if (empty() || other.empty()) return;
  std::vector<std::pair<std::size_t, std::size_t>> open{{1, 1}};
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    if (!close(boxes_[a], other.boxes_[b], within_cm)) continue;
    if (is_leaf(a) && other.is_leaf(b)) {
      const auto [a_begin, a_end] = run(a);
      const auto [b_begin, b_end] = other.run(b);
      for (std::size_t i = a_begin; i < a_end; ++i) {
        for (std::size_t j = b_begin; j < b_end; ++j) {
          if (!close(box_of(edges_[i]), box_of(other.edges_[j]), within_cm)) continue;
          if (!visit(i, j)) return;
        }
      }
    } else if (other.is_leaf(b) || (!is_leaf(a) && a <= b)) {
      open.push_back({2 * a, b});
      open.push_back({2 * a + 1, b});
    } else {
      open.push_back({a, 2 * b});
      open.push_back({a, 2 * b + 1});
    }
  }
}

template <class Visit>
void EdgeTree::for_close_boxes(double within_cm, Visit visit) const {
  for_close_boxes(*this, within_cm,
                  [&](std::size_t i, std::size_t j) { return i >= j || visit(i, j); });
}

template <class Visit>
void EdgeTree::for_near_pairs(const EdgeTree& other, Visit visit) const {
  if (empty() || other.empty()) return;
  double bound = std::numeric_limits<double>::infinity();
  const auto descend = [&](auto&& self, std::size_t a, std::size_t b) -> void {
    if (squared_distance(boxes_[a], other.boxes_[b]) >= bound) return;
    if (is_leaf(a) && other.is_leaf(b)) {
      const auto [a_begin, a_end] = run(a);
      const auto [b_begin, b_end] = other.run(b);
      for (std::size_t i = a_begin; i < a_end; ++i) {
        for (std::size_t j = b_begin; j < b_end; ++j) bound = visit(i, j);
      }
      return;
    }
    std::array<std::pair<std::size_t, std::size_t>, 2> next;
    if (other.is_leaf(b) || (!is_leaf(a) && a <= b)) {
      next = {{{2 * a, b}, {2 * a + 1, b}}};
    } else {
      next = {{{a, 2 * b}, {a, 2 * b + 1}}};
    }
    const auto apart = [&](const auto& pair) {
      return squared_distance(boxes_[pair.first], other.boxes_[pair.second]);
    };
    if (apart(next[1]) < apart(next[0])) std::swap(next[0], next[1]);
    for (const auto& [x, y] : next) self(self, x, y);
  };
  descend(descend, 1, 1);
}

}  // namespace drapewright::geometry
