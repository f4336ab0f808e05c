#include "core/practice/rules.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>
#include <string>

namespace drapewright::practice {
namespace {

TEST(Rules, HaveUniqueIdsAndSayWhatTheyRestOn) {
  std::set<std::string_view> ids;
  for (const Rule& row : rules()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_TRUE(ids.insert(row.id).second);
    EXPECT_EQ(&rule(row.id), &row);
    EXPECT_TRUE(row.text.ends_with('.'));
    const bool is_published = row.source.standing == Standing::published ||
                              row.source.standing == Standing::published_from_memory;
    EXPECT_TRUE(!row.source.citation.empty() || !is_published);
  }
}

TEST(Rules, AnUnknownIdIsABug) { EXPECT_THROW(rule("no-such-rule"), std::logic_error); }

}  // namespace
}  // namespace drapewright::practice
