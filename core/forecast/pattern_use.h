#pragma once

#include "core/forecast/patient.h"
#include "core/forecast/quantity.h"

namespace drapewright::forecast {

/// What a patient uses of an item from one day up to another (not part of it): exact, with all that
/// hangs together in one patient - a course that ends takes its later weeks with it.
Quantity use_of(const UsePattern& pattern, int from, int to);

/// Its mean, by what is still running on each day: no distribution is worked out.
double mean_use_of(const UsePattern& pattern, int from, int to);

/// The last day on which the pattern may use anything, and one more.
int latest_end(const UsePattern& pattern);

}  // namespace drapewright::forecast
