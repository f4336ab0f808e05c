// The plan view, driven by the events that a mouse and a keyboard send.
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>
#include <QToolButton>
#include <QWheelEvent>

#include "app/desktop/canvas/plan_view.h"
#include "app/printing/pens.h"
#include "core/report/sketch.h"
#include "tests/support/sample_plan.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using report::LayerKind;
using support::SamplePlan;

class PlanViewTest : public testing::Test {
 protected:
  void SetUp() override {
    view.resize(800, 640);
    view.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&view));
  }
  void show(const SamplePlan& sample) {
    view.show_plan(std::make_shared<wound::Case>(sample.value),
                   std::make_shared<dressing::Plan>(sample.plan));
  }
  void wheel(QPointF at, int units) {
    QWheelEvent event(at, view.mapToGlobal(at), {}, {0, units}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&view, &event);
  }
  void drag(Qt::MouseButton button, QPoint from, QPoint to) {
    QTest::mousePress(&view, button, {}, from);
    for (const double part : {0.3, 0.7, 1.0}) {
      const QPointF at = from + part * QPointF(to - from);
      QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::NoButton, button, {});
      QApplication::sendEvent(&view, &move);
    }
    QTest::mouseRelease(&view, button, {}, to);
  }
  /// How many dots of the picture have a layer's very line colour.
  int dots(LayerKind kind) {
    const QImage picture = view.grab().toImage();
    const QColor colour =
        printing::to_qcolor(report::style_of(kind).line_colour(report::Ground::light));
    int count = 0;
    for (int y = 0; y < picture.height(); ++y) {
      for (int x = 0; x < picture.width(); ++x) count += picture.pixelColor(x, y) == colour;
    }
    return count;
  }
  void expect_near(QPointF a, QPointF b, double by = 1e-6) {
    EXPECT_NEAR(a.x(), b.x(), by);
    EXPECT_NEAR(a.y(), b.y(), by);
  }

  PlanView view;
};

TEST_F(PlanViewTest, FitShowsEverything) {
  for (const SamplePlan& sample :
       {support::sample_plan(1, 0.7), support::sample_plan(40, 30), support::crowded_plan()}) {
    show(sample);
    view.fit();
    const auto extent = report::sketch_plan(sample.value, sample.plan).extent;
    for (const Point corner : {extent.low, extent.high}) {
      EXPECT_TRUE(view.rect().contains(view.to_pixels(corner).toPoint()));
    }
    const double span = view.to_pixels(extent.high).x() - view.to_pixels(extent.low).x();
    const double rise = view.to_pixels(extent.low).y() - view.to_pixels(extent.high).y();
    EXPECT_TRUE(span > 0.45 * view.width() || rise > 0.45 * view.height()) << span << " " << rise;
  }
}

TEST_F(PlanViewTest, FirstCaseIsFittedByItselfAndFollowsTheWindowsSize) {
  show(support::sample_plan());
  const double before = view.pixels_per_cm();
  view.resize(1100, 900);
  QTest::qWait(0);
  EXPECT_GT(view.pixels_per_cm(), before);
}

TEST_F(PlanViewTest, WheelZoomsAtTheCursor) {
  show(support::sample_plan());
  const QPointF at(500, 200);
  const Point under = view.to_cm(at);
  const double before = view.pixels_per_cm();
  wheel(at, 120);
  EXPECT_GT(view.pixels_per_cm(), 1.05 * before);
  expect_near(view.to_pixels(under), at);
  wheel(at, -120);
  EXPECT_NEAR(view.pixels_per_cm(), before, 1e-6);
  expect_near(view.to_pixels(under), at);
}

TEST_F(PlanViewTest, ZoomHasItsEnds) {
  show(support::sample_plan());
  for (int i = 0; i < 200; ++i) wheel({400, 300}, 1200);
  EXPECT_LE(view.pixels_per_cm(), 4000);
  view.grab();  // paints at the end of the scale, too
  for (int i = 0; i < 400; ++i) wheel({400, 300}, -1200);
  EXPECT_GE(view.pixels_per_cm(), 2);
  view.grab();
}

TEST_F(PlanViewTest, DraggingPans) {
  show(support::sample_plan());
  for (const auto button : {Qt::LeftButton, Qt::MiddleButton}) {
    const Point grasped = view.to_cm({400, 300});
    const double scale = view.pixels_per_cm();
    drag(button, {400, 300}, {340, 410});
    expect_near(view.to_pixels(grasped), {340, 410}, 1);
    EXPECT_DOUBLE_EQ(view.pixels_per_cm(), scale);
  }
  const Point grasped = view.to_cm({400, 300});
  drag(Qt::RightButton, {400, 300}, {340, 410});  // belongs to context menus
  expect_near(view.to_pixels(grasped), {400, 300});
}

TEST_F(PlanViewTest, KeysPanZoomAndFit) {
  show(support::sample_plan());
  const double fitted = view.pixels_per_cm();
  const QPointF origin = view.to_pixels({0, 0});
  QTest::keyClick(&view, Qt::Key_Right);
  EXPECT_LT(view.to_pixels({0, 0}).x(), origin.x());  // what lies to the right comes into view
  QTest::keyClick(&view, Qt::Key_Left);
  QTest::keyClick(&view, Qt::Key_Down);
  EXPECT_LT(view.to_pixels({0, 0}).y(), origin.y());
  QTest::keyClick(&view, Qt::Key_Up);
  expect_near(view.to_pixels({0, 0}), origin);
  QTest::keyClick(&view, Qt::Key_Plus);
  EXPECT_GT(view.pixels_per_cm(), fitted);
  QTest::keyClick(&view, Qt::Key_Minus);
  EXPECT_NEAR(view.pixels_per_cm(), fitted, 1e-9);
  QTest::keyClick(&view, Qt::Key_Minus);
  QTest::keyClick(&view, Qt::Key_0);
  EXPECT_NEAR(view.pixels_per_cm(), fitted, 1e-9);
  expect_near(view.to_pixels({0, 0}), origin);
}

TEST_F(PlanViewTest, KeepsTheUsersZoomWhenThePlanChanges) {
  show(support::sample_plan());
  wheel({300, 300}, 360);
  const double scale = view.pixels_per_cm();
  const QPointF origin = view.to_pixels({0, 0});
  show(support::sample_plan(12, 9));
  EXPECT_DOUBLE_EQ(view.pixels_per_cm(), scale);
  expect_near(view.to_pixels({0, 0}), origin);
}

TEST_F(PlanViewTest, PointOutMakesThePlaceVisibleAndMarksIt) {
  show(support::sample_plan());
  for (int i = 0; i < 12; ++i) wheel({600, 500}, 240);
  const Point place{-3, 3};
  EXPECT_FALSE(view.rect().contains(view.to_pixels(place).toPoint()));
  const int unmarked = dots(LayerKind::finding_place);
  view.point_out(place);
  EXPECT_TRUE(view.rect().adjusted(30, 30, -30, -30).contains(view.to_pixels(place).toPoint()));
  EXPECT_GT(dots(LayerKind::finding_place), unmarked);
  view.clear_mark();
  const QPointF at = view.to_pixels(place);
  view.point_out(place);  // in sight already: nothing moves
  expect_near(view.to_pixels(place), at);
}

TEST_F(PlanViewTest, LayersCanBeSwitched) {
  show(support::crowded_plan());
  for (const LayerKind kind : {LayerKind::unfilled, LayerKind::wound, LayerKind::no_port_zone}) {
    ASSERT_GT(dots(kind), 0) << report::style_of(kind).id;
    view.set_layer_visible(kind, false);
    EXPECT_FALSE(view.layer_visible(kind));
    EXPECT_EQ(dots(kind), 0) << report::style_of(kind).id;  // nor in the legend
    view.set_layer_visible(kind, true);
    EXPECT_GT(dots(kind), 0) << report::style_of(kind).id;
  }
}

TEST_F(PlanViewTest, WithoutAPlanTheCaseAloneIsDrawn) {
  const SamplePlan sample = support::sample_plan();
  view.show_plan(std::make_shared<wound::Case>(sample.value), nullptr);
  EXPECT_GT(dots(LayerKind::wound), 0);
  EXPECT_EQ(dots(LayerKind::filler), 0);
  EXPECT_TRUE(view.accessibleDescription().contains("not planned yet"));
  show(sample);
  EXPECT_GT(dots(LayerKind::filler), 0);
  EXPECT_TRUE(view.accessibleDescription().contains("8.0 cm long"));
  view.show_plan(nullptr, nullptr);
  EXPECT_EQ(dots(LayerKind::wound), 0);
}

TEST_F(PlanViewTest, TellsThePlaceAndTheHourUnderTheCursor) {
  show(support::sample_plan());
  QSignalSpy moved(&view, &PlanView::cursor_moved);
  QTest::mouseMove(&view, view.to_pixels({3, 0}).toPoint());
  QTest::qWait(0);
  ASSERT_FALSE(moved.isEmpty());
  const auto last = moved.last();
  EXPECT_NEAR(last[0].toPointF().x(), 3, 1 / view.pixels_per_cm());
  EXPECT_NEAR(last[0].toPointF().y(), 0, 1 / view.pixels_per_cm());
  EXPECT_NEAR(last[1].toDouble(), 3, 0.2);
}

TEST_F(PlanViewTest, TheLegendFoldsAndTheFitUsesTheRoom) {
  show(support::sample_plan(8, 5, 0));
  auto* heading = view.findChild<QToolButton*>();
  ASSERT_NE(heading, nullptr);
  const QWidget* legend = heading->parentWidget();
  const int unfolded = legend->height();
  QTest::mouseClick(heading, Qt::LeftButton);
  EXPECT_LT(legend->height(), unfolded / 2);
  QTest::mouseClick(heading, Qt::LeftButton);
  EXPECT_EQ(legend->height(), unfolded);
  EXPECT_TRUE(view.rect().contains(legend->geometry()));
}

TEST_F(PlanViewTest, InASmallViewTheLegendMakesRoom) {
  show(support::crowded_plan());
  auto* legend = view.findChild<QToolButton*>()->parentWidget();
  EXPECT_GT(legend->height(), 100);
  view.resize(400, 360);
  QTest::qWait(0);
  EXPECT_LT(legend->height(), 50);
  view.resize(800, 640);
  QTest::qWait(0);
  EXPECT_GT(legend->height(), 100);
}

TEST_F(PlanViewTest, FollowsADarkPalette) {
  show(support::sample_plan());
  const QColor light = view.grab().toImage().pixelColor(view.width() / 2, 5);
  QPalette palette = view.palette();
  palette.setColor(QPalette::Base, QColor(30, 30, 30));
  view.setPalette(palette);
  const QColor dark = view.grab().toImage().pixelColor(view.width() / 2, 5);
  EXPECT_GT(light.lightness(), 200);
  EXPECT_LT(dark.lightness(), 60);
}

// WCAG 2.2, 1.4.4: text can be made twice as large. Captions and rulers are painted, so they have
// to follow by themselves.
TEST_F(PlanViewTest, CaptionsAndRulersGrowWithTheText) {
  show(support::sample_plan());
  const auto ink_dots = [&] {
    const QImage picture = view.grab().toImage();
    const QColor ink = printing::to_qcolor(report::ink_colour(report::Ground::light));
    int count = 0;
    for (int y = 0; y < picture.height(); ++y) {
      for (int x = 0; x < picture.width(); ++x) count += picture.pixelColor(x, y) == ink;
    }
    return count;
  };
  const int before = ink_dots();
  const double scale = view.pixels_per_cm();
  QFont font = view.font();
  font.setPointSizeF(2 * font.pointSizeF());
  view.setFont(font);
  EXPECT_GT(ink_dots(), 1.5 * before);
  EXPECT_LT(view.pixels_per_cm(), scale) << "wider rulers leave the plan less room";
}

TEST_F(PlanViewTest, HasANameForThoseWhoCannotSeeIt) {
  EXPECT_FALSE(view.accessibleName().isEmpty());
  EXPECT_FALSE(view.accessibleDescription().isEmpty());
}

}  // namespace
}  // namespace drapewright::desktop
