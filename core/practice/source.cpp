#include "core/practice/source.h"

#include <stdexcept>

#include "core/base/say.h"

namespace drapewright::practice {

std::string_view name_of(Standing standing) {
  switch (standing) {
    case Standing::published:
      return term("published");
    case Standing::published_from_memory:
      return term("published (from memory)");
    case Standing::common_practice:
      return term("common practice");
    case Standing::calculated:
      return term("calculated");
    case Standing::own_setting:
      return term("this program's own setting");
  }
  throw std::logic_error("a standing without a name");
}

std::string describe(const Source& source) {
  const std::string standing = say(name_of(source.standing));
  if (!source.citation.empty()) return standing + ": " + say(source.citation);
  const bool is_claim = source.standing != Standing::own_setting;
  return is_claim ? say("{1}, no source", {standing}) : standing;
}

}  // namespace drapewright::practice
