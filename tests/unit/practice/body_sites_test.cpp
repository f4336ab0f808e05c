#include "core/practice/body_sites.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <stdexcept>
#include <string>

namespace drapewright::practice {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::MatchesRegex;

std::vector<std::string> named(std::string_view text) {
  std::vector<std::string> ids;
  for (const BodySite* site : body_sites_named(text)) ids.emplace_back(site->id);
  return ids;
}

TEST(BodySites, HaveIdsThatAFileCanKeep) {
  std::set<std::string_view> seen;
  for (const BodySite& row : body_sites()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_THAT(std::string(row.id), MatchesRegex("[a-z0-9]+(-[a-z0-9]+)*"));
    EXPECT_TRUE(seen.insert(row.id).second);
    EXPECT_EQ(find_body_site(row.id), &row);
    EXPECT_FALSE(row.name.empty());
  }
  EXPECT_EQ(find_body_site("of-a-newer-program"), nullptr);
}

TEST(BodySites, HaveCautionsThatAreInTheTableAndNoneThatIsUnused) {
  std::set<std::string_view> used;
  for (const BodySite& row : body_sites()) {
    EXPECT_FALSE(row.cautions.empty()) << row.id;
    for (const std::string_view id : row.cautions) EXPECT_EQ(site_caution(id).id, id);
    used.insert(row.cautions.begin(), row.cautions.end());
  }
  for (const SiteCaution& row : site_cautions()) EXPECT_TRUE(used.contains(row.id)) << row.id;
  EXPECT_THROW(site_caution("no-such-caution"), std::logic_error);
}

TEST(BodySites, AreFoundByEachOfTheirNames) {
  std::set<std::string_view> seen;
  for (const BodySite& row : body_sites()) {
    for (const std::string_view word : row.words) {
      EXPECT_THAT(named(word), ElementsAre(std::string(row.id))) << word;
      EXPECT_TRUE(seen.insert(word).second) << "two sites are called " << word;
    }
  }
}

TEST(BodySites, AreReadFromFreeWords) {
  EXPECT_THAT(named("left heel"), ElementsAre("heel"));
  EXPECT_THAT(named("Sacrum."), ElementsAre("sacrum"));
  EXPECT_THAT(named("back of the right hand"), ElementsAre("hand"));
  EXPECT_THAT(named("LOWER LEG (left), outer side"), ElementsAre("lower-leg"));
  EXPECT_THAT(named("sole of left foot"), ElementsAre("foot-sole"));
  EXPECT_THAT(named("back of the thigh"), ElementsAre("thigh"));
}

TEST(BodySites, AreReadFromGermanWordsToo) {
  EXPECT_THAT(named("linke Ferse"), ElementsAre("heel"));
  EXPECT_THAT(named("Unterschenkel rechts, außen"), ElementsAre("lower-leg"));
  EXPECT_THAT(named("Gesäß"), ElementsAre("buttock"));
}

TEST(BodySites, AreNotReadFromPartsOfWords) {
  EXPECT_THAT(named("wheelchair"), IsEmpty());
  EXPECT_THAT(named("background"), IsEmpty());
  EXPECT_THAT(named("not said"), IsEmpty());
  EXPECT_THAT(named(""), IsEmpty());
  EXPECT_THAT(named("left"), IsEmpty());
}

TEST(BodySites, TheLongestNameComesFirstAndTheOthersAreTold) {
  EXPECT_THAT(named("ankle above the heel"), ElementsAre("ankle", "heel"));
  EXPECT_THAT(named("forearm, not upper arm"), ElementsAre("upper-arm", "forearm"));
}

// Clock method, as a trade journal describes it: on the foot heel 12, toes 6; elsewhere 12 is to
// the head.
TEST(BodySites, TurnTheClockOnTheFootAlone) {
  std::set<std::string_view> turned;
  for (const BodySite& row : body_sites()) {
    if (row.twelve == Twelve::heel) turned.insert(row.id);
  }
  EXPECT_THAT(turned,
              testing::UnorderedElementsAre("heel", "foot", "foot-sole", "foot-top", "toe"));
}

TEST(SiteCautions, SayWhatToDoAndWhatTheyRestOn) {
  std::set<std::string_view> seen;
  for (const SiteCaution& row : site_cautions()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_TRUE(seen.insert(row.id).second);
    EXPECT_THAT(std::string(row.id), MatchesRegex("[a-z0-9]+(-[a-z0-9]+)*"));
    EXPECT_TRUE(row.text.ends_with('.'));
    EXPECT_NE(row.source.standing, Standing::own_setting);
    EXPECT_TRUE(row.source.standing != Standing::published || !row.source.citation.empty());
  }
}

}  // namespace
}  // namespace drapewright::practice
