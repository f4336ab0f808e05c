#pragma once

#include <map>
#include <string>

namespace drapewright {

/// Members of a case file that this version does not know: name -> value as JSON text. They
/// travel with the part they were read in and are written back unchanged, so that a newer
/// program's data survives an older one's save.
using ExtraMembers = std::map<std::string, std::string>;

}  // namespace drapewright
