// What must hold for the plan of any wound, on outlines drawn at random, judged with GEOS.

#include <algorithm>
#include <cmath>

#include "core/dressing/plan.h"
#include "core/geometry/shapes.h"
#include "tests/property/dressing/any_case.h"
#include "tests/support/geos_shape.h"

namespace drapewright::dressing {
namespace {

using support::any_case;
using support::GeosShape;

/// A micrometre for the grid of overlays; the drawing tolerance and GEOS's own chords.
constexpr double hair_cm = 1e-4;
constexpr double drawn_cm = 0.005 + 0.0005;
constexpr double sliver_cm2 = 1e-3;

GeosShape wound_shape(const wound::Case& value) {
  const wound::Wound& wound = value.current().wounds.front();
  return GeosShape(geometry::Polygon{wound.outline_cm, wound.islands_cm}).made_valid();
}

void require_same(double a, double b) {
  RC_ASSERT(std::abs(a - b) <= 1e-9 * std::max({1.0, std::abs(a), std::abs(b)}));
}

RC_GTEST_PROP(PlanOfAnyWound, KeepsFillerInsideByTheInset, ()) {
  const wound::Case value = any_case();
  const GeosShape shape = wound_shape(value);
  for (const Layer& layer : plan_dressing(value).fill.layers) {
    if (layer.reaches_into_pockets) continue;
    const GeosShape pieces(layer.pieces);
    RC_ASSERT((pieces - shape).area() <= 1e-9);
    RC_ASSERT(pieces.distance(shape.edges()) >= layer.inset_cm - hair_cm);
  }
}

RC_GTEST_PROP(PlanOfAnyWound, HasPiecesThatAddUpAndNeverOverlap, ()) {
  const Plan plan = plan_dressing(any_case());
  std::size_t pieces = plan.fill.strips.size();
  for (const Drape& drape : plan.drapes) pieces += drape.bridges.size();
  for (const Layer& layer : plan.fill.layers) {
    pieces += layer.pieces.size();
    for (std::size_t i = 0; i < layer.pieces.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        RC_ASSERT((GeosShape(layer.pieces[i]) & GeosShape(layer.pieces[j])).area() <= 1e-9);
  }
  RC_ASSERT(static_cast<std::size_t>(plan.fill.piece_count) == pieces);
}

RC_GTEST_PROP(PlanOfAnyWound, CoversTheBorderWithFilmLessZones, ()) {
  const wound::Case value = any_case();
  GeosShape needed = wound_shape(value).buffered(value.dressing.border_cm);
  for (const wound::SkinZone& zone : value.current().skin_zones) {
    needed = needed - GeosShape(geometry::Polygon{zone.outline_cm, {}});
  }
  for (const Drape& drape : plan_dressing(value).drapes) {
    RC_ASSERT((needed - GeosShape(drape.outline_cm)).area() <= sliver_cm2);
  }
}

RC_GTEST_PROP(PlanOfAnyWound, PutsTheApertureOnFiller, ()) {
  const Plan plan = plan_dressing(any_case());
  for (const Drape& drape : plan.drapes) {
    if (!drape.port.fits || drape.port.on_bridge) continue;
    RC_ASSERT(drape.port.centre_cm.has_value());
    GeosShape top;
    for (const Layer& layer : plan.fill.layers)
      if (layer.index == 1) top = top | GeosShape(layer.pieces);
    const GeosShape centre(*drape.port.centre_cm);
    RC_ASSERT(top.covers(centre));
    RC_ASSERT(centre.distance(top.edges()) >= drape.port.aperture_diameter_cm / 2 - hair_cm);
  }
}

RC_GTEST_PROP(PlanOfAnyWound, NeverNeedsLessFilmForALargerBorder, ()) {
  wound::Case value = any_case();
  value.dressing.border_cm = 3;
  const double small = plan_dressing(value).drapes.front().area_cm2;
  value.dressing.border_cm = 3.5;
  RC_ASSERT(plan_dressing(value).drapes.front().area_cm2 >= small);
}

RC_GTEST_PROP(PlanOfAnyWound, NeverNeedsMoreFillerForALargerInset, ()) {
  wound::Case value = any_case();
  const double before = plan_dressing(value).fill.top_area_cm2;
  value.dressing.inset_cm += 0.1;
  RC_ASSERT(plan_dressing(value).fill.top_area_cm2 <= before + 1e-9);
}

/// Moves and re-orders only: what the wound measures stays, and so does the plan, moved.
RC_GTEST_PROP(PlanOfAnyWound, IsTheSameShiftedAndReordered, ()) {
  const wound::Case value = any_case();
  wound::Case other = value;
  const geometry::Point shift{*rc::gen::inRange(-100'000, 100'000) * 0x1p-10,
                              *rc::gen::inRange(-100'000, 100'000) * 0x1p-10};
  const auto move = [&](geometry::Ring& ring) {
    for (geometry::Point& p : ring) p = p + shift;
  };
  wound::Wound& wound = other.current().wounds.front();
  move(wound.outline_cm);
  for (geometry::Ring& island : wound.islands_cm) move(island);
  for (wound::SkinZone& zone : other.current().skin_zones) move(zone.outline_cm);
  std::ranges::rotate(wound.outline_cm, wound.outline_cm.begin() + 1);
  const Plan a = plan_dressing(value), b = plan_dressing(other);
  require_same(a.wounds[0].area.value, b.wounds[0].area.value);
  require_same(a.wounds[0].perimeter.value, b.wounds[0].perimeter.value);
  require_same(a.wounds[0].length.value, b.wounds[0].length.value);
  const double room = sliver_cm2 + drawn_cm * a.wounds[0].perimeter.value;
  RC_ASSERT(std::abs(a.fill.top_area_cm2 - b.fill.top_area_cm2) <= room);
}

}  // namespace
}  // namespace drapewright::dressing
