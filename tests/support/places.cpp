#include "tests/support/places.h"

namespace drapewright::support {

std::string project_folder() { return DRAPEWRIGHT_SOURCE_DIR; }
std::string build_folder() { return DRAPEWRIGHT_BUILD_DIR; }

}  // namespace drapewright::support
