#include "core/casefile/outline_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"

namespace drapewright::casefile {
namespace {

using geometry::Polygon;
using geometry::Ring;
using ::testing::HasSubstr;

/// A square with an island, and a triangle beside it.
std::vector<Polygon> two_wounds() {
  return {{.outer = {{0, 0}, {8, 0}, {8, 8}, {0, 8}},
           .holes = {{{2, 2}, {2, 4.125}, {4.25, 4}, {4, 2}}}},
          {.outer = {{10, 0}, {13, 0.5}, {11, 4.0625}}, .holes = {}}};
}

std::string fault_of(const std::string& text, std::optional<double> unit = 1.0) {
  try {
    outlines_from(text, "leg", unit);
  } catch (const InputError& error) {
    return error.what();
  }
  return "no fault";
}

double area_of(const std::string& text, std::optional<double> unit = {}) {
  return geometry::area(outlines_from(text, "leg", unit));
}

TEST(OutlineFile, ComesBackFromEveryFormatThatHoldsIslands) {
  for (const auto format : {OutlineFormat::wkt, OutlineFormat::geojson, OutlineFormat::svg}) {
    const std::string text = outlines_to(format, two_wounds());
    // WKT cannot say its unit; the others must.
    const auto unit = format == OutlineFormat::wkt ? std::optional(1.0) : std::nullopt;
    const auto back = outlines_from(text, "leg", unit);
    ASSERT_EQ(back.size(), 2) << text;
    ASSERT_EQ(back[0].holes.size(), 1) << text;
    for (std::size_t i = 0; i < 2; ++i) {
      ASSERT_EQ(back[i].outer.size(), two_wounds()[i].outer.size());
      for (std::size_t j = 0; j < back[i].outer.size(); ++j) {
        EXPECT_LT(distance(back[i].outer[j], two_wounds()[i].outer[j]), 1e-9) << text;
      }
    }
  }
}

TEST(OutlineFile, CsvHoldsOneRing) {
  const std::vector<Polygon> one{{.outer = two_wounds()[1].outer, .holes = {}}};
  const auto back = outlines_from(outlines_to(OutlineFormat::csv, one), "leg");
  EXPECT_EQ(back, one);
  EXPECT_THROW(outlines_to(OutlineFormat::csv, two_wounds()), InputError);
}

TEST(OutlineFile, AsksForTheUnitWhereTheFileDoesNotSay) {
  for (const char* text :
       {"POLYGON ((0 0, 80 0, 80 50, 0 50, 0 0))", "M 0 0 H 80 V 50 H 0 Z",
        "{\"type\": \"Polygon\", \"coordinates\": [[[0,0],[80,0],[80,50],[0,50],[0,0]]]}",
        "x,y\n0,0\n80,0\n80,50\n0,50", "0 0\n80 0\n80 50\n0 50",
        "<svg width='80' height='50'><path d='m0,0h80v50h-80z'/></svg>"}) {
    EXPECT_THROW(outlines_from(text, "leg"), UnitNeeded) << text;
    EXPECT_NEAR(area_of(text, 0.1), 40, 1e-9) << text;
    EXPECT_NEAR(area_of(text, 2.54), 4000 * 2.54 * 2.54, 1e-6) << text;
  }
}

TEST(OutlineFile, TakesTheFilesOwnUnitAndRefusesAnother) {
  const std::string csv = "x_mm;y_mm\n0;0\n80;0\n80;50\n0;50";
  const std::string svg =
      "<?xml version='1.0'?><!-- a > b --><svg width='4in' height='3in' viewBox='0 0 400 300'>"
      "<g><path d='M0 0H100V100H0Z'/></g></svg>";
  EXPECT_NEAR(area_of(csv), 40, 1e-9);
  EXPECT_NEAR(area_of(csv, 0.1), 40, 1e-9);
  EXPECT_NEAR(area_of(svg), 2.54 * 2.54, 1e-9);
  EXPECT_THAT(fault_of(csv, 1), HasSubstr("the file says that its unit is 0.1 cm"));
  EXPECT_THAT(fault_of(svg, 1), HasSubstr("the file says that its unit is 0.0254 cm"));
  EXPECT_THAT(fault_of(csv, 0), HasSubstr("a length above 0"));
}

// Areas in closed form: a chord polygon is smaller than the curve by at most length x flatness.
TEST(OutlineFile, CurvesOfAPathAreFlattenedWithinTheTolerance) {
  struct Curve {
    const char* path;
    double area;
    double length;
  };
  const double pi = geometry::pi;
  const Curve curves[] = {
      {"M 5,0 A 5 5 0 0 1 -5,0 A 5,5 0 0,1 5 0 Z", 25 * pi, 10 * pi},
      {"M5 0a5 5 0 01-10 0a5 5 0 0110 0z", 25 * pi, 10 * pi},     // flags run together
      {"M 0 0 A 1 1 0 0 1 10 0 Z", 12.5 * pi, 26},                // radii too small grow
      {"M 5 0 A 5 5 0 1 0 0 5 Z", 25 * (0.75 * pi) + 12.5, 31},   // the large arc
      {"M 5 0 A 5 5 0 0 1 0 5 Z", 25 * (0.25 * pi) - 12.5, 15},   // the small one
      {"M 8 0 A 8 3 0 0 1 -8 0 A 8 3 0 0 1 8 0", 24 * pi, 40},    // an ellipse
      {"M 0 8 A 8 3 90 0 1 0 -8 A 8 3 90 0 1 0 8", 24 * pi, 40},  // the same, turned
      {"M 0 0 Q 5 10 10 0 Z", 100.0 / 3, 25},                     // 2/3 of its triangle
      {"M 0 0 q 5 10 10 0 t 10 0 Z", 0, 45},                      // mirrored: areas cancel
      {"M 0 0 C 0 10 10 10 10 0 Z", 60, 30},                      // 3/5 of its rectangle
      {"M 0 0 C 0 10 10 10 10 0 S 20 -10 20 0", 0, 50},
  };
  for (const Curve& curve : curves) {
    const auto got = outlines_from(curve.path, "leg", 1);
    ASSERT_EQ(got.size(), 1);
    EXPECT_NEAR(std::fabs(geometry::area(got[0].outer)), curve.area,
                curve.length * tolerance::offset_cm)
        << curve.path;
  }
  const auto circle = outlines_from(curves[0].path, "leg", 1);
  const Ring& ring = circle[0].outer;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const auto middle = 0.5 * (ring[i] + ring[(i + 1) % ring.size()]);
    EXPECT_NEAR(norm(middle), 5, tolerance::offset_cm);
    EXPECT_NEAR(norm(ring[i]), 5, 1e-9);
  }
}

TEST(OutlineFile, YPointsDownInSvgAndUpHere) {
  const auto got = outlines_from("M 0 0 L 10 0 L 0 30 Z", "leg", 0.1);
  EXPECT_EQ(got[0].outer[2], (geometry::Point{0, -3}));
}

TEST(OutlineFile, RingsInsideOneAnotherAreIslandsAndWoundsInTurn) {
  const auto got =
      outlines_from("M3 3h1v1h-1z M0 0h10v10h-10z M2 2h4v4h-4z M20 0h3v3h-3z", "leg", 1);
  ASSERT_EQ(got.size(), 3);
  EXPECT_NEAR(geometry::area(got[0]), 100 - 16, 1e-9);
  EXPECT_NEAR(geometry::area(got), 84 + 9 + 1, 1e-9);
}

TEST(OutlineFile, ReadsFeaturesAndCollections) {
  EXPECT_NEAR(area_of(R"({"type": "FeatureCollection", "unit": "mm", "features": [
      {"type": "Feature", "properties": {}, "geometry":
        {"type": "Polygon", "coordinates": [[[0,0],[100,0],[100,100],[0,100],[0,0]]]}}]})"),
              100, 1e-9);
  EXPECT_NEAR(area_of("MULTIPOLYGON(((0 0,1 0,1 1,0 0)),((5 5,7 5,7 7,5 5)))", 1), 2.5, 1e-9);
  EXPECT_NEAR(area_of("linestring (0 0, 1 0, 1 1, 0 0)", 1), 0.5, 1e-9);
}

TEST(OutlineFile, SaysWhereWhatAndWhatWasExpected) {
  const std::pair<const char*, const char*> faults[] = {
      {"POLYGON ((0 0, 1 0,\n1 x, 0 0))", "leg:2:3: found \"x,\"; expected a number"},
      {"POLYGON ((0 0, 1 0, 1 1))", "the ring is not closed"},
      {"POLYGON Z ((0 0 1, 1 0 1, 1 1 1, 0 0 1))", "points have x and y alone"},
      {"POLYGON ((0 0 1, 1 0 1, 1 1 1, 0 0 1))", "after x and y"},
      {"POLYGON EMPTY", "there is nothing in the POLYGON"},
      {"POINT (1 1)", "expected POLYGON, MULTIPOLYGON or a closed LINESTRING"},
      {"POLYGON ((0 0, 1 0, 1 1, 0 0)", "the text ends here"},
      {"POLYGON ((0 0, 1e999 0, 1 1, 0 0))", "a number that is too large"},
      {"POLYGON ((0 0, nan 0, 1 1, 0 0))", "expected a number"},
      {"{\"type\": \"Point\", \"coordinates\": [1, 2]}", "expected Polygon, MultiPolygon"},
      {"{\"type\": \"Polygon\"}", "there is no member `coordinates`"},
      {"{\"type\": \"Polygon\", \"coordinates\": []}", "an outline"},
      {"{\"type\": \"Polygon\", \"coordinates\": [[[0,0,1]]]}", "two numbers [x, y]"},
      {"{\"type\": \"Polygon\", \"unit\": \"furlong\", \"coordinates\": [[[0,0],[0,0]]]}",
       "\"mm\""},
      {"M 0 0 L 1", "the text ends here; expected a number"},
      {"M 0 0 L 1 1 Z", "a part of the path with two points"},
      {"M 0 0 K 1 1", "a command of path data"},
      {"M 0 0 L 1 0 L 1 1 Z 5", "a command, such as M"},
      {"M 0 0 C 1e9 0 0 1e9 1 1 Z", "a curve too large for a wound"},
      {"M 0 0 A 1 1 0 2 1 1 1", "a flag of the arc"},
      {"<html></html>", "its first element is svg"},
      {"<svg><path d='M 0 0 L 1 0 L 1 1 Z' transform='scale(2)'/></svg>", "by `transform`"},
      {"<svg><g transform='scale(2)'><path d='M0 0L1 0L1 1Z'/></g></svg>", "by `transform`"},
      {"<svg><circle r='1'/></svg>", "turn shapes into paths"},
      {"<svg><path d='M 0 0", "a value that does not end"},
      {"<svg></svg>", "there is no outline"},
      {"<svg><polygon points='0 0 1 1'/></svg>", "fewer than three points"},
      {"<svg width='0mm' height='5mm' viewBox='0 0 0 5'/>", "a drawing without a size"},
      {"", "there is no point"},
      {"what is this", "there is no point"},
  };
  for (const auto& [text, fault] : faults) EXPECT_THAT(fault_of(text), HasSubstr(fault)) << text;
}

TEST(OutlineFile, WhatIsNotDrawnIsNoOutline) {
  EXPECT_NEAR(area_of("<svg><defs><path d='M0 0h9v9z'/></defs><path d='M0 0h2v2h-2z'/></svg>", 1),
              4, 1e-9);
}

// Whatever is done to a file: outlines of finite points, or a fault in words.
TEST(OutlineFile, SpoiltFilesAreRefusedOrRead) {
  std::vector<std::string> seeds{"M 0 0 C 0 1 1 1 1 0 A 5 5 0 0 1 3 3 Q 1 2 3 4 S 1 1 2 2 Z",
                                 "0,0\n80,0\n80,50\n0,50"};
  for (const auto format : {OutlineFormat::wkt, OutlineFormat::geojson, OutlineFormat::svg}) {
    seeds.push_back(outlines_to(format, two_wounds()));
  }
  std::mt19937 random(20240);
  const std::string signs = "()[]{}<>/\"'MmZzCcAaQ,.-+eE019 \n\t\xC3\x80";
  int read = 0, refused = 0;
  for (int i = 0; i < 4000; ++i) {
    std::string text = seeds[random() % seeds.size()];
    for (unsigned hits = 1 + random() % 4; hits > 0 && !text.empty(); --hits) {
      const std::size_t at = random() % text.size();
      const unsigned kind = random() % 4;
      if (kind == 0) text.erase(at, 1 + random() % 5);
      if (kind == 1) text.insert(at, 1, signs[random() % signs.size()]);
      if (kind == 2) text[at] = signs[random() % signs.size()];
      if (kind == 3) text.resize(at);
    }
    try {
      for (const auto& polygon : outlines_from(text, "leg", 0.1)) {
        for (const auto p : polygon.outer) ASSERT_TRUE(std::isfinite(p.x) && std::isfinite(p.y));
      }
      ++read;
    } catch (const InputError& error) {
      EXPECT_FALSE(error.problem().empty());
      ++refused;
    }
  }
  EXPECT_GT(read, 100);
  EXPECT_GT(refused, 100);
}

}  // namespace
}  // namespace drapewright::casefile
