#include "app/desktop/document/shape_ref.h"

#include <algorithm>
#include <utility>

#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

template <class Case>
auto& ring_of(Case& value, const ShapeRef& ref) {
  auto& seen = value.current();
  if (ref.kind == ShapeRef::Kind::zone) return seen.skin_zones.at(ref.index).outline_cm;
  auto& wound = seen.wounds.at(ref.index);
  return ref.kind == ShapeRef::Kind::island ? wound.islands_cm.at(ref.island) : wound.outline_cm;
}

std::string free_id(const std::vector<wound::Wound>& wounds) {
  for (int number = 1;; ++number) {
    const std::string id = "W" + std::to_string(number);
    if (std::ranges::none_of(wounds, [&](const auto& wound) { return wound.id == id; })) return id;
  }
}

}  // namespace

std::vector<ShapeRef> shapes_of(const wound::Case& value) {
  std::vector<ShapeRef> all;
  const auto& seen = value.current();
  for (std::size_t i = 0; i < seen.wounds.size(); ++i) {
    all.push_back({ShapeRef::Kind::wound, i, 0});
    for (std::size_t k = 0; k < seen.wounds[i].islands_cm.size(); ++k) {
      all.push_back({ShapeRef::Kind::island, i, k});
    }
  }
  for (std::size_t i = 0; i < seen.skin_zones.size(); ++i) {
    all.push_back({ShapeRef::Kind::zone, i, 0});
  }
  return all;
}

bool exists(const wound::Case& value, const ShapeRef& ref) {
  const auto all = shapes_of(value);
  return std::ranges::find(all, ref) != all.end();
}

const geometry::Ring& outline_of(const wound::Case& value, const ShapeRef& ref) {
  return ring_of(value, ref);
}

geometry::Ring& outline_of(wound::Case& value, const ShapeRef& ref) { return ring_of(value, ref); }

QString title_of(const wound::Case& value, const ShapeRef& ref) {
  const auto& seen = value.current();
  switch (ref.kind) {
    case ShapeRef::Kind::wound:
      return spoken("Wound {1}", {QString::fromStdString(seen.wounds.at(ref.index).id)});
    case ShapeRef::Kind::island:
      return spoken("Island {1} in {2}",
                    {ref.island + 1, QString::fromStdString(seen.wounds.at(ref.index).id)});
    case ShapeRef::Kind::zone: {
      const auto& zone = seen.skin_zones.at(ref.index);
      const QString kind =
          zone.kind == wound::ZoneKind::no_film ? spoken("No film") : spoken("No port");
      return zone.note.empty() ? kind : kind + ": " + QString::fromStdString(zone.note);
    }
    case ShapeRef::Kind::none:
      break;
  }
  return {};
}

ShapeRef add_wound(wound::Case& value, geometry::Ring outline) {
  auto& wounds = value.current().wounds;
  wound::Wound added;
  added.id = free_id(wounds);
  added.outline_cm = std::move(outline);
  wounds.push_back(std::move(added));
  return {ShapeRef::Kind::wound, wounds.size() - 1, 0};
}

ShapeRef add_island(wound::Case& value, std::size_t wound, geometry::Ring outline) {
  auto& islands = value.current().wounds.at(wound).islands_cm;
  islands.push_back(std::move(outline));
  return {ShapeRef::Kind::island, wound, islands.size() - 1};
}

ShapeRef add_zone(wound::Case& value, wound::ZoneKind kind, geometry::Ring outline) {
  auto& zones = value.current().skin_zones;
  wound::SkinZone added;
  added.kind = kind;
  added.outline_cm = std::move(outline);
  zones.push_back(std::move(added));
  return {ShapeRef::Kind::zone, zones.size() - 1, 0};
}

void remove_shape(wound::Case& value, const ShapeRef& ref) {
  const auto erase_at = [](auto& list, std::size_t index) {
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(index));
  };
  auto& seen = value.current();
  if (ref.kind == ShapeRef::Kind::wound) erase_at(seen.wounds, ref.index);
  if (ref.kind == ShapeRef::Kind::island)
    erase_at(seen.wounds.at(ref.index).islands_cm, ref.island);
  if (ref.kind == ShapeRef::Kind::zone) erase_at(seen.skin_zones, ref.index);
}

}  // namespace drapewright::desktop
