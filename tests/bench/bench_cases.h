#pragma once

#include "core/wound/case.h"

namespace drapewright::bench {

/// A hand-drawn wound of about 9 x 7 cm: a few slow waves, and a tremor of 0.02 cm.
geometry::Ring traced(int points);

/// The same size, as the corners of the pixels that a mask was traced from.
geometry::Ring traced_from_pixels(int points);

/// One wound with the standard settings.
wound::Case case_of(geometry::Ring outline, double depth_cm = 1.5);

/// Wounds of about 1 x 0.8 cm in rows, near enough for one film or too far apart for that.
wound::Case case_of_many(int wounds, double spacing_cm);

}  // namespace drapewright::bench
