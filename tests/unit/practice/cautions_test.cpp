#include "core/practice/cautions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace drapewright::practice {
namespace {

using testing::HasSubstr;
using testing::MatchesRegex;

TEST(Cautions, HaveIdsThatAFileCanKeep) {
  for (const Caution& row : cautions()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_THAT(std::string(row.id), MatchesRegex("[a-z0-9]+(-[a-z0-9]+)*"));
    EXPECT_EQ(find_caution(row.id), &*std::ranges::find(cautions(), row.id, &Caution::id));
  }
}

TEST(Cautions, SayWhatToDoAndWhoDecides) {
  for (const Caution& row : cautions()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_FALSE(row.text.empty());
    EXPECT_THAT(std::string(row.advice), HasSubstr("prescriber"));
    EXPECT_TRUE(row.advice.ends_with('.'));
  }
}

TEST(Cautions, ArePublished) {
  for (const Caution& row : cautions()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_EQ(row.source.standing, Standing::published);
    EXPECT_FALSE(row.source.citation.empty());
  }
}

TEST(Cautions, HaveUniqueIdsAndTexts) {
  std::set<std::string_view> seen;
  for (const Caution& row : cautions()) {
    EXPECT_TRUE(seen.insert(row.id).second) << row.id;
    EXPECT_TRUE(seen.insert(row.text).second) << row.text;
  }
}

// US FDA 2009, table 1: necrotic tissue with eschar; untreated osteomyelitis; non-enteric and
// unexplored fistulas; malignancy in the wound; exposed vasculature, nerves, anastomotic site,
// organs. All of them stop, and nothing else does.
TEST(Cautions, StopAtWhatTheNoticeCallsContraindications) {
  std::set<std::string_view> stops;
  for (const Caution& row : cautions()) {
    if (row.kind == CautionKind::contraindication) stops.insert(row.id);
  }
  EXPECT_THAT(stops,
              testing::UnorderedElementsAre(
                  "necrotic-tissue-with-eschar", "untreated-osteomyelitis",
                  "non-enteric-or-unexplored-fistula", "malignancy-in-wound", "exposed-vessels",
                  "exposed-nerves", "exposed-anastomosis", "exposed-organs"));
}

TEST(Cautions, ListContraindicationsFirst) {
  EXPECT_TRUE(std::ranges::is_sorted(cautions(), {}, &Caution::kind));
}

TEST(Cautions, AnUnknownIdIsNoFault) { EXPECT_EQ(find_caution("of-a-newer-program"), nullptr); }

}  // namespace
}  // namespace drapewright::practice
