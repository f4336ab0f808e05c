#pragma once

#include <QMetaType>
#include <optional>

#include "app/desktop/document/shape_ref.h"

namespace drapewright::desktop {

class CaseDocument;

/// What an outline that is being entered will become: that of a shape in the case, or a new shape.
struct OutlineTarget {
  ShapeRef ref{ShapeRef::Kind::wound, 0, 0};  ///< for a new island, `index` is its wound
  bool is_new = true;
  wound::ZoneKind zone_kind = wound::ZoneKind::no_film;  ///< of a new zone
  friend bool operator==(const OutlineTarget&, const OutlineTarget&) = default;
};

/// "Wound W1", "New no-film zone".
QString title_of(const wound::Case& value, const OutlineTarget& target);
/// The outline that is there so far; empty for a new shape.
geometry::Ring outline_of(const wound::Case& value, const OutlineTarget& target);
/// Where a new shape is best put so that it does not lie on another: beside the wounds, or in the
/// wound for an island. For a shape that exists: its middle.
geometry::Point place_for(const wound::Case& value, const OutlineTarget& target);

/// Enters the outline into a case. A wound's freehand trace belonged to the outline before.
/// @return what it became
ShapeRef enter_outline(wound::Case& value, const OutlineTarget& target, geometry::Ring outline);
/// Puts the outline into the case as one step of undo.
/// @return what it became
ShapeRef put_outline(CaseDocument& document, const OutlineTarget& target, geometry::Ring outline,
                     const QString& what);

}  // namespace drapewright::desktop

Q_DECLARE_METATYPE(drapewright::desktop::OutlineTarget)
