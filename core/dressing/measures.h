#pragma once

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Measures one wound as the clock method and a ruler would, and by its geometry.
/// Spreads are upper bounds for an edge that is anywhere off by up to `tracing_error_cm`: area by
/// edge length x error, lengths by twice the error, volume by the area's spread x depth (an error
/// of the depth itself is not in it). docs/geometry.md states the model.
/// @param head_deg direction that points to the patient's head
WoundMeasures measure_wound(const PreparedWound& wound, double head_deg, double tracing_error_cm,
                            FindingList& findings);

/// Volume of the pockets, each taken as high as the lowest layer of filler (their true height is
/// not measured); 0 where an outset could not be verified or there is no filler.
double pocket_volume(const PreparedWound& wound, const std::vector<Layer>& layers, double head_deg);

}  // namespace drapewright::dressing
