#include "core/geometry/medial/pieces.h"

#include <algorithm>
#include <numeric>

#include "core/geometry/measures.h"

namespace drapewright::geometry::medial {
namespace {

/// A loop of fewer points is smaller than the rounding of one point.
bool is_speck(const Ring& ring) { return ring.size() < 3; }

/// Which polygons of the outline grow together when each grows by a distance.
class Groups {
 public:
  Groups(const Diagram& diagram, double distance)
      : parent_(static_cast<std::size_t>(diagram.outline.polygons)) {
    std::iota(parent_.begin(), parent_.end(), 0);
    if (parent_.size() < 2) return;
    for (int e = 0; e < diagram.edge_count(); e += 2) {
      const double nearest = std::min(diagram.vertex(diagram.from(e)).clearance,
                                      diagram.vertex(diagram.to(e)).clearance);
      if (nearest <= distance && diagram.side(e) == Side::outside)
        join(diagram.polygon_of(diagram.site(e)), diagram.polygon_of(diagram.site(e + 1)));
    }
  }

  int of(int polygon) const {
    while (parent(polygon) != polygon) polygon = parent(polygon);
    return polygon;
  }

  int count() const {
    int roots = 0;
    for (int i = 0; i < static_cast<int>(parent_.size()); ++i) roots += parent(i) == i;
    return roots;
  }

 private:
  int parent(int i) const { return parent_[static_cast<std::size_t>(i)]; }
  void join(int a, int b) { parent_[static_cast<std::size_t>(of(a))] = of(b); }

  std::vector<int> parent_;
};

/// Collects rings by the piece that they belong to.
class Assembly {
 public:
  void add(int piece, Ring ring) {
    Part& part = parts_[piece];
    const bool is_outer = is_speck(ring) ? !part.has_outer : signed_area(ring) > 0;
    if (!is_outer) {
      if (!is_speck(ring)) part.polygon.holes.push_back(std::move(ring));
      return;
    }
    if (part.has_outer) consistent_ = false;
    part.has_outer = true;
    part.polygon.outer = std::move(ring);
  }

  std::optional<Region> finish(int expected) {
    Region region;
    for (auto& [piece, part] : parts_) {
      if (!part.has_outer) consistent_ = false;
      if (!is_speck(part.polygon.outer)) region.push_back(std::move(part.polygon));
    }
    if (!consistent_ || static_cast<int>(parts_.size()) != expected) return std::nullopt;
    return region;
  }

 private:
  struct Part {
    Polygon polygon;
    bool has_outer = false;
  };
  std::map<int, Part> parts_;
  bool consistent_ = true;
};

}  // namespace

std::optional<Region> inner_pieces(const Diagram& diagram, const PieceTree& tree,
                                   const Level& level) {
  Assembly assembly;
  for (Loop& loop : trace(diagram, Side::inside, level)) {
    std::reverse(loop.ring.begin(), loop.ring.end());
    assembly.add(tree.piece_of(loop.vertex, level.clearance), std::move(loop.ring));
  }
  return assembly.finish(tree.pieces(level.clearance));
}

std::optional<Region> outer_pieces(const Diagram& diagram, const Level& level) {
  const Groups groups(diagram, level.clearance);
  Assembly assembly;
  for (Loop& loop : trace(diagram, Side::outside, level))
    assembly.add(groups.of(diagram.polygon_of(loop.site)), std::move(loop.ring));
  return assembly.finish(groups.count());
}

}  // namespace drapewright::geometry::medial
