#include "app/desktop/document/outline_target.h"

#include <algorithm>

#include "app/desktop/document/case_document.h"
#include "app/wording/spoken.h"
#include "core/geometry/measures.h"

namespace drapewright::desktop {
namespace {

constexpr double room_beside_cm = 4;  // a new shape's middle, from the edge of what is there

ShapeRef add_shape(wound::Case& value, const OutlineTarget& target, geometry::Ring outline) {
  switch (target.ref.kind) {
    case ShapeRef::Kind::island:
      return add_island(value, target.ref.index, std::move(outline));
    case ShapeRef::Kind::zone:
      return add_zone(value, target.zone_kind, std::move(outline));
    default:
      return add_wound(value, std::move(outline));
  }
}

}  // namespace

QString title_of(const wound::Case& value, const OutlineTarget& target) {
  if (!target.is_new) return title_of(value, target.ref);
  switch (target.ref.kind) {
    case ShapeRef::Kind::island:
      return spoken("New island in {1}",
                    {QString::fromStdString(value.current().wounds.at(target.ref.index).id)});
    case ShapeRef::Kind::zone:
      return target.zone_kind == wound::ZoneKind::no_film ? spoken("New no-film zone")
                                                          : spoken("New no-port zone");
    default:
      return spoken("New wound");
  }
}

geometry::Ring outline_of(const wound::Case& value, const OutlineTarget& target) {
  return target.is_new ? geometry::Ring{} : outline_of(value, target.ref);
}

geometry::Point place_for(const wound::Case& value, const OutlineTarget& target) {
  if (!target.is_new) return geometry::centroid(outline_of(value, target.ref));
  const auto& seen = value.current();
  if (target.ref.kind == ShapeRef::Kind::island) {
    return geometry::centroid(seen.wounds.at(target.ref.index).outline_cm);
  }
  geometry::Ring all;
  for (const auto& wound : seen.wounds) {
    all.insert(all.end(), wound.outline_cm.begin(), wound.outline_cm.end());
  }
  if (all.empty()) return {0, 0};
  const auto box = geometry::bounding_box(all);
  return {box.high.x + room_beside_cm, (box.low.y + box.high.y) / 2};
}

ShapeRef enter_outline(wound::Case& value, const OutlineTarget& target, geometry::Ring outline) {
  if (target.is_new) return add_shape(value, target, std::move(outline));
  outline_of(value, target.ref) = std::move(outline);
  if (target.ref.kind == ShapeRef::Kind::wound) {
    value.current().wounds[target.ref.index].trace_cm.clear();
  }
  return target.ref;
}

ShapeRef put_outline(CaseDocument& document, const OutlineTarget& target, geometry::Ring outline,
                     const QString& what) {
  ShapeRef ref = target.ref;
  document.edit(what, {}, [&](wound::Case& value) {
    ref = enter_outline(value, target, std::move(outline));
  });
  return ref;
}

}  // namespace drapewright::desktop
