#pragma once

#include <string>
#include <string_view>

namespace drapewright::practice {

/// What a fact of the trade rests on. Shown beside every limit and caution.
enum class Standing {
  published,              ///< seen in an abstract, a public page or a quotation of it
  published_from_memory,  ///< published, but recalled and still to be checked
  common_practice,        ///< what is done; no source
  calculated,             ///< follows from a formula
  own_setting,            ///< this project's own choice
};

struct Source {
  Standing standing = Standing::own_setting;
  std::string_view citation;  ///< empty where the standing says it all
};

/// "published", "published (from memory)", "common practice", ...: said where it is shown.
std::string_view name_of(Standing standing);
/// For people: standing and citation in one line: "published: FDA 2009, table 1", "common practice,
/// no source".
std::string describe(const Source& source);

}  // namespace drapewright::practice
