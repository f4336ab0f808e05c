#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/batch/program.h"

namespace drapewright::batch_tests {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

TEST(TemplatesCommand, WritesTheSamePagesEveryTime) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  for (const char* file : {"a.pdf", "b.pdf"}) {
    const Outcome run =
        folder.run({"templates", "leg.json", "--pdf", file, "--today", "2026-03-04"});
    EXPECT_EQ(run.status, 0) << run.err;
    EXPECT_EQ(run.err, "");
  }
  EXPECT_THAT(folder.get("a.pdf"), StartsWith("%PDF-1.4"));
  EXPECT_EQ(folder.get("a.pdf"), folder.get("b.pdf"));
}

TEST(TemplatesCommand, WritesAnSvgForEachPage) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome run =
      folder.run({"templates", "leg.json", "--svg", "leg.svg", "--paper", "letter"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_FALSE(folder.has("leg.svg"));
  EXPECT_THAT(folder.get("leg-1.svg"), HasSubstr("width=\"215.9mm\""));
  EXPECT_TRUE(folder.has("leg-2.svg"));
  const Outcome one = folder.run({"templates", "leg.json", "--svg", "-", "--parts", "filler,port"});
  EXPECT_EQ(one.status, 0) << one.err;
  EXPECT_THAT(one.out, HasSubstr("page 1 of 1"));
  EXPECT_EQ(folder.run({"templates", "leg.json", "--svg", "-"}).status, 2) << "several pages";
}

TEST(TemplatesCommand, RefusesWhatItCannotPrint) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const auto refused = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"templates", "leg.json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Outcome run = folder.run(arguments);
    EXPECT_EQ(run.status, 2);
    EXPECT_EQ(lines_of(run.err).size(), 1u) << run.err;
    return run.err;
  };
  EXPECT_THAT(refused({}), HasSubstr("--pdf"));
  EXPECT_THAT(refused({"--pdf", "x.pdf", "--bars", "94.07,94.07"}), HasSubstr("bars"));
  EXPECT_THAT(refused({"--pdf", "x.pdf", "--paper", "a5"}), HasSubstr("paper"));
  EXPECT_THAT(refused({"--pdf", "x.pdf", "--today", "2026-02-30"}), HasSubstr("2026-02-30"));
  EXPECT_THAT(refused({"--pdf", "leg.json"}), HasSubstr("overwritten"));
  EXPECT_FALSE(folder.has("x.pdf"));
}

}  // namespace
}  // namespace drapewright::batch_tests
