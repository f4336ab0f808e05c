#pragma once

#include <vector>

#include "core/geometry/medial/diagram.h"

namespace drapewright::geometry::medial {

/// Which vertices lie on one side of the outline at more than some clearance from it.
class Above {
 public:
  Above(const Diagram& diagram, Side side, double clearance);
  bool operator()(int vertex) const { return flags_[static_cast<std::size_t>(vertex)] != 0; }
  bool rises(const Diagram& d, int e) const { return !(*this)(d.from(e)) && (*this)(d.to(e)); }
  bool falls(const Diagram& d, int e) const { return (*this)(d.from(e)) && !(*this)(d.to(e)); }

 private:
  std::vector<char> flags_;
};

/// One closed curve of points at the same clearance.
struct Loop {
  Ring ring;       ///< the outline lies on its left
  int vertex = 0;  ///< of the diagram, farther from the outline than the curve
  int site = 0;    ///< from which a part of the curve is measured
};

/// A clearance and how finely the arcs around corners are broken into chords.
struct Level {
  double clearance = 0;
  double step_rad = 0;  ///< angle of one chord at most; chords sag towards the outline
};

/// All curves at a level on one side of the outline.
///
/// A curve crosses the diagram where clearance passes the level, which happens once along a
/// half-edge at most; within one cell it is a straight piece or an arc. Seen from its site every
/// point of a cell can be seen, and so can every chord of an arc in it: pieces of different cells
/// never cross, and the curves are simple and disjoint by the way they are made.
std::vector<Loop> trace(const Diagram& diagram, Side side, const Level& level);

/// Corner points of a chain of chords from one point to another counter-clockwise about a centre,
/// without the first and the last.
void append_arc(Ring& ring, Point centre, double radius, Point from, Point to, double step_rad);

/// A clearance in [low, low + room], as far as can be from that of any vertex: a curve through a
/// vertex would touch itself there.
double clear_of_vertices(const Diagram& diagram, double low, double room);

}  // namespace drapewright::geometry::medial
