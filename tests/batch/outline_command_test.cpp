#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/batch/program.h"

namespace drapewright::batch_tests {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

constexpr const char* square_mm = "POLYGON ((0 0, 80 0, 80 50, 0 50, 0 0))";

TEST(OutlineCommand, MakesACaseThatCanBePlanned) {
  const Folder folder;
  folder.put("leg.wkt", square_mm);
  const Outcome made = folder.run(
      {"outline", "leg.wkt", "--scale", "0.1", "--case", "leg.json", "--today", "2026-03-02"});
  EXPECT_EQ(made.status, 0) << made.err;
  const Outcome checked = folder.run({"check", "leg.json"});
  EXPECT_THAT(checked.out,
              HasSubstr("\"leg\", 1 assessment; the last, of 2026-03-02, has 1 wound"));
  const Outcome planned = folder.run({"plan", "leg.json", "--json"});
  EXPECT_EQ(planned.status, 0) << planned.err;
  EXPECT_THAT(planned.out, HasSubstr("\"area_cm2\": 40"));
}

TEST(OutlineCommand, AsksForTheUnit) {
  const Outcome run = Folder().run({"outline", "-"}, square_mm);
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(run.out, IsEmpty());
  EXPECT_THAT(run.err, HasSubstr("does not say what its lengths are in"));
  EXPECT_THAT(run.err, HasSubstr("--scale 0.1 for mm"));
}

TEST(OutlineCommand, WritesACasesOutlinesInEveryFormatAndReadsThemBack) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  for (const std::string format : {"wkt", "geojson", "svg", "csv"}) {
    const Outcome out = folder.run({"outline", "leg.json", "--from-case", "--as", format});
    ASSERT_EQ(out.status, 0) << out.err;
    std::vector<std::string> back{"outline", "-", "--as", "wkt"};
    if (format == "wkt") back.insert(back.end(), {"--scale", "1"});
    EXPECT_EQ(folder.run(back, out.out).out,
              folder.run({"outline", "leg.json", "--from-case", "--as", "wkt"}).out)
        << format;
  }
}

TEST(OutlineCommand, RefusesAShapeThatIsNoWound) {
  const Outcome run = Folder().run({"outline", "-", "--scale", "1"}, "M 0 0 L 5 5 L 5 0 L 0 5 Z");
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(run.err, HasSubstr("crosses itself"));
  EXPECT_EQ(Folder().run({"outline", "-", "--scale", "0"}, square_mm).status, 2);
  EXPECT_EQ(Folder().run({"outline", "nowhere.svg", "--scale", "1"}).status, 2);
}

}  // namespace
}  // namespace drapewright::batch_tests
