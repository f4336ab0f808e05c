#include "core/dressing/port_ground.h"

#include <algorithm>

#include "core/dressing/fill.h"
#include "core/dressing/prepare.h"
#include "core/geometry/overlay.h"
#include "core/geometry/validity.h"

namespace drapewright::dressing {
namespace {

/// The film's wounds with their shapes alone: no question that is asked here needs their maps.
std::vector<PreparedWound> shapes_of(const wound::Assessment& seen, const Drape& drape) {
  std::vector<PreparedWound> shapes;
  for (const wound::Wound& wound : seen.wounds) {
    if (std::ranges::find(drape.wounds, wound.id) == drape.wounds.end()) continue;
    shapes.push_back(
        {&wound, geometry::tidy({wound.outline_cm, wound.islands_cm}).region, nullptr});
  }
  return shapes;
}

geometry::Region united(const std::vector<PreparedWound>& wounds) {
  std::vector<geometry::Region> shapes;
  for (const PreparedWound& wound : wounds) shapes.push_back(wound.shape);
  return shapes.size() == 1 ? shapes.front() : geometry::unite(shapes);
}

}  // namespace

bool serves(geometry::Point place, const geometry::IndexedRegion& wounds, double border_cm) {
  return wounds.distance_cm(place) <= border_cm;
}

PortGround::PortGround(const wound::Case& value, const Plan& plan, std::size_t film)
    : aperture_cm_(value.dressing.aperture_diameter_cm),
      base_cm_(value.dressing.port_base_diameter_cm),
      border_cm_(value.dressing.border_cm) {
  const Drape& drape = plan.drapes.at(film);
  const std::vector<PreparedWound> shapes = shapes_of(value.current(), drape);
  wounds_ = united(shapes);
  no_port_ = zones_of_kind(value.current(), wound::ZoneKind::no_port);
  no_film_ = zones_of_kind(value.current(), wound::ZoneKind::no_film);
  open_filler_ = top_filler(plan.fill, shapes, drape.wounds);
  if (!no_port_.empty()) open_filler_ = geometry::subtract(open_filler_, no_port_);
  film_is_known_ = !drape.port.on_bridge;
  film_ = drape.outline_cm;
}

bool PortGround::serves(geometry::Point place) const {
  return dressing::serves(place, wounds_index_, border_cm_);
}

bool PortGround::base_lies_on_film(geometry::Point place) const {
  if (film_is_known_) return film_index_.room_cm(place) >= base_cm_ / 2;
  return wounds_index_.distance_cm(place) + base_cm_ / 2 <= border_cm_ &&
         no_film_index_.distance_cm(place) >= base_cm_ / 2;
}

PortPlace PortGround::at(geometry::Point place) const {
  PortPlace found;
  found.in_reach = serves(place);
  found.room_cm = 2 * filler_index_.room_cm(place);
  found.aperture_fits = found.room_cm >= aperture_cm_;
  found.base_clear = no_port_index_.distance_cm(place) >= base_cm_ / 2 &&
                     no_film_index_.distance_cm(place) >= base_cm_ / 2;
  found.base_on_film = base_lies_on_film(place);
  return found;
}

std::vector<geometry::Point> PortGround::places_with(const std::vector<geometry::Point>& places,
                                                     geometry::Point place) const {
  std::vector<geometry::Point> rest = places_without(places);
  rest.push_back(place);
  return rest;
}

std::vector<geometry::Point> PortGround::places_without(
    const std::vector<geometry::Point>& places) const {
  std::vector<geometry::Point> rest = places;
  std::erase_if(rest, [this](geometry::Point place) { return serves(place); });
  return rest;
}

}  // namespace drapewright::dressing
