#include "core/geometry/medial/piece_tree.h"

#include <algorithm>
#include <utility>

namespace drapewright::geometry::medial {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool is_inside(const Diagram& diagram, int v) { return diagram.vertex(v).side == Side::inside; }

}  // namespace

PieceTree::PieceTree(const Diagram& diagram)
    : links_(diagram.vertices.size()),
      first_edge_(diagram.vertices.size(), -1),
      uphill_(diagram.vertices.size(), -1),
      peak_of_(diagram.vertices.size(), -1) {
  join_all(diagram);
  name_peaks(diagram);
  add_up_areas(diagram);
  std::reverse(saddles_.begin(), saddles_.end());
}

int PieceTree::root(int vertex) const {
  while (links_[at(vertex)].parent != vertex) vertex = links_[at(vertex)].parent;
  return vertex;
}

/// Kruskal's way to a greatest spanning tree: an edge is there when its lower end is.
void PieceTree::join_all(const Diagram& diagram) {
  for (std::size_t v = 0; v < links_.size(); ++v)
    links_[v].parent = links_[v].top = static_cast<int>(v);
  std::vector<std::pair<double, int>> edges;
  edges.reserve(diagram.edges.size() / 4);
  for (int e = 0; e < diagram.edge_count(); e += 2) {
    const int a = diagram.from(e);
    const int b = diagram.to(e);
    if (!is_inside(diagram, a) || !is_inside(diagram, b)) continue;
    const double c = diagram.vertex(a).clearance - diagram.vertex(b).clearance;
    edges.emplace_back(diagram.vertex(c > 0 ? b : a).clearance, c > 0 ? e + 1 : e);
  }
  std::sort(edges.begin(), edges.end(), [](const auto& a, const auto& b) {
    return a.first != b.first ? a.first > b.first : a.second < b.second;
  });
  for (const auto& [clearance, e] : edges) join(diagram, e);
}

/// @param e runs uphill
void PieceTree::join(const Diagram& diagram, int e) {
  const int low = diagram.from(e);
  const int high = diagram.to(e);
  const double clearance = diagram.vertex(low).clearance;
  const int first = first_edge_[at(low)];
  if (first < 0) first_edge_[at(low)] = e;
  if (first_edge_[at(high)] < 0) first_edge_[at(high)] = e ^ 1;
  int a = root(low);
  int b = root(high);
  if (a == b) return;
  const auto top = [&](int r) { return links_[at(r)].top; };
  const auto height = [&](int r) { return diagram.vertex(top(r)).clearance; };
  const bool low_side_is_lower = height(a) <= height(b);
  const double lesser = std::min(height(a), height(b));
  if (lesser > clearance)
    saddles_.push_back({clearance, low, {first, e}, {low, high}});
  else if (low_side_is_lower)
    uphill_[at(top(a))] = high;
  else
    uphill_[at(top(b))] = low;

  const int highest = low_side_is_lower ? top(b) : top(a);
  if (links_[at(a)].size < links_[at(b)].size) std::swap(a, b);
  links_[at(b)].parent = a;
  links_[at(b)].clearance = clearance;
  links_[at(a)].size += links_[at(b)].size;
  links_[at(a)].top = highest;
}

void PieceTree::name_peaks(const Diagram& diagram) {
  std::vector<int> way;
  for (int v = 0; v < static_cast<int>(links_.size()); ++v) {
    if (!is_inside(diagram, v)) continue;
    int top = v;
    way.clear();
    while (peak_of_[at(top)] < 0 && uphill_[at(top)] >= 0) {
      way.push_back(top);
      top = uphill_[at(top)];
    }
    if (peak_of_[at(top)] < 0) {
      peak_of_[at(top)] = static_cast<int>(peaks_.size());
      peaks_.push_back({top, diagram.vertex(top).clearance, 0});
    }
    for (const int w : way) peak_of_[at(w)] = peak_of_[at(top)];
  }
  for (Saddle& saddle : saddles_)
    for (int& peak : saddle.peak) peak = peak_of_[at(peak)];
  for (const Peak& peak : peaks_) falling_peaks_.push_back(peak.clearance);
  std::sort(falling_peaks_.begin(), falling_peaks_.end(), std::greater<>());
}

/// A sector belongs to the hill that its edge climbs.
void PieceTree::add_up_areas(const Diagram& diagram) {
  for (int e = 0; e < diagram.edge_count(); ++e) {
    if (diagram.side(e) != Side::inside) continue;
    const int a = diagram.from(e);
    const int b = diagram.to(e);
    const int high = diagram.vertex(a).clearance > diagram.vertex(b).clearance ? a : b;
    peaks_[at(peak_of_[at(high)])].area += diagram.sector_area(e);
  }
}

int PieceTree::pieces(double clearance) const {
  const auto peaks =
      std::lower_bound(falling_peaks_.begin(), falling_peaks_.end(), clearance, std::greater<>()) -
      falling_peaks_.begin();
  const auto joined =
      saddles_.end() - std::upper_bound(saddles_.begin(), saddles_.end(), clearance,
                                        [](double c, const Saddle& s) { return c < s.clearance; });
  return static_cast<int>(peaks - joined);
}

int PieceTree::piece_of(int vertex, double clearance) const {
  while (links_[at(vertex)].parent != vertex && links_[at(vertex)].clearance > clearance)
    vertex = links_[at(vertex)].parent;
  return vertex;
}

/// The peaks and saddles are a tree for each polygon. Seen from its highest peak, a saddle cuts
/// off what hangs below it; the rest of that polygon is the other side.
std::vector<PieceTree::Lobe> PieceTree::lobes() const {
  std::vector<std::vector<std::pair<int, int>>> saddles_at(peaks_.size());
  for (int s = 0; s < static_cast<int>(saddles_.size()); ++s)
    for (const int side : {0, 1})
      saddles_at[at(saddles_[at(s)].peak[side])].emplace_back(s, saddles_[at(s)].peak[1 - side]);
  std::vector<int> by_height(peaks_.size());
  for (std::size_t i = 0; i < by_height.size(); ++i) by_height[i] = static_cast<int>(i);
  std::sort(by_height.begin(), by_height.end(),
            [&](int a, int b) { return peaks_[at(a)].clearance > peaks_[at(b)].clearance; });

  struct Node {
    int above = -1;   ///< peak
    int saddle = -1;  ///< towards it
    int root = -1;
    double area = 0;
    double highest = 0;
  };
  std::vector<Node> nodes(peaks_.size());
  std::vector<int> order;
  for (const int start : by_height) {
    if (nodes[at(start)].root >= 0) continue;
    nodes[at(start)].root = start;
    order.push_back(start);
    for (std::size_t i = order.size() - 1; i < order.size(); ++i) {
      const int peak = order[i];
      for (const auto& [saddle, other] : saddles_at[at(peak)]) {
        if (saddle == nodes[at(peak)].saddle) continue;
        nodes[at(other)] = {peak, saddle, start, 0, 0};
        order.push_back(other);
      }
    }
  }
  for (auto i = order.rbegin(); i != order.rend(); ++i) {
    Node& node = nodes[at(*i)];
    node.area += peaks_[at(*i)].area;
    node.highest = std::max(node.highest, peaks_[at(*i)].clearance);
    if (node.above < 0) continue;
    Node& above = nodes[at(node.above)];
    above.area += node.area;
    above.highest = std::max(above.highest, node.highest);
  }
  std::vector<Lobe> lobes(saddles_.size());
  for (const Node& node : nodes) {
    if (node.above < 0) continue;
    const Node& all = nodes[at(node.root)];
    const double rest = all.area - node.area;
    lobes[at(node.saddle)] =
        node.area <= rest ? Lobe{node.area, node.highest} : Lobe{rest, all.highest};
  }
  return lobes;
}

}  // namespace drapewright::geometry::medial
