#pragma once

#include <string>
#include <string_view>

namespace drapewright::report {

/// Text as XML 1.0 character data: markup escaped, characters that XML forbids left out, bytes
/// that are not UTF-8 replaced by U+FFFD.
std::string xml_text(std::string_view text);

}  // namespace drapewright::report
