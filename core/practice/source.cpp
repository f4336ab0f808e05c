#include "core/practice/source.h"

#include <stdexcept>

namespace drapewright::practice {

std::string_view name_of(Standing standing) {
  switch (standing) {
    case Standing::published:
      return "published";
    case Standing::published_from_memory:
      return "published (from memory)";
    case Standing::common_practice:
      return "common practice";
    case Standing::calculated:
      return "calculated";
    case Standing::own_setting:
      return "this program's own setting";
  }
  throw std::logic_error("a standing without a name");
}

std::string describe(const Source& source) {
  const std::string standing(name_of(source.standing));
  if (!source.citation.empty()) return standing + ": " + std::string(source.citation);
  const bool is_claim = source.standing != Standing::own_setting;
  return is_claim ? standing + ", no source" : standing;
}

}  // namespace drapewright::practice
