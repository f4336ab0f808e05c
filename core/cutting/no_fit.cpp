#include "core/cutting/no_fit.h"

#include <algorithm>
#include <cmath>

namespace drapewright::cutting {
namespace {

using geometry::cross;
using geometry::dot;

/// A convex polygon read from its lowest corner on; `sign` -1 reads its mirror image in the
/// origin, which is counter-clockwise as well.
class Reader {
 public:
  Reader(const Convex& convex, double sign) : convex_(convex), sign_(sign) {
    const auto& c = convex.corners;
    for (std::size_t k = 1; k < c.size(); ++k) {
      const double dy = sign * (c[k].y - c[at_].y), dx = sign * (c[k].x - c[at_].x);
      if (dy < 0 || (dy == 0 && dx < 0)) at_ = k;
    }
  }
  bool done() const { return read_ == convex_.corners.size(); }
  Point corner() const { return sign_ * convex_.corners[at_]; }
  Point normal() const { return sign_ * convex_.normals[at_]; }
  void advance() {
    at_ = at_ + 1 == convex_.corners.size() ? 0 : at_ + 1;
    ++read_;
  }

 private:
  const Convex& convex_;
  double sign_;
  std::size_t at_ = 0;
  std::size_t read_ = 0;
};

class CellMaker {
 public:
  CellMaker(double gap_cm, NoFit& result) : gap_(gap_cm), result_(result) {}

  void add(const Convex& fixed, const Convex& moving) {
    NoFit::Cell cell;
    cell.planes.first = static_cast<int>(result_.planes.size());
    Reader a(fixed, 1), b(moving, -1);
    started_ = false;
    // Both run from their lowest corner and turn by less than 180 degrees at each, so the sign of
    // the cross product tells which edge comes next.
    while (!a.done() || !b.done()) {
      const Point corner = a.corner() + b.corner();
      const double order = b.done() ? 1 : a.done() ? -1 : cross(a.normal(), b.normal());
      edge(order >= 0 ? a.normal() : b.normal(), corner, cell.box);
      if (order >= 0) a.advance();
      if (order <= 0) b.advance();
    }
    round_corner(last_, first_, first_corner_);
    cell.planes.count = static_cast<int>(result_.planes.size()) - cell.planes.first;
    cell.box.low = cell.box.low - Point{gap_, gap_};
    cell.box.high = cell.box.high + Point{gap_, gap_};
    cell.first_quad = static_cast<int>(result_.quads.size());
    add_quads(cell.planes);
    cell.left = crossings(
        cell, [](const HalfPlane& e) { return -e.nx; }, along_x);
    cell.right = crossings(
        cell, [](const HalfPlane& e) { return e.nx; }, along_x);
    cell.bottom = crossings(
        cell, [](const HalfPlane& e) { return -e.ny; }, along_y);
    cell.top = crossings(
        cell, [](const HalfPlane& e) { return e.ny; }, along_y);
    result_.cells.push_back(cell);
  }

 private:
  void edge(Point normal, Point corner, Box& box) {
    if (!started_) {
      started_ = true;
      first_ = normal;
      first_corner_ = corner;
      box = {corner, corner};
    } else {
      round_corner(last_, normal, corner);
    }
    box.low = {std::min(box.low.x, corner.x), std::min(box.low.y, corner.y)};
    box.high = {std::max(box.high.x, corner.x), std::max(box.high.y, corner.y)};
    plane(normal, corner);
    last_ = normal;
  }
  void plane(Point normal, Point corner) {
    result_.planes.push_back({normal.x, normal.y, dot(normal, corner) + gap_});
  }
  /// Tangents to the gap's arc about a corner at every multiple of 45 degrees, so that a sharp
  /// corner does not reach far out and no edge reaches beyond the box.
  void round_corner(Point before, Point after, Point corner) {
    if (gap_ <= 0) return;
    constexpr double r = 0.70710678118654752440;
    constexpr Point compass[] = {{1, 0},  {r, r},   {0, 1},  {-r, r},
                                 {-1, 0}, {-r, -r}, {0, -1}, {r, -r}};
    const bool wide = cross(before, after) <= 0;  // never more than half a turn, but for rounding
    if (wide && dot(before, after) > 0) return;
    for (int k = 0, first = first_after(before, compass); k < 8; ++k) {
      const Point n = compass[(first + k) % 8];
      if (!(cross(before, n) > 1e-9 && cross(n, after) > 1e-9)) break;
      plane(n, corner);
    }
  }
  static int first_after(Point normal, const Point (&compass)[8]) {
    int first = 0;
    for (int k = 0; k < 8; ++k) {
      // The one within 45 degrees counter-clockwise of `normal`.
      if (cross(normal, compass[k]) > 1e-9 && dot(normal, compass[k]) > 0.70710678 - 1e-6)
        first = k;
    }
    return first;
  }
  static Crossing along_x(const HalfPlane& e) { return {e.reach / e.nx, -e.ny / e.nx}; }
  static Crossing along_y(const HalfPlane& e) { return {e.reach / e.ny, -e.nx / e.ny}; }

  void add_quads(NoFit::Range range) {
    for (int k = 0; k < range.count; k += 4) {
      Quad quad;
      for (int i = 0; i < 4; ++i) {
        const int from = range.first + std::min(k + i, range.count - 1);
        const auto& plane = result_.planes[static_cast<std::size_t>(from)];
        quad.nx[i] = plane.nx;
        quad.ny[i] = plane.ny;
        quad.reach[i] = plane.reach;
      }
      result_.quads.push_back(quad);
    }
  }

  template <typename Facing, typename Solve>
  NoFit::Range crossings(const NoFit::Cell& cell, Facing facing, Solve solve) {
    NoFit::Range range{static_cast<int>(result_.crossings.size()), 0};
    for (int k = 0; k < cell.planes.count; ++k) {
      const auto& e = result_.planes[static_cast<std::size_t>(cell.planes.first + k)];
      if (facing(e) <= 1e-12) continue;
      result_.crossings.push_back(solve(e));
      ++range.count;
    }
    return range;
  }

  double gap_;
  NoFit& result_;
  bool started_ = false;
  Point first_, first_corner_, last_;
};

}  // namespace

namespace {

/// Compiled for wider registers too, where the processor has them; without fused operations, so
/// that the numbers are the same everywhere.
__attribute__((target_clones("avx2", "default"))) double least_room(const Quad* quads, int count,
                                                                    double x, double y) {
  double least[4];
  for (int i = 0; i < 4; ++i) {
    least[i] = quads[0].reach[i] - quads[0].nx[i] * x - quads[0].ny[i] * y;
  }
  for (int k = 1; k < count; ++k) {
    const Quad& quad = quads[k];
    for (int i = 0; i < 4; ++i) {
      const double d = quad.reach[i] - quad.nx[i] * x - quad.ny[i] * y;
      least[i] = d < least[i] ? d : least[i];
    }
  }
  const double a = least[0] < least[1] ? least[0] : least[1];
  const double b = least[2] < least[3] ? least[2] : least[3];
  return a < b ? a : b;
}

}  // namespace

double NoFit::depth(const Cell& cell, Point p) const {
  const double least =
      least_room(quads.data() + cell.first_quad, (cell.planes.count + 3) / 4, p.x, p.y);
  return least > touch_cm ? least : 0;
}

void make_no_fit(const Oriented& fixed, const Oriented& moving, double gap_cm, NoFit& result) {
  result.planes.clear();
  result.quads.clear();
  result.crossings.clear();
  result.cells.clear();
  CellMaker maker(gap_cm, result);
  for (const auto& a : fixed.parts) {
    for (const auto& b : moving.parts) maker.add(a, b);
  }
  result.box = result.cells.front().box;
  for (const auto& cell : result.cells) {
    result.box.low = {std::min(result.box.low.x, cell.box.low.x),
                      std::min(result.box.low.y, cell.box.low.y)};
    result.box.high = {std::max(result.box.high.x, cell.box.high.x),
                       std::max(result.box.high.y, cell.box.high.y)};
  }
}

NoFitTable::NoFitTable(int orientations, double gap_cm)
    : orientations_(orientations),
      gap_cm_(gap_cm),
      table_(static_cast<std::size_t>(orientations) * static_cast<std::size_t>(orientations)) {}

const NoFit& NoFitTable::between(const Oriented& fixed, const Oriented& moving, NoFit& scratch) {
  if (fixed.id < 0 || moving.id < 0) {
    make_no_fit(fixed, moving, gap_cm_, scratch);
    return scratch;
  }
  auto& entry = table_[static_cast<std::size_t>(fixed.id * orientations_ + moving.id)];
  if (!entry) {
    entry = std::make_unique<NoFit>();
    make_no_fit(fixed, moving, gap_cm_, *entry);
  }
  return *entry;
}

}  // namespace drapewright::cutting
