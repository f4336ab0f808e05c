#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "core/casefile/exchange.h"
#include "core/geometry/measures.h"
#include "tests/support/example_case.h"
#include "tests/support/places.h"

namespace drapewright::casefile {
namespace {

using geometry::Point;
using geometry::Ring;

struct Polyline {
  std::string layer;
  bool closed = false;
  Ring points_mm;
};

/// The entities of a DXF file, read pair by pair as the format is defined: a group code on a line
/// of its own, its value on the next. Knows POLYLINE, VERTEX and SEQEND alone, and refuses others.
class DxfReader {
 public:
  explicit DxfReader(const std::string& text) : text_(text) {}

  std::vector<Polyline> polylines() {
    while (next() && !(code_ == 2 && value_ == "ENTITIES")) continue;
    while (next() && value_ != "ENDSEC") read_pair();
    EXPECT_EQ(value_, "ENDSEC");
    next();
    EXPECT_EQ(value_, "EOF");
    return std::move(found_);
  }

 private:
  bool next() {
    std::string code;
    if (!line(code) || !line(value_)) return false;
    code_ = std::stoi(code);
    return true;
  }

  bool line(std::string& into) {
    if (!std::getline(text_, into)) return false;
    EXPECT_TRUE(into.ends_with('\r'));
    into.pop_back();
    return true;
  }

  void read_pair() {
    if (code_ == 0) {
      entity_ = value_;
      EXPECT_THAT(entity_, testing::AnyOf("POLYLINE", "VERTEX", "SEQEND"));
      if (entity_ == "POLYLINE") found_.emplace_back();
      if (entity_ == "VERTEX") found_.back().points_mm.emplace_back();
    } else if (code_ == 8 && entity_ == "POLYLINE") {
      found_.back().layer = value_;
    } else if (code_ == 8) {
      EXPECT_EQ(found_.back().layer, value_);
    } else if (code_ == 70 && entity_ == "POLYLINE") {
      found_.back().closed = value_ == "1";
    } else if (code_ == 10 && entity_ == "VERTEX") {
      found_.back().points_mm.back().x = std::stod(value_);
    } else if (code_ == 20 && entity_ == "VERTEX") {
      found_.back().points_mm.back().y = std::stod(value_);
    }
  }

  std::istringstream text_;
  int code_ = 0;
  std::string value_, entity_;
  std::vector<Polyline> found_;
};

std::vector<Polyline> on_layer(const std::vector<Polyline>& all, const std::string& layer) {
  std::vector<Polyline> found;
  for (const Polyline& one : all) {
    if (one.layer == layer) found.push_back(one);
  }
  return found;
}

dressing::Plan plan_of_demo(const std::string& name) {
  return dressing::plan_dressing(
      read_case(support::project_folder() + "/demo_cases/" + name + ".json"));
}

std::vector<dressing::CutSheet> sheets_of(const dressing::Plan& plan) {
  std::vector<dressing::CutSheet> all = plan.cut_layout;
  all.insert(all.end(), plan.film_layout.begin(), plan.film_layout.end());
  return all;
}

double area_mm2(const Ring& ring) { return std::fabs(geometry::area(ring)); }

std::vector<Ring> rings_of(const dressing::CutSheet& sheet) {
  std::vector<Ring> rings;
  for (const auto& placement : sheet.placements) {
    rings.push_back(placement.outline_cm.outer);
    for (const Ring& hole : placement.outline_cm.holes) rings.push_back(hole);
  }
  return rings;
}

/// Its area, and every point where the plan has it.
void expect_at_life_size(const Polyline& drawn, const Ring& planned_cm, Point corner_mm) {
  EXPECT_TRUE(drawn.closed);
  EXPECT_NEAR(area_mm2(drawn.points_mm), 100 * area_mm2(planned_cm), 0.1);
  ASSERT_EQ(drawn.points_mm.size(), planned_cm.size());
  for (std::size_t i = 0; i < planned_cm.size(); ++i) {
    EXPECT_LT(geometry::distance(drawn.points_mm[i], corner_mm + 10 * planned_cm[i]), 1e-4);
  }
}

struct CutDxfOfDemo : testing::TestWithParam<const char*> {};

TEST_P(CutDxfOfDemo, HasThePiecesOfThePlanAtLifeSize) {
  const dressing::Plan plan = plan_of_demo(GetParam());
  const auto all = DxfReader(cut_dxf(plan)).polylines();
  const auto sheets = on_layer(all, "SHEET"), cuts = on_layer(all, "CUT");
  const auto planned = sheets_of(plan);
  ASSERT_EQ(sheets.size(), planned.size());
  std::size_t cut = 0;
  double free_from_mm = 0;
  for (std::size_t i = 0; i < planned.size(); ++i) {
    const Point corner = sheets[i].points_mm.at(0), far = sheets[i].points_mm.at(2);
    EXPECT_NEAR(far.x - corner.x, 10 * planned[i].length_cm, 1e-4);
    EXPECT_NEAR(far.y - corner.y, 10 * planned[i].width_cm, 1e-4);
    EXPECT_GE(corner.x, free_from_mm) << "sheets overlap";
    free_from_mm = far.x + 10;
    for (const Ring& ring : rings_of(planned[i])) {
      expect_at_life_size(cuts.at(cut++), ring, corner);
    }
  }
  EXPECT_EQ(cut, cuts.size());
}

INSTANTIATE_TEST_SUITE_P(DemoCases, CutDxfOfDemo,
                         testing::Values("plain-heel", "larger-than-any-sheet", "island-of-skin",
                                         "traced-150-points", "two-wounds-one-film"));

TEST(CutDxf, MarksSeamsWhereAPieceWasCutApart) {
  const dressing::Plan plan = plan_of_demo("larger-than-any-sheet");
  ASSERT_FALSE(plan.fill.seams.empty());
  const auto all = DxfReader(cut_dxf(plan)).polylines();
  const auto seams = on_layer(all, "SEAM");
  EXPECT_EQ(seams.size(), 2 * plan.fill.seams.size()) << "one along either part";
  double planned_mm = 0, drawn_mm = 0;
  for (const auto& seam : plan.fill.seams) {
    planned_mm += 20 * geometry::distance(seam.line.from, seam.line.to);
  }
  for (const Polyline& seam : seams) {
    ASSERT_EQ(seam.points_mm.size(), 2u);
    EXPECT_FALSE(seam.closed);
    drawn_mm += geometry::distance(seam.points_mm[0], seam.points_mm[1]);
  }
  EXPECT_NEAR(drawn_mm, planned_mm, 0.01);
  EXPECT_TRUE(on_layer(DxfReader(cut_dxf(plan_of_demo("plain-heel"))).polylines(), "SEAM").empty());
}

TEST(CutDxf, SaysWhatItIsAndHowFarItReaches) {
  const dressing::Plan plan = plan_of_demo("plain-heel");
  const std::string text = cut_dxf(plan);
  EXPECT_THAT(text, testing::StartsWith("999\r\n1 unit = 1 mm"));
  EXPECT_THAT(text, testing::HasSubstr("9\r\n$ACADVER\r\n1\r\nAC1009\r\n"));
  for (const char* layer : {"SHEET", "CUT", "SEAM"}) {
    EXPECT_THAT(text, testing::HasSubstr("0\r\nLAYER\r\n2\r\n" + std::string(layer)));
  }
  EXPECT_EQ(text, cut_dxf(plan));
}

TEST(CutDxf, RefusesAPlanThatCutsNothing) {
  dressing::Plan plan = plan_of_demo("plain-heel");
  plan.cut_layout.clear();
  plan.film_layout.clear();
  EXPECT_THROW(cut_dxf(plan), InputError);
}

}  // namespace
}  // namespace drapewright::casefile
