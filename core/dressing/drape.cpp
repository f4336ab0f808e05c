#include "core/dressing/drape.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

#include "core/base/say.h"
#include "core/dressing/fill.h"
#include "core/dressing/film.h"
#include "core/dressing/film_sheet.h"
#include "core/dressing/groups.h"
#include "core/dressing/port.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"

namespace drapewright::dressing {
namespace {

/// The group's shape in one. Wounds rarely touch; only those that may need an overlay.
geometry::Region united(const std::vector<PreparedWound>& wounds,
                        const std::vector<std::size_t>& group) {
  std::vector<geometry::Region> shapes;
  std::vector<geometry::Box> boxes;
  bool apart = true;
  for (const std::size_t i : group) {
    const geometry::Box box = geometry::bounding_box(geometry::outer_points(wounds[i].shape));
    apart = apart && std::ranges::none_of(boxes, [&](const geometry::Box& other) {
              return geometry::gap_between(box, other) == 0;
            });
    boxes.push_back(box);
    shapes.push_back(wounds[i].shape);
  }
  if (!apart) return geometry::unite(shapes);
  geometry::Region all;
  for (geometry::Region& shape : shapes) std::ranges::move(shape, std::back_inserter(all));
  return all;
}

/// A film that grew along its bridge may run into its neighbour.
void report_meeting_films(const std::vector<Drape>& drapes, FindingList& findings) {
  for (std::size_t i = 0; i < drapes.size(); ++i) {
    for (std::size_t j = i + 1; j < drapes.size(); ++j) {
      if (drapes[i].bridges.empty() && drapes[j].bridges.empty()) continue;
      if (!geometry::overlap(drapes[i].outline_cm, drapes[j].outline_cm)) continue;
      findings.add(
          {.severity = Severity::note,
           .code = "films-meet",
           .text = say("The film over wound {1} grows along its bridge and lies over that of wound "
                       "{2}.",
                       {drapes[i].wounds.front(), drapes[j].wounds.front()}),
           .source = own_rule(),
           .wound = drapes[i].wounds.front(),
           .where_cm = drapes[i].port.centre_cm});
    }
  }
}

}  // namespace

std::vector<Drape> drape_wounds(const std::vector<PreparedWound>& wounds, const Zones& zones,
                                const wound::Case& value, Fill& fill, FindingList& findings,
                                const Progress& progress) {
  FilmShelf shelf(wound::stock_of(value));
  const Skin skin(wounds, zones, value.dressing);
  std::vector<Drape> drapes;
  std::size_t draped = 0;
  for (const auto& group : film_groups(wounds, value.dressing.border_cm)) {
    progress.at(0.5 + 0.4 * static_cast<double>(draped) / static_cast<double>(wounds.size()));
    draped += group.size();
    Drape drape;
    std::vector<const geometry::ClearanceMap*> maps;
    for (const std::size_t i : group) {
      drape.wounds.push_back(wounds[i].wound->id);
      maps.push_back(wounds[i].map.get());
    }
    const geometry::Region shape = united(wounds, group);
    drape.centroid_cm = geometry::centroid(shape);
    place_port(drape, top_pieces(fill, wounds, drape.wounds), {skin, shape, group}, value.dressing,
               findings);
    cut_film(drape, shape, maps, zones.no_film, value, shelf, findings);
    check_port_base(drape, findings);
    fill.piece_count += static_cast<int>(drape.bridges.size());
    drapes.push_back(std::move(drape));
  }
  report_meeting_films(drapes, findings);
  return drapes;
}

}  // namespace drapewright::dressing
