#include "core/report/svg.h"

#include <gtest/gtest.h>

#include <clocale>
#include <regex>

#include "core/report/plan_drawing.h"
#include "core/report/xml_text.h"
#include "tests/support/sample_plan.h"

namespace drapewright::report {
namespace {

Drawing crowded(const DrawingOptions& options = {}) {
  const support::SamplePlan sample = support::crowded_plan();
  return draw_plan(sample.value, sample.plan, options);
}

TEST(Svg, EqualDrawingsGiveEqualTextInEveryLocale) {
  const std::string once = to_svg(crowded());
  const char* before = std::setlocale(LC_ALL, nullptr);
  const std::string saved = before ? before : "C";
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // where it is installed: a decimal comma
  EXPECT_EQ(to_svg(crowded()), once);
  std::setlocale(LC_ALL, saved.c_str());
}

TEST(Svg, IsInMillimetres) {
  const Drawing drawing = crowded({.mm_per_cm = 10});
  const std::string svg = to_svg(drawing);
  std::smatch match;
  ASSERT_TRUE(std::regex_search(
      svg, match,
      std::regex("width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\" viewBox=\"0 0 ([0-9.]+) "
                 "([0-9.]+)\"")));
  EXPECT_NEAR(std::stod(match[1]), drawing.width_mm, 5e-4);
  EXPECT_EQ(match[1], match[3]);
  EXPECT_EQ(match[2], match[4]);
}

TEST(Svg, OneGroupPerLayerAndPatternsForItsHatches) {
  const Drawing drawing = crowded();
  const std::string svg = to_svg(drawing);
  for (const DrawnLayer& layer : drawing.layers) {
    const LayerStyle& style = style_of(layer.kind);
    const std::string id(style.id);
    if (!layer.areas.empty() || !layer.strokes.empty()) {
      EXPECT_NE(svg.find("<g id=\"" + id + "\" class=\"" + id + "\""), std::string::npos) << id;
    }
    if (style.hatch != Hatch::none && !layer.areas.empty()) {
      EXPECT_NE(svg.find("<pattern id=\"hatch-" + id + "\""), std::string::npos) << id;
      EXPECT_NE(svg.find("fill=\"url(#hatch-" + id + ")\""), std::string::npos) << id;
    }
  }
}

TEST(Svg, DarkGroundChangesOnlyColours) {
  const std::string light = to_svg(crowded(), Ground::light);
  const std::string dark = to_svg(crowded(), Ground::dark);
  const std::regex colour("#[0-9a-f]{6}|fill-opacity=\"[0-9.]+\"");
  EXPECT_NE(light, dark);
  EXPECT_EQ(std::regex_replace(light, colour, "*"), std::regex_replace(dark, colour, "*"));
}

TEST(XmlText, EscapesMarkupAndDropsWhatXmlForbids) {
  EXPECT_EQ(xml_text("a<b>&\"c"), "a&lt;b&gt;&amp;&quot;c");
  EXPECT_EQ(xml_text(std::string("a\0b\x1B\tc", 7)), "ab\tc");
  EXPECT_EQ(xml_text("\u00e9\u4e2d\U0001F600"), "\u00e9\u4e2d\U0001F600");
  EXPECT_EQ(xml_text("\xC3("), "\uFFFD(");                    // broken sequence
  EXPECT_EQ(xml_text("\xED\xA0\x80"), "\uFFFD\uFFFD\uFFFD");  // a surrogate is no character
  EXPECT_EQ(xml_text("\xC0\x80"), "\uFFFD\uFFFD");            // overlong
  EXPECT_EQ(xml_text("\xEF\xBF\xBF"), "");                    // U+FFFF is not allowed
}

}  // namespace
}  // namespace drapewright::report
