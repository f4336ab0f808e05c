#pragma once

#include <QString>
#include <vector>

#include "core/wound/case.h"

namespace drapewright::desktop {

/// Which outline of a case is meant: a wound's, an island's in it, or a skin zone's. It names, and
/// owns nothing; after a change of the case it may name something that is no longer there.
struct ShapeRef {
  enum class Kind { none, wound, island, zone };
  Kind kind = Kind::none;
  std::size_t index = 0;   ///< of the wound or the zone
  std::size_t island = 0;  ///< within the wound
  friend bool operator==(const ShapeRef&, const ShapeRef&) = default;
};

/// Every outline of the current assessment: each wound followed by its islands, then the zones.
std::vector<ShapeRef> shapes_of(const wound::Case& value);
bool exists(const wound::Case& value, const ShapeRef& ref);
/// @pre exists
const geometry::Ring& outline_of(const wound::Case& value, const ShapeRef& ref);
geometry::Ring& outline_of(wound::Case& value, const ShapeRef& ref);
/// "Wound W1", "Island 2 in W1", "No film: toes".
QString title_of(const wound::Case& value, const ShapeRef& ref);

/// Add an outline; the new one's name is returned.
ShapeRef add_wound(wound::Case& value, geometry::Ring outline);
/// @pre there is such a wound
ShapeRef add_island(wound::Case& value, std::size_t wound, geometry::Ring outline);
ShapeRef add_zone(wound::Case& value, wound::ZoneKind kind, geometry::Ring outline);
/// @pre exists
void remove_shape(wound::Case& value, const ShapeRef& ref);

}  // namespace drapewright::desktop
