#include "tests/architecture/rules.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

// The checks themselves, on snippets that break each rule and on ones that only look as if.
namespace drapewright::architecture {
namespace {

using testing::IsEmpty;

std::string first_breach(const std::string& file, std::string_view text) {
  const auto breaches = check_code(file, text);
  return breaches.empty() ? "" : breaches.front().what;
}

TEST(Rules, KnowWhoMayIncludeWhom) {
  EXPECT_EQ(first_breach("core/geometry/a.cpp", "#include \"core/wound/case.h\"\n"),
            "geometry may not include wound");
  EXPECT_EQ(first_breach("core/practice/a.h", "#include \"core/geometry/shape.h\"\n"),
            "practice may not include geometry");
  EXPECT_EQ(first_breach("core/dressing/a.cpp", "  # include \"core/casefile/case_json.h\" // x\n"),
            "dressing may not include casefile");
  EXPECT_EQ(first_breach("core/report/a.cpp", "#include \"core/casefile/case_json.h\""),
            "report may not include casefile");
  EXPECT_EQ(first_breach("core/base/a.cpp", "#include \"app/batch/plan.h\""),
            "base may not include app/batch");
  EXPECT_EQ(first_breach("app/printing/a.cpp", "#include \"core/dressing/plan.h\""),
            "app/printing may not include dressing");
  EXPECT_EQ(first_breach("app/batch/a.cpp", "#include \"app/desktop/window.h\""),
            "app/batch may not include app/desktop");
  EXPECT_EQ(first_breach("core/wound/a.cpp", "#include \"case.h\""),
            "\"case.h\" does not name its room");
  EXPECT_EQ(first_breach("core/attic/a.cpp", ""),
            "a part that the table of includes does not know");
}

TEST(Rules, LetPassWhatTheTableAllows) {
  EXPECT_EQ(first_breach("core/wound/a.h", "#include \"core/supplies/stock_item.h\""), "");
  EXPECT_EQ(first_breach("core/geometry/a.h", "#include \"core/base/tolerances.h\""), "");
  EXPECT_EQ(first_breach("core/wound/a.cpp", "// #include \"core/report/drawing.h\""), "");
  EXPECT_EQ(first_breach("app/desktop/a.cpp", "#include \"app/printing/painter.h\""), "");
  EXPECT_EQ(first_breach("app/desktop/a.cpp", "#include \"window.moc\""), "");
  EXPECT_EQ(first_breach("tests/unit/base/a.cpp", "#include \"app/desktop/window.h\""), "");
}

TEST(Rules, KeepQtOutOfCoreOnly) {
  EXPECT_EQ(first_breach("core/report/a.cpp", "#include <QString>"), "Qt in core");
  EXPECT_EQ(first_breach("core/report/a.cpp", "#include <QtGui/QPainter>"), "Qt in core");
  EXPECT_EQ(first_breach("app/printing/a.cpp", "#include <QString>"), "");
}

TEST(Rules, LeaveBufferingToTheOffset) {
  EXPECT_NE(first_breach("core/dressing/a.cpp", "boost::geometry::buffer(a, b);"), "");
  EXPECT_NE(first_breach("core/geometry/overlay.cpp", "bg::buffer (a, b);"), "");
  EXPECT_NE(first_breach("core/geometry/overlay.cpp", "unverified_buffer(a, b);"), "");
  EXPECT_EQ(first_breach("core/geometry/offset.cpp", "unverified_buffer(a, b);"), "");
  EXPECT_EQ(first_breach("core/geometry/buffer.cpp", "bg::buffer(a, b);"), "");
  EXPECT_EQ(first_breach("core/dressing/a.cpp", "/* buffer(a) */ text_buffer(b); f(\"buffer(\");"),
            "");
}

TEST(Rules, HoldCoreToWhatItIsGiven) {
  for (const char* bad :
       {"auto now = std::chrono::system_clock::now();", "std::time(nullptr);", "getenv(\"HOME\");",
        "std::random_device seed;", "srand(1);", "std::setlocale(LC_ALL, \"\");",
        "std::stod(text);", "std::snprintf(out, 9, \"%f\", x);", "out.imbue(std::locale());"}) {
    EXPECT_NE(first_breach("core/base/a.cpp", bad), "") << bad;
  }
  for (const char* good :
       {"std::mt19937 jitter(seed);", "int lifetime(int);", "clock_hour(c, p, 90);",
        "out.imbue(std::locale::classic());", "run_time(3);"}) {
    EXPECT_EQ(first_breach("core/base/a.cpp", good), "") << good;
  }
}

TEST(Rules, SayOnWhichLine) {
  const auto breaches = check_code("core/base/a.cpp", "/* two\nlines */\n\nsrand(1);\n");
  ASSERT_EQ(breaches.size(), 1u);
  EXPECT_EQ(breaches[0].line, 4);
}

TEST(Rules, SeePastLiterals) {
  EXPECT_EQ(code_only("a('\"'); b(\"\\\"//\"); c(1'000); // d"), "a(''); b(\"\"); c(1'000); ");
}

TEST(Rules, HoldLinksToTheSameTable) {
  EXPECT_EQ(check_links("x", "drapewright_room(geometry SOURCES a.cpp USES base wound)").size(),
            1u);
  EXPECT_THAT(check_links("x", "drapewright_room(wound USES base\n  geometry LIBRARIES Qt)"),
              IsEmpty());
}

TEST(Rules, FindWordsThatHaveNoPlaceInAPublishedTree) {
  const std::string home = std::string("/ho") + "me/someone/x",
                    tracker = std::string("Iss") + "ue ";
  EXPECT_EQ(check_words("a.md", "see " + home).size(), 1u);
  EXPECT_EQ(check_words("a.md", "ok\n(see " + tracker + "12)").front().line, 2);
  EXPECT_EQ(check_words("a.sh", std::string("deb.deb") + "ian.org").size(), 1u);
  EXPECT_THAT(check_words("a.md", "at issue is the homework/rest, 2 issues; network/work/x"),
              IsEmpty());
}

}  // namespace
}  // namespace drapewright::architecture
