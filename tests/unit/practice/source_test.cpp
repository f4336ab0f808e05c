#include "core/practice/source.h"

#include <gtest/gtest.h>

namespace drapewright::practice {
namespace {

TEST(Source, SaysStandingAndCitationInOneLine) {
  EXPECT_EQ(describe({Standing::published, "FDA 2009, table 1"}), "published: FDA 2009, table 1");
  EXPECT_EQ(describe({Standing::published_from_memory, "Wounds 1990;2:95"}),
            "published (from memory): Wounds 1990;2:95");
}

TEST(Source, AdmitsWhenThereIsNone) {
  EXPECT_EQ(describe({Standing::common_practice, ""}), "common practice, no source");
  EXPECT_EQ(describe({Standing::own_setting, ""}), "this program's own setting");
}

}  // namespace
}  // namespace drapewright::practice
