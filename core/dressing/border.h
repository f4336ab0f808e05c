#pragma once

#include <array>
#include <optional>

#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// The film border that is left around a group of wounds after trimming.
struct BorderLeft {
  double least_cm = 0;
  std::optional<geometry::Segment> least_line;  ///< from wound edge to film edge; nothing when the
                                                ///< full border is left all round
  std::array<double, 12> by_clock_cm{};         ///< hours 1 to 12; `border_cm` where no wound edge
                                                ///< lies in the hour's sector
};

/// Distance from every point of the wounds' edge to the nearest no_film zone, at most border_cm,
/// found to tolerance::circle_cm by halving the edges until no half can hold a smaller one.
/// Zones inside an island of the wound count too: film there is a bridge over skin.
/// @param centre  centre of the clock
BorderLeft border_left(const geometry::Region& wounds, const geometry::Region& no_film,
                       double border_cm, geometry::Point centre, double head_deg);

}  // namespace drapewright::dressing
