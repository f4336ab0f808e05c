#include "core/geometry/medial/arms.h"

#include <algorithm>

#include "core/geometry/medial/level.h"

namespace drapewright::geometry::medial {
namespace {

/// Walks along the outline's inside, cell by cell, wherever the clearance is low.
class Walker {
 public:
  Walker(const Diagram& diagram, double clearance)
      : diagram_(diagram),
        clearance_(clearance),
        above_(diagram, Side::inside, clearance),
        visited_(diagram.edges.size(), 0) {}

  std::vector<Narrow> run() {
    std::vector<Narrow> parts;
    for (int e = 0; e < diagram_.edge_count(); ++e)
      if (above_.falls(diagram_, e) && !visited(e)) parts.push_back(from_mouth(e));
    for (int e = 0; e < diagram_.edge_count(); ++e)  // outlines with no mouth on them
      if (ends_at_corner(e) && diagram_.side(e) == Side::inside && !visited(e))
        parts.push_back(along_outline(e));
    return parts;
  }

 private:
  bool visited(int e) const { return visited_[static_cast<std::size_t>(e)] != 0; }
  bool ends_at_corner(int e) const { return diagram_.vertex(diagram_.to(e)).side == Side::edge; }

  Narrow from_mouth(int start) {
    Narrow part;
    int e = start;
    do {
      visited_[static_cast<std::size_t>(e)] = 1;
      part.ways.push_back(e);
      const Point mouth = diagram_.at_clearance(e, clearance_);
      part.mouths.push_back(mouth);
      part.ring.push_back(mouth);
      part.ring.push_back(diagram_.foot(diagram_.site(e), mouth));
      do e = step(e, part);
      while (!above_.rises(diagram_, e));
      part.ring.push_back(diagram_.foot(diagram_.site(e), diagram_.at_clearance(e, clearance_)));
      e ^= 1;  // out of the next cell, from the same mouth
    } while (e != start);
    std::reverse(part.ring.begin(), part.ring.end());
    return part;
  }

  Narrow along_outline(int start) {
    Narrow part;
    int e = start;
    do e = step(e, part);
    while (e != start);
    std::reverse(part.ring.begin(), part.ring.end());
    return part;
  }

  /// The half-edge after one whose end is low: in the same cell, or, at a corner of the outline,
  /// in the next cell on the same side.
  int step(int e, Narrow& part) {
    if (!ends_at_corner(e)) {
      part.ways.push_back(diagram_.next(e));
      return diagram_.next(e);
    }
    visited_[static_cast<std::size_t>(e)] = 1;
    part.ring.push_back(diagram_.vertex(diagram_.to(e)).at);
    return e ^ 1;
  }

  const Diagram& diagram_;
  double clearance_;
  Above above_;
  std::vector<char> visited_;
};

}  // namespace

std::vector<Narrow> narrow_parts(const Diagram& diagram, double clearance) {
  return Walker(diagram, clearance).run();
}

}  // namespace drapewright::geometry::medial
