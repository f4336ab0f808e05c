#include <cstdlib>

namespace {

/// rapidcheck reads its settings before the first property. Set RC_PARAMS yourself to try other
/// wounds, or more of them.
[[maybe_unused]] const int fixed = ::setenv("RC_PARAMS", "seed=20 max_success=100", 0);

}  // namespace
