#pragma once

#include <QString>
#include <optional>

#include "app/desktop/document/shape_ref.h"

namespace drapewright::desktop {

/// What is done to a whole shape of a case by drawing over it. Each function alters the case, or
/// leaves it as it was and says why not. @pre the shape exists; `area` and `line` cross nothing of
/// themselves
using Refusal = std::optional<QString>;

/// The shape grows by what was drawn. Wounds that the area touches become one with it (the deepest
/// depth is kept; one with undermining or tunnels is refused), and so do islands that it covers.
Refusal add_area(wound::Case& value, const ShapeRef& ref, const geometry::Ring& area);
/// The shape loses what was drawn. A wound that falls apart becomes several; a hole becomes an
/// island of intact skin.
Refusal take_area(wound::Case& value, const ShapeRef& ref, const geometry::Ring& area);
/// Cuts a wound or a zone in two along a line that crosses it; the larger part keeps the name.
Refusal split_shape(wound::Case& value, const ShapeRef& ref, const geometry::Ring& line);

/// How an outline is moved as a whole: turned and scaled about a point, then shifted.
struct Displacement {
  geometry::Point by_cm;
  double turn_deg = 0;
  double factor = 1;  ///< > 0
};
geometry::Ring placed(geometry::Ring ring, geometry::Point about, const Displacement& how);
/// Moves a shape with all that belongs to it: a wound with its islands and trace.
void place_anew(wound::Case& value, const ShapeRef& ref, geometry::Point about,
                const Displacement& how);

}  // namespace drapewright::desktop
