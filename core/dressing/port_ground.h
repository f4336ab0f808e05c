#pragma once

#include <vector>

#include "core/dressing/plan.h"
#include "core/geometry/indexed_region.h"
#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// What the port of one film would find at a place.
struct PortPlace {
  bool in_reach = false;       ///< on the film's wounds or within border_cm of them; else the place
                               ///< would serve no wound of that film
  double room_cm = 0;          ///< diameter of the largest circle round it on filler, off no_port
  bool aperture_fits = false;  ///< the aperture is no larger than that room
  bool base_clear = false;     ///< of every zone that takes no port or no film
  bool base_on_film = false;   ///< wholly

  /// Whether nothing speaks against it.
  bool good() const { return in_reach && aperture_fits && base_clear && base_on_film; }
};

/// Where the port of one film of a plan may sit, for asking while it is being moved: set up once,
/// then every place costs microseconds. Its answers are those that the plan gives once the place is
/// among port_places_cm, with one exception on the safe side: where the port sits on a bridge now,
/// the film to come is not known yet, and the base counts as on it when it lies wholly within
/// border_cm of the wounds and clear of the no_film zones.
class PortGround {
 public:
  /// @param plan of that case; neither is needed afterwards
  /// @param film index of the drape in the plan
  PortGround(const wound::Case& value, const Plan& plan, std::size_t film);
  PortGround(const PortGround&) = delete;
  PortGround& operator=(const PortGround&) = delete;

  PortPlace at(geometry::Point place) const;
  double aperture_diameter_cm() const { return aperture_cm_; }
  double base_diameter_cm() const { return base_cm_; }
  double border_cm() const { return border_cm_; }

  /// The chosen places of a case once this film's port was put at `place`: those that served this
  /// film until now are gone, those of other films stay.
  std::vector<geometry::Point> places_with(const std::vector<geometry::Point>& places,
                                           geometry::Point place) const;
  /// The same with the choice taken back.
  std::vector<geometry::Point> places_without(const std::vector<geometry::Point>& places) const;

 private:
  bool serves(geometry::Point place) const;
  bool base_lies_on_film(geometry::Point place) const;

  double aperture_cm_;
  double base_cm_;
  double border_cm_;
  bool film_is_known_;
  geometry::Region wounds_, open_filler_, no_port_, no_film_, film_;
  geometry::IndexedRegion wounds_index_{wounds_}, filler_index_{open_filler_},
      no_port_index_{no_port_}, no_film_index_{no_film_}, film_index_{film_};
};

/// Whether a chosen place serves these wounds: it lies on them or within border_cm of them.
bool serves(geometry::Point place, const geometry::IndexedRegion& wounds, double border_cm);

}  // namespace drapewright::dressing
