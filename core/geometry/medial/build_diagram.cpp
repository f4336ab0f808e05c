#include <cmath>
#include <limits>

#include "core/geometry/medial/diagram.h"
#include "core/geometry/medial/quick_circles.h"

namespace drapewright::geometry::medial {
namespace {

using Raw = boost::polygon::voronoi_diagram<double>;

/// A vertex nearer to a corner than this, in grid units, is that corner. Boost computes vertices
/// to a few units in the last place.
constexpr double same_corner = 1e-3;
/// Lowest points of the clearance this near to an end of their edge are left uncut.
constexpr double same_place = 1e-6;

/// Turns Boost's diagram into ours.
class Builder {
 public:
  explicit Builder(const Outline& outline) { diagram_.outline = outline; }

  std::optional<Diagram> build(Circles circles) {
    find_directions();
    if (circles == Circles::quick)
      construct<QuickBuilder>();
    else
      construct<ExactBuilder>();
    if (!copy_edges()) return std::nullopt;
    if (!measure_vertices()) return std::nullopt;
    for (int e = 0, count = diagram_.edge_count(); e < count; e += 2) cut_at_lowest(e);
    return std::move(diagram_);
  }

 private:
  std::size_t corners() const { return diagram_.outline.corners.size(); }

  void find_directions() {
    const Outline& outline = diagram_.outline;
    diagram_.direction.reserve(corners());
    for (std::size_t i = 0; i < corners(); ++i) {
      const Point a = real(outline.corners[i]);
      const Point along = real(outline.corners[static_cast<std::size_t>(outline.next[i])]) - a;
      diagram_.direction.push_back((1 / norm(along)) * along);
    }
  }

  template <typename BoostBuilder>
  void construct() {
    const Outline& outline = diagram_.outline;
    BoostBuilder builder;
    for (std::size_t i = 0; i < corners(); ++i) {
      const GridPoint a = outline.corners[i];
      const GridPoint b = outline.corners[static_cast<std::size_t>(outline.next[i])];
      builder.insert_segment(a.x, a.y, b.x, b.y);
    }
    builder.construct(&raw_);
  }

  int site_of(const Raw::cell_type& cell) const {
    const auto index = static_cast<int>(cell.source_index());
    if (cell.contains_segment()) return index + diagram_.outline.size();
    return cell.source_category() == boost::polygon::SOURCE_CATEGORY_SEGMENT_START_POINT
               ? index
               : diagram_.outline.next[static_cast<std::size_t>(index)];
  }

  bool copy_edges() {
    const auto& edges = raw_.edges();
    const auto& vertices = raw_.vertices();
    diagram_.edges.reserve(edges.size() + edges.size() / 4);
    previous_.reserve(edges.size() + edges.size() / 4);
    for (std::size_t e = 0; e < edges.size(); ++e) {
      const auto& edge = edges[e];
      if (edge.twin() != &edges[e ^ 1] || edge.next() == nullptr || edge.prev() == nullptr)
        return false;
      const int from = edge.vertex0() ? static_cast<int>(edge.vertex0() - vertices.data())
                                      : static_cast<int>(vertices.size());
      diagram_.edges.push_back(
          {from, static_cast<int>(edge.next() - edges.data()), site_of(*edge.cell())});
      previous_.push_back(static_cast<int>(edge.prev() - edges.data()));
    }
    return !edges.empty();
  }

  /// Positions, distances and sides; a vertex that two cells put on different sides is a fault.
  bool measure_vertices() {
    diagram_.vertices.reserve(raw_.vertices().size() + raw_.edges().size() / 8 + 1);
    for (const auto& vertex : raw_.vertices())
      diagram_.vertices.push_back({{vertex.x(), vertex.y()}, infinite, Side::edge});
    diagram_.infinity = static_cast<int>(diagram_.vertices.size());
    diagram_.vertices.push_back({{}, infinite, Side::outside});
    for (const HalfEdge& edge : diagram_.edges) {
      if (edge.from == diagram_.infinity) continue;
      Vertex& vertex = diagram_.vertices[static_cast<std::size_t>(edge.from)];
      const double d = distance(vertex.at, diagram_.foot(edge.site, vertex.at));
      if (diagram_.is_corner(edge.site) && d < same_corner)
        vertex = {diagram_.start(edge.site), 0, Side::edge};
      else if (d < vertex.clearance)
        vertex.clearance = d;
    }
    for (const HalfEdge& edge : diagram_.edges)
      if (edge.from != diagram_.infinity && !take_side(edge)) return false;
    return true;
  }

  bool take_side(const HalfEdge& edge) {
    Vertex& vertex = diagram_.vertices[static_cast<std::size_t>(edge.from)];
    if (vertex.clearance == 0) return true;
    const Side side = side_seen_from(edge.site, vertex.at);
    if (vertex.side == Side::edge) vertex.side = side;
    return vertex.side == side;
  }

  /// The cell of a corner lies wholly on the side where the outline bends away from it.
  Side side_seen_from(int site, Point p) const {
    const Outline& outline = diagram_.outline;
    if (!diagram_.is_corner(site)) {
      const Point along = diagram_.direction[static_cast<std::size_t>(site) - corners()];
      return cross(along, p - diagram_.start(site)) > 0 ? Side::inside : Side::outside;
    }
    const auto i = static_cast<std::size_t>(site);
    const auto corner = [&](int j) { return outline.corners[static_cast<std::size_t>(j)]; };
    return turn(corner(outline.previous[i]), corner(site), corner(outline.next[i])) < 0
               ? Side::inside
               : Side::outside;
  }

  /// Cuts an edge whose clearance falls and rises again.
  void cut_at_lowest(int e) {
    const int mine = diagram_.site(e);
    const int other = diagram_.site(e + 1);
    if (!diagram_.is_corner(mine) && !diagram_.is_corner(other)) return;
    if (diagram_.adjoin(mine, other)) return;
    const Point focus = diagram_.start(std::min(mine, other));
    const Point opposite = diagram_.foot(std::max(mine, other), focus);
    const Point across = focus - opposite;
    const double width = norm(across);
    if (!(width > 0)) return;
    const Point lowest = opposite + 0.5 * across;
    // Along the edge my own site lies on the left.
    const Point to_left = std::min(mine, other) == mine ? across : -1 * across;
    const Point along = (1 / width) * Point{to_left.y, -to_left.x};
    const double ends_at =
        diagram_.to(e) == diagram_.infinity ? infinite : position(diagram_.to(e), lowest, along);
    const double starts_at = diagram_.from(e) == diagram_.infinity
                                 ? -infinite
                                 : position(diagram_.from(e), lowest, along);
    if (starts_at < -same_place && ends_at > same_place)
      cut(e, {lowest, 0.5 * width, diagram_.side(e)});
  }

  double position(int v, Point origin, Point along) const {
    return dot(diagram_.vertex(v).at - origin, along);
  }

  /// e keeps its first part, its other side becomes that part's; the second part is a new pair.
  void cut(int e, const Vertex& vertex) {
    const int added_vertex = static_cast<int>(diagram_.vertices.size());
    diagram_.vertices.push_back(vertex);
    const int ahead = diagram_.edge_count();
    const int back = ahead + 1;
    auto& edges = diagram_.edges;
    const auto at = [](int i) { return static_cast<std::size_t>(i); };
    const HalfEdge mine = edges[at(e)];
    const HalfEdge other = edges[at(e + 1)];
    edges.push_back({added_vertex, mine.next, mine.site});
    edges.push_back({other.from, e + 1, other.site});
    previous_.push_back(e);
    previous_.push_back(previous_[at(e + 1)]);
    previous_[at(mine.next)] = ahead;
    edges[at(previous_[at(e + 1)])].next = back;
    previous_[at(e + 1)] = back;
    edges[at(e)].next = ahead;
    edges[at(e + 1)].from = added_vertex;
  }

  static constexpr double infinite = std::numeric_limits<double>::infinity();
  Diagram diagram_;
  Raw raw_;
  std::vector<int> previous_;
};

}  // namespace

std::optional<Diagram> build_diagram(const Outline& outline, Circles circles) {
  return Builder(outline).build(circles);
}

}  // namespace drapewright::geometry::medial
