// Pages of every demo case, on both papers.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <map>

#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "core/practice/events.h"
#include "core/report/page_kinds.h"
#include "core/report/plan_page.h"
#include "core/report/svg.h"
#include "core/report/teaching_pages.h"
#include "core/report/template_pages.h"
#include "core/report/tiling.h"
#include "core/report/what_to_do.h"
#include "tests/support/places.h"
#include "tests/unit/report/drawing_checks.h"

namespace drapewright::report {
namespace {

using geometry::Box;
using geometry::Point;
using testing::HasSubstr;
namespace fs = std::filesystem;

struct Planned {
  wound::Case value;
  dressing::Plan plan;
};

const std::map<std::string, Planned>& demo_cases() {
  static const auto all = [] {
    std::map<std::string, Planned> result;
    for (const auto& entry : fs::directory_iterator(support::project_folder() + "/demo_cases")) {
      if (entry.path().extension() != ".json") continue;
      Planned planned{casefile::read_case(entry.path()), {}};
      planned.plan = dressing::plan_dressing(planned.value);
      result.emplace(entry.path().stem().string(), std::move(planned));
    }
    return result;
  }();
  return all;
}

void expect_sound(const Document& document, Paper paper, const std::string& name) {
  ASSERT_FALSE(document.pages.empty()) << name;
  const DrawingSize size = size_of(paper);
  int number = 0;
  for (const Drawing& page : document.pages) {
    const std::string at = name + " page " + std::to_string(++number);
    EXPECT_DOUBLE_EQ(std::min(page.width_mm, page.height_mm), size.width_mm) << at;
    EXPECT_DOUBLE_EQ(std::max(page.width_mm, page.height_mm), size.height_mm) << at;
    expect_readable(page, at);
    for (const DrawnLayer& layer : page.layers) {
      for (const Label& label : layer.labels) {
        EXPECT_GE(label.size_mm, least_text_mm) << at << ": " << label.text;
        EXPECT_EQ(label.text.find("\u2026"), std::string::npos) << at << " cuts: " << label.text;
        const Box box = label_box(label);
        EXPECT_GE(box.low.x, page_margin_mm - 1e-6) << at << ": " << label.text;
        EXPECT_LE(box.high.x, page.width_mm - page_margin_mm + 1e-6) << at << ": " << label.text;
      }
    }
    EXPECT_TRUE(has_text(
        page, "page " + std::to_string(number) + " of " + std::to_string(document.pages.size())))
        << at;
  }
}

constexpr Paper papers[] = {Paper::a4, Paper::letter};

std::string named(const std::string& name, Paper paper) {
  return name + " on " + std::string(name_of(paper));
}

TEST(TemplatePages, NoTextOverlapsIsCutOrTooSmall) {
  for (const auto& [name, planned] : demo_cases()) {
    for (const Paper paper : papers) {
      const TemplatePageOptions options{.page = {paper, "2031-03-02"}, .mirror_film = true};
      expect_sound(template_pages(planned.value, planned.plan, options), paper, named(name, paper));
    }
  }
}

Document plan_sheet(const Planned& planned, Paper paper) {
  const dressing::SectionCutter cutter(planned.value, planned.plan);
  return plan_pages(planned.value, planned.plan, cutter.cut(cutter.usual_line()),
                    {paper, "2031-03-02"});
}

TEST(PlanPages, NoTextOverlapsIsCutOrTooSmall) {
  for (const auto& [name, planned] : demo_cases()) {
    for (const Paper paper : papers) {
      const Document document = plan_sheet(planned, paper);
      expect_sound(document, paper, named(name, paper));
      EXPECT_LE(document.pages.size(), 2u) << named(name, paper);
    }
  }
}

TEST(TeachingPages, NoTextOverlapsIsCutOrTooSmall) {
  for (const auto& [name, planned] : demo_cases()) {
    for (const Paper paper : papers) {
      for (const bool solved : {false, true}) {
        const Document document =
            teaching_pages(planned.value, planned.plan, solved, {paper, "2031-03-02"});
        expect_sound(document, paper, named(name, paper));
        EXPECT_EQ(document.pages.size(), 1u);
      }
    }
  }
}

TEST(RecordPages, NoTextOverlapsIsCutOrTooSmall) {
  for (const auto& [name, planned] : demo_cases()) {
    auto dressed = planned.value;
    dressed.applications = {{.date = "2031-02-26", .pieces_placed = 3, .pieces_removed = 2},
                            {.date = "2031-03-01", .pieces_placed = 3, .note = "edge moist"}};
    for (const Paper paper : papers) {
      for (const auto& value : {planned.value, dressed}) {
        for (const PageKind kind : {PageKind::record, PageKind::labels}) {
          const Document document = pages_of(kind, value, planned.plan, {paper, "2031-03-02"});
          expect_sound(document, paper, named(name, paper));
          EXPECT_EQ(document.pages.size(), 1u) << name;
        }
      }
    }
  }
}

TEST(RecordPages, NameCountsAndDays) {
  const Planned& planned = demo_cases().begin()->second;
  auto value = planned.value;
  value.dressing.change_every_h = 72;
  value.applications = {{.date = "2031-02-26", .pieces_placed = 3, .pieces_removed = 2},
                        {.date = "2031-03-01", .pieces_placed = 5}};
  const auto record = pages_of(PageKind::record, value, planned.plan, {Paper::a4, "2031-03-05"});
  EXPECT_TRUE(has_text(record.pages.front(), "DIFFERS: find it before the next dressing"));
  EXPECT_TRUE(has_text(record.pages.front(), "2031-03-04 (1 day overdue)"));
  const auto labels = pages_of(PageKind::labels, value, planned.plan, {Paper::a4, "2031-03-05"});
  EXPECT_TRUE(has_text(labels.pages.front(), "2031-03-04"));
  EXPECT_TRUE(has_text(labels.pages.front(), "5"));
}

TEST(WhatToDo, IsOnePageOfSteps) {
  for (const Paper paper : papers) {
    const Document document = what_to_do_page("leg", "2031-03-01", {paper, "2031-03-02"});
    expect_sound(document, paper, named("what to do", paper));
    EXPECT_EQ(document.pages.size(), 1u);
  }
  for (const practice::Event& event : practice::events()) {
    EXPECT_GE(event.steps.size(), 3u) << event.title;
    EXPECT_FALSE(practice::describe(event.source).empty());
  }
}

TEST(TemplatePages, LinesAreFineAndNothingButTheKeyIsFilled) {
  for (const auto& [name, planned] : demo_cases()) {
    for (const Drawing& page : template_pages(planned.value, planned.plan).pages) {
      for (const DrawnLayer& layer : page.layers) {
        EXPECT_TRUE(layer.strokes.empty() || style_of(layer.kind).line_mm <= 0.2) << name;
        EXPECT_TRUE(layer.areas.empty() || layer.kind == LayerKind::tile_here) << name;
      }
    }
  }
}

std::vector<std::string> texts_of(const Document& document) {
  std::vector<std::string> all;
  for (const Drawing& page : document.pages) {
    for (const DrawnLayer& layer : page.layers) {
      for (const Label& label : layer.labels) all.push_back(label.text);
    }
  }
  return all;
}

// Every piece that is counted has its template, by number.
TEST(TemplatePages, EveryPieceIsNumberedAmongAll) {
  for (const auto& [name, planned] : demo_cases()) {
    std::string words;
    for (const std::string& text :
         texts_of(template_pages(planned.value, planned.plan, {.parts = {TemplatePart::filler}}))) {
      words += text + " ";
    }
    const int pieces = planned.plan.fill.piece_count;
    for (int k = 1; k <= pieces; ++k) {
      EXPECT_THAT(words,
                  HasSubstr("Piece " + std::to_string(k) + " of " + std::to_string(pieces) + ":"))
          << name;
    }
  }
}

TEST(TemplatePages, SayWhenTheyAreMirroredOrCorrected) {
  const Planned& planned = demo_cases().at("plain-heel");
  const auto plain = texts_of(template_pages(planned.value, planned.plan));
  EXPECT_THAT(plain, testing::Not(testing::Contains(HasSubstr("MIRRORED"))));
  EXPECT_THAT(plain, testing::Not(testing::Contains(HasSubstr("Corrected"))));
  const TemplatePageOptions options{.parts = {TemplatePart::film, TemplatePart::filler},
                                    .mirror_film = true,
                                    .printer = {99.5, 100.25}};
  const Document document = template_pages(planned.value, planned.plan, options);
  const auto texts = texts_of(document);
  EXPECT_THAT(texts, testing::Contains("Cutting templates, life size 1:1, MIRRORED"));
  EXPECT_THAT(texts, testing::Contains(HasSubstr("99.5 mm across")));
  EXPECT_TRUE(has_text(document.pages.back(), "Cutting templates, life size 1:1"))
      << "filler is never turned over";
}

TEST(TemplatePages, RefuseBarsOfAPageThatWasFitted) {
  const Planned& planned = demo_cases().at("plain-heel");
  // A4 fitted to letter prints at 94.07 %.
  EXPECT_THROW(template_pages(planned.value, planned.plan, {.printer = {94.07, 94.07}}),
               std::invalid_argument);
  EXPECT_THROW(template_pages(planned.value, planned.plan, {.printer = {100, std::nan("")}}),
               std::invalid_argument);
}

TEST(TemplatePages, SayWhereThereIsNothingToCut) {
  const Planned& planned = demo_cases().at("plain-heel");
  dressing::Plan nothing = planned.plan;
  nothing.cut_layout.clear();
  const Document document =
      template_pages(planned.value, nothing, {.parts = {TemplatePart::sheets}});
  ASSERT_EQ(document.pages.size(), 1u);
  EXPECT_THAT(texts_of(document), testing::Contains(HasSubstr("nothing to cut")));
}

std::string all_words(const Document& document) {
  std::string words;
  for (const std::string& text : texts_of(document)) words += text + " ";
  return words;
}

// A finding is wrapped: its first words and its severity are looked for.
TEST(PlanPages, SayWhatThePlanSays) {
  for (const auto& [name, planned] : demo_cases()) {
    const std::string words = all_words(plan_sheet(planned, Paper::a4));
    for (const auto& finding : planned.plan.findings) {
      const std::string start = finding.text.substr(0, finding.text.find(' ', 12));
      EXPECT_THAT(words, HasSubstr(start)) << name;
    }
    for (const auto& item : planned.plan.consumables) {
      EXPECT_THAT(words, HasSubstr(item.item.substr(0, 12))) << name;
    }
    EXPECT_THAT(words, HasSubstr("Filler: " + std::to_string(planned.plan.fill.piece_count)));
    for (const char* always : {"Scale 1:", "Planned by", "instructions decide", "Cautions"}) {
      EXPECT_THAT(words, HasSubstr(always)) << name;
    }
  }
}

// A stop stands before everything else.
TEST(PlanPages, StopsStandInAFrameAtTheTop) {
  const Document document = plan_sheet(demo_cases().at("pocket-and-tunnel"), Paper::a4);
  double stop = 1e9, drawing = 1e9;
  for (const DrawnLayer& layer : document.pages[0].layers) {
    for (const Label& label : layer.labels) {
      if (label.text.starts_with("STOP. ")) stop = std::min(stop, label.at.y);
      if (label.text == "wound A") drawing = label.at.y;
    }
  }
  EXPECT_LT(stop, 40);
  EXPECT_LT(stop, drawing);
}

TEST(TeachingPages, AnswersStandInTheSolutionAlone) {
  const Planned& planned = demo_cases().at("plain-heel");
  const auto sheet = teaching_pages(planned.value, planned.plan, false);
  const auto solution = teaching_pages(planned.value, planned.plan, true);
  EXPECT_TRUE(has_text(solution.pages[0], "5.4 x 3.7 cm"));
  EXPECT_FALSE(has_text(sheet.pages[0], "5.4 x 3.7 cm"));
  EXPECT_EQ(find_layer(sheet.pages[0], LayerKind::film), nullptr);
  EXPECT_EQ(find_layer(sheet.pages[0], LayerKind::filler), nullptr);
  EXPECT_NE(find_layer(sheet.pages[0], LayerKind::wound), nullptr);
  EXPECT_NE(find_layer(solution.pages[0], LayerKind::film), nullptr);
  EXPECT_NE(find_layer(solution.pages[0], LayerKind::filler), nullptr);
}

TEST(Pages, AreTheSameForTheSameInput) {
  const Planned& planned = demo_cases().at("two-wounds-one-film");
  const Document once = plan_sheet(planned, Paper::letter);
  const Document again = plan_sheet(planned, Paper::letter);
  ASSERT_EQ(once.pages.size(), again.pages.size());
  for (std::size_t i = 0; i < once.pages.size(); ++i) {
    EXPECT_EQ(to_svg(once.pages[i]), to_svg(again.pages[i]));
  }
}

double length_of(const std::vector<Point>& chain) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) sum += distance(chain[i], chain[i + 1]);
  return sum;
}

TEST(Clipping, KeepsWhatLiesInside) {
  const Box box{{0, 0}, {10, 10}};
  // Through, along a side, in and out twice, outside.
  const auto through = clipped({{-5, 5}, {15, 5}}, box);
  ASSERT_EQ(through.size(), 1u);
  EXPECT_EQ(through[0], (std::vector<Point>{{0, 5}, {10, 5}}));
  const auto twice = clipped({{2, 2}, {2, 12}, {4, 12}, {4, 2}}, box);
  ASSERT_EQ(twice.size(), 2u);
  EXPECT_DOUBLE_EQ(length_of(twice[0]) + length_of(twice[1]), 16);
  EXPECT_EQ(clipped({{1, 1}, {2, 2}, {3, 1}}, box).size(), 1u) << "what is inside stays whole";
  EXPECT_TRUE(clipped({{-5, 5}, {5, 25}}, box).empty());
  EXPECT_TRUE(clipped({{3, 3}}, box).empty());
}

TEST(Tiling, CoversTheWholeAndLeavesOutEmptyWindows) {
  const std::vector<Point> ring{{0, 0}, {500, 0}, {500, 500}, {0, 500}, {0, 0}};
  const Tiling tiling = tile({ring}, {180, 180});
  EXPECT_EQ(tiling.columns, 3);
  EXPECT_EQ(tiling.tiles.size(), 8u) << "the middle one shows nothing";
  double shown = 0;
  for (const Tile& one : tiling.tiles) {
    EXPECT_NEAR(one.window.width(), 180, 1e-9);
    for (const auto& part : clipped(ring, one.window)) shown += length_of(part);
  }
  // Each of the eight overlaps on the ring is shown twice.
  EXPECT_NEAR(shown, 2000 + 8 * tile_overlap_mm, 1e-6);
  EXPECT_EQ(tiling.marks.size(), 16u);
  for (const TileMark& mark : tiling.marks) {
    for (const int index : {mark.first, mark.second}) {
      const Box& window = tiling.tiles[static_cast<std::size_t>(index)].window;
      EXPECT_GT(mark.at.x, window.low.x + 5);
      EXPECT_LT(mark.at.x, window.high.x - 5);
      EXPECT_GT(mark.at.y, window.low.y + 5);
      EXPECT_LT(mark.at.y, window.high.y - 5);
    }
  }
}

TEST(TextSize, WrapsAtBlanksAndBreaksWhatIsTooLong) {
  const auto lines = wrapped("one two three four", text_width_mm("one two", 3) + 0.1, 3);
  EXPECT_EQ(lines, (std::vector<std::string>{"one two", "three", "four"}));
  EXPECT_EQ(wrapped("a\nb", 50, 3), (std::vector<std::string>{"a", "b"}));
  std::string joined;
  for (const std::string& line : wrapped("Wundverb\u00e4ndewagen", 12, 3)) {
    EXPECT_LE(text_width_mm(line, 3), 12);
    joined += line;
  }
  EXPECT_EQ(joined, "Wundverb\u00e4ndewagen");
}

}  // namespace
}  // namespace drapewright::report
