#include "core/geometry/medial/level.h"

#include <algorithm>
#include <cmath>

namespace drapewright::geometry::medial {
namespace {

/// Points of a curve nearer to each other than this, in grid units, are one.
constexpr double same_point = 1e-3;

class Tracer {
 public:
  Tracer(const Diagram& diagram, Side side, const Level& level)
      : diagram_(diagram),
        above_(diagram, side, level.clearance),
        level_(level),
        visited_(diagram.edges.size(), 0) {}

  std::vector<Loop> run() {
    std::vector<Loop> loops;
    for (int e = 0; e < diagram_.edge_count(); ++e)
      if (!visited_[static_cast<std::size_t>(e)] && above_.rises(diagram_, e))
        loops.push_back(follow(e));
    return loops;
  }

 private:
  /// From where the level rises out of reach to where it falls back, cell by cell.
  Loop follow(int start) {
    Loop loop;
    loop.vertex = diagram_.to(start);
    loop.site = diagram_.site(start);
    int e = start;
    Point here = diagram_.at_clearance(e, level_.clearance);
    do {
      visited_[static_cast<std::size_t>(e)] = 1;
      int end = diagram_.next(e);
      while (!above_.falls(diagram_, end)) end = diagram_.next(end);
      const Point there = diagram_.at_clearance(end, level_.clearance);
      append(loop.ring, here);
      if (diagram_.is_corner(diagram_.site(e)))
        append_arc(loop.ring, diagram_.start(diagram_.site(e)), level_.clearance, here, there,
                   level_.step_rad);
      here = there;
      e = end ^ 1;
    } while (e != start);
    while (loop.ring.size() > 1 && distance(loop.ring.front(), loop.ring.back()) < same_point)
      loop.ring.pop_back();
    return loop;
  }

  static void append(Ring& ring, Point p) {
    if (ring.empty() || distance(ring.back(), p) >= same_point) ring.push_back(p);
  }

  const Diagram& diagram_;
  Above above_;
  Level level_;
  std::vector<char> visited_;
};

}  // namespace

Above::Above(const Diagram& diagram, Side side, double clearance) {
  flags_.reserve(diagram.vertices.size());
  for (const Vertex& v : diagram.vertices)
    flags_.push_back(v.side == side && v.clearance > clearance ? 1 : 0);
}

std::vector<Loop> trace(const Diagram& diagram, Side side, const Level& level) {
  return Tracer(diagram, side, level).run();
}

void append_arc(Ring& ring, Point centre, double radius, Point from, Point to, double step_rad) {
  const Point a = from - centre;
  const Point b = to - centre;
  const double angle = std::atan2(cross(a, b), dot(a, b));
  const double sweep = angle < 0 ? angle + 2 * pi : angle;
  const int chords = static_cast<int>(std::ceil(sweep / step_rad));
  // Nothing to draw for an arc that rounding has turned backwards.
  if (chords < 2 || sweep > 2 * pi - 1e-6) return;
  const double first = std::atan2(a.y, a.x);
  for (int i = 1; i < chords; ++i) {
    const double at = first + sweep * i / chords;
    ring.push_back(centre + radius * Point{std::cos(at), std::sin(at)});
  }
}

double clear_of_vertices(const Diagram& diagram, double low, double room) {
  std::vector<double> taken{low, low + room};
  for (const Vertex& v : diagram.vertices)
    if (v.clearance > low && v.clearance < low + room) taken.push_back(v.clearance);
  std::sort(taken.begin(), taken.end());
  std::size_t widest = 1;
  for (std::size_t i = 2; i < taken.size(); ++i)
    if (taken[i] - taken[i - 1] > taken[widest] - taken[widest - 1]) widest = i;
  return 0.5 * (taken[widest] + taken[widest - 1]);
}

}  // namespace drapewright::geometry::medial
