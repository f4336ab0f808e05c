#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "core/casefile/spelling.h"
#include "tests/support/example_case.h"

namespace drapewright::casefile {
namespace {

using support::example_case;

TEST(EditDistance, CountsInsertedDroppedExchangedAndSwappedLetters) {
  EXPECT_EQ(edit_distance("", "abc"), 3);
  EXPECT_EQ(edit_distance("depth", "depth"), 0);
  EXPECT_EQ(edit_distance("dept", "depth"), 1);
  EXPECT_EQ(edit_distance("detph", "depth"), 1);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3);  // the textbook pair
}

TEST(LooksLike, TakesSlipsOfThePen) {
  for (const auto slip : {"dept_cm", "deph_cm", "depthcm", "Depth_cm", "depthCm", "depth-cm",
                          "depth_mm", "depth", "depth_in", "depth_inches", "detph_cm"}) {
    EXPECT_TRUE(looks_like(slip, "depth_cm")) << slip;
  }
}

TEST(LooksLike, LeavesOtherNamesAlone) {
  for (const auto name : {"x_depth_cm", "depth_note", "photo", "ward", "width_at_depth_cm", "z"}) {
    EXPECT_FALSE(looks_like(name, "depth_cm")) << name;
  }
  EXPECT_FALSE(looks_like("ward", "label"));
  EXPECT_FALSE(looks_like("colour", "outline_cm"));
}

std::string with(const std::string& member) {
  return example_case(R"("outline_cm": [[0, 0], [8, 0], [8, 5]], )" + member);
}

TEST(UnknownMember, LikeAKnownOneThatIsMissingIsRefused) {
  EXPECT_THROW(case_from_json(with("\"dept_cm\": 2")), InputError);
  EXPECT_THROW(case_from_json(with("\"depth\": 2")), InputError);
  EXPECT_THROW(case_from_json(with("\"tunnel\": []")), InputError);
  EXPECT_THROW(case_from_json(with("\"underminig\": []")), InputError);
}

TEST(UnknownMember, LikeAKnownOneThatIsThereIsKept) {
  const auto value = case_from_json(with("\"depth_cm\": 2, \"depth_mm\": 20"));
  EXPECT_EQ(value.assessments[0].wounds[0].depth_cm, 2);
  EXPECT_EQ(value.assessments[0].wounds[0].extra.at("depth_mm"), "20");
}

TEST(UnknownMember, UnlikeAnyKnownOneIsKept) {
  const auto value = case_from_json(with("\"x_photo\": \"a.jpg\", \"tissue\": \"red\""));
  EXPECT_EQ(value.assessments[0].wounds[0].extra.size(), 2u);
}

TEST(UnknownMember, ThatBelongsElsewhereIsRefused) {
  const std::string ring = R"("outline_cm": [[0, 0], [8, 0], [8, 5]])";
  for (const std::string name : {"border_cm", "bridge_wanted", "port_places_cm"}) {
    try {
      case_from_json(example_case(ring, ", \"" + name + "\": 4"));
      FAIL() << name;
    } catch (const InputError& fault) {
      EXPECT_EQ(fault.place().pointer, "/" + name);
      EXPECT_THAT(fault.what(), testing::HasSubstr("inside \"dressing\""));
    }
  }
}

}  // namespace
}  // namespace drapewright::casefile
