#include "app/printing/picture.h"

#include <gtest/gtest.h>

#include <QImageReader>
#include <QTemporaryDir>
#include <cmath>

#include "app/printing/pens.h"
#include "core/base/error.h"
#include "core/report/plan_drawing.h"
#include "tests/support/sample_plan.h"

namespace drapewright::printing {
namespace {

report::Drawing crowded() {
  const support::SamplePlan sample = support::crowded_plan();
  return report::draw_plan(sample.value, sample.plan);
}

int dots_of(const QImage& picture, QColor colour) {
  int count = 0;
  for (int y = 0; y < picture.height(); ++y) {
    for (int x = 0; x < picture.width(); ++x) count += picture.pixelColor(x, y) == colour;
  }
  return count;
}

TEST(Picture, HasItsSizeAndCarriesItsResolution) {
  const report::Drawing drawing = crowded();
  const QImage picture = to_picture(drawing, 254);
  EXPECT_EQ(picture.width(), static_cast<int>(std::ceil(10 * drawing.width_mm)));
  EXPECT_EQ(picture.height(), static_cast<int>(std::ceil(10 * drawing.height_mm)));
  EXPECT_EQ(picture.dotsPerMeterX(), 10000);
  EXPECT_EQ(picture.text("Title"), "crowded, 2031-03-01");
}

TEST(Picture, ShowsEveryLayersLineOnEitherGround) {
  for (const auto ground : {report::Ground::light, report::Ground::dark}) {
    const QImage picture = to_picture(crowded(), 300, ground);
    EXPECT_EQ(picture.pixelColor(2, 2), to_qcolor(report::ground_colour(ground)));
    for (const report::LayerStyle& style : report::layer_styles()) {
      if (style.kind == report::LayerKind::finding_place) continue;
      if (style.fill_colour(ground).alpha > 0) continue;  // its fill may shine through others
      EXPECT_GT(dots_of(picture, to_qcolor(style.line_colour(ground))), 0) << style.id;
    }
  }
}

TEST(Picture, LifeSizeIsExactInDots) {
  support::SamplePlan sample = support::sample_plan(8, 5, 0);
  report::Drawing drawing = report::draw_plan(sample.value, sample.plan, {.mm_per_cm = 10});
  // Only the wound, so that its extent can be measured: 80 mm and its line of 0.7 mm.
  std::erase_if(drawing.layers, [](const report::DrawnLayer& layer) {
    return layer.kind != report::LayerKind::wound;
  });
  drawing.layers[0].labels.clear();
  const QImage picture = to_picture(drawing, 254);
  int left = picture.width(), right = 0;
  for (int y = 0; y < picture.height(); ++y) {
    for (int x = 0; x < picture.width(); ++x) {
      if (picture.pixelColor(x, y) == Qt::white) continue;
      left = std::min(left, x);
      right = std::max(right, x);
    }
  }
  EXPECT_NEAR(right + 1 - left, 807, 3);
}

TEST(Picture, IsWrittenWholeOrRefused) {
  const QTemporaryDir folder;
  const QString path = folder.filePath("plan.png");
  write_png(path, crowded(), 100);
  QImageReader reader(path);
  EXPECT_EQ(reader.format(), "png");
  EXPECT_FALSE(reader.read().isNull());
  EXPECT_THROW(write_png(folder.filePath("no such folder/plan.png"), crowded()), InputError);
  EXPECT_THROW(to_picture(crowded(), 5), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::printing
