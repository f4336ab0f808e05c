#include <cstdlib>

/// How often each property is tried.
#ifndef PROPERTY_RUNS
#define PROPERTY_RUNS "100"
#endif

namespace {

/// rapidcheck reads its settings before the first property. Set RC_PARAMS yourself to try other
/// wounds, or more of them.
[[maybe_unused]] const int fixed = ::setenv("RC_PARAMS", "seed=20 max_success=" PROPERTY_RUNS, 0);

}  // namespace
