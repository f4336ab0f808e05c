#include "core/dressing/border_lines.h"

#include <algorithm>

#include "core/dressing/prepare.h"
#include "core/geometry/overlay.h"

namespace drapewright::dressing {

geometry::Offset border_line(const wound::Case& value, const Drape& drape, double border_cm) {
  FindingList unheard;  // the plan has told them
  std::vector<geometry::Region> shapes;
  for (const PreparedWound& wound : prepare_wounds(value.current(), unheard)) {
    if (std::ranges::find(drape.wounds, wound.wound->id) == drape.wounds.end()) continue;
    shapes.push_back(wound.shape);
  }
  for (const Bridge& bridge : drape.bridges) shapes.push_back(bridge.strip);
  if (shapes.size() == 1) return geometry::outset(shapes.front(), border_cm);
  return geometry::outset(geometry::unite(shapes), border_cm);
}

}  // namespace drapewright::dressing
