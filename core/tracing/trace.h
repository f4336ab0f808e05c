#pragma once

#include "core/geometry/shape.h"

namespace drapewright::tracing {

/// How far a smoothed trace may lie from the line that was drawn: a fifth of a millimetre, well
/// below the width of a felt-tip line. This program's own setting.
inline constexpr double trace_tolerance_cm = 0.02;

/// Whether a chain of points comes back to its start.
enum class Ends { joined, open };

/// What a hand, a mouse or a pen drew, without its tremor and on few points. No point of either
/// lies farther than the tolerance from the other; open ends stay where they are.
/// @param drawn  cm, in the order of drawing; repeated points do no harm
/// @return fewer than three points when nothing wider than the tolerance was drawn
geometry::Ring smoothed(const geometry::Ring& drawn, Ends ends,
                        double tolerance_cm = trace_tolerance_cm);

}  // namespace drapewright::tracing
