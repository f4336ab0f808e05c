#include "core/dressing/groups.h"

#include "core/base/disjoint_sets.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::dressing {

std::vector<std::vector<std::size_t>> film_groups(const std::vector<PreparedWound>& wounds,
                                                  double border_cm) {
  std::vector<geometry::Box> boxes;
  for (const PreparedWound& w : wounds) {
    boxes.push_back(geometry::bounding_box(geometry::outer_points(w.shape)));
  }
  DisjointSets sets(wounds.size());
  for (std::size_t i = 0; i < wounds.size(); ++i) {
    for (std::size_t j = i + 1; j < wounds.size(); ++j) {
      if (sets.together(i, j) || geometry::gap_between(boxes[i], boxes[j]) >= 2 * border_cm)
        continue;
      const auto gap = geometry::gap_between_edges(wounds[i].shape, wounds[j].shape);
      if (gap.distance_cm < 2 * border_cm) sets.join(i, j);
    }
  }
  std::vector<std::vector<std::size_t>> groups;
  std::vector<std::size_t> group_of(wounds.size(), wounds.size());
  for (std::size_t i = 0; i < wounds.size(); ++i) {
    const std::size_t root = sets.leader(i);
    if (group_of[root] == wounds.size()) {
      group_of[root] = groups.size();
      groups.emplace_back();
    }
    groups[group_of[root]].push_back(i);
  }
  return groups;
}

}  // namespace drapewright::dressing
