// The drawing tools in the real window, by mouse, touch, pen and keys; what is checked is the case.
#include <gtest/gtest.h>

#include <QAction>
#include <QLabel>
#include <QMouseEvent>
#include <QPointingDevice>
#include <QPushButton>
#include <QTabletEvent>
#include <QTest>
#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/desktop/window/drawing_pane.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using desktop::Tool;
using geometry::Point;
using geometry::Ring;

struct TracingTest : testing::Test {
  wound::Wound& wound(std::size_t index = 0) {
    copy_ = driver.document().value();
    return copy_.current().wounds.at(index);
  }
  std::size_t wounds() { return driver.document().value().current().wounds.size(); }
  int steps() { return driver.document().undo_stack().index(); }
  desktop::TracingDesk& desk() { return driver.window().drawing().desk(); }
  QString words() { return driver.window().findChild<QLabel*>("tool_words")->text(); }
  void take_up(const QString& name) {
    auto* action = driver.window().findChild<QAction*>("tool_" + name);
    ASSERT_NE(action, nullptr) << name.toStdString();
    action->trigger();
    QCoreApplication::processEvents();
  }
  QPointF at(Point cm) { return view.to_pixels(cm); }
  void send(QEvent::Type type, Point cm, Qt::MouseButton button, Qt::MouseButtons buttons) {
    QMouseEvent event(type, at(cm), view.mapToGlobal(at(cm)), button, buttons, {});
    QApplication::sendEvent(&view, &event);
  }
  void press(Point cm) { send(QEvent::MouseButtonPress, cm, Qt::LeftButton, Qt::LeftButton); }
  void move(Point cm) { send(QEvent::MouseMove, cm, Qt::NoButton, Qt::LeftButton); }
  void hover(Point cm) { send(QEvent::MouseMove, cm, Qt::NoButton, Qt::NoButton); }
  void release(Point cm) { send(QEvent::MouseButtonRelease, cm, Qt::LeftButton, Qt::NoButton); }
  void click(Point cm) {
    hover(cm);
    press(cm);
    release(cm);
  }
  void stroke(const Ring& line) {
    press(line.front());
    for (const Point& p : line) move(p);
    release(line.back());
    driver.settle();
  }
  static Ring closed(Ring ring) {
    ring.push_back(ring.front());
    return ring;
  }
  /// A 6 x 4 cm rectangle, 24 cm2.
  void draw_rectangle() {
    take_up("corners");
    for (const Point& p : {Point{-3, -2}, Point{3, -2}, Point{3, 2}, Point{-3, 2}}) click(p);
    click({-3, -2});
    driver.settle();
    ASSERT_EQ(wounds(), 1U);
  }
  double area(std::size_t index = 0) {
    const auto& w = wound(index);
    double sum = geometry::area(w.outline_cm);
    for (const Ring& island : w.islands_cm) sum -= geometry::area(island);
    return sum;
  }

  WindowDriver driver;
  desktop::PlanView& view = driver.window().plan_view();
  wound::Case copy_;
};

TEST_F(TracingTest, TheStartPageLeadsToATrace) {
  driver.click("start_trace");
  EXPECT_EQ(desk().tool(), Tool::trace);
  EXPECT_TRUE(view.isVisible()) << "the bare sheet to draw on";
  const Ring circle = geometry::circle(8, {}, 200);
  stroke(closed(circle));
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), 16 * geometry::pi, 0.4);
  EXPECT_LT(wound().outline_cm.size(), 120U) << "thinned";
  EXPECT_GE(wound().trace_cm.size(), 195U) << "what was drawn is kept";
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(desk().tool(), Tool::points) << "the next touch does not draw it again";
  EXPECT_TRUE(driver.window().result().plan) << "planned";
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(wounds(), 0U);
}

TEST_F(TracingTest, GoingOnPastTheStartDoesNoHarm) {
  take_up("trace");
  Ring line;  // a spiral: the hand ends inside its start
  for (int deg = 0; deg <= 380; deg += 2) {
    line.push_back(geometry::turned({4 - 0.15 * deg / 380, 0}, deg));
  }
  stroke(line);
  ASSERT_EQ(wounds(), 1U) << words().toStdString();
  EXPECT_NEAR(area(), 49, 1.5);
}

TEST_F(TracingTest, ATraceThatCrossesItselfIsHeldAndRepaired) {
  take_up("trace");
  Ring eight;  // two lobes of one size
  for (int deg = 0; deg < 360; deg += 3) {
    const double t = geometry::radians(deg + 45);
    eight.push_back({4 * std::cos(t), 2.5 * std::sin(2 * t)});
  }
  stroke(eight);
  EXPECT_EQ(wounds(), 0U);
  EXPECT_EQ(steps(), 0);
  ASSERT_TRUE(desk().held());
  EXPECT_EQ(desk().held()->loops.size(), 2U);
  const double lobe = geometry::area(desk().held()->loops[0]);
  driver.click("split_in_two");
  driver.settle();
  EXPECT_EQ(wounds(), 2U);
  EXPECT_EQ(steps(), 1);
  EXPECT_NEAR(area(0), lobe, 0.01);
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(wounds(), 0U);

  take_up("trace");
  stroke(eight);
  driver.click("keep_larger_loop");
  driver.settle();
  EXPECT_EQ(wounds(), 1U);
  EXPECT_FALSE(desk().held());

  driver.press(QKeySequence::Undo);
  take_up("trace");
  stroke(eight);
  QTest::keyClick(&view, Qt::Key_Escape);
  EXPECT_FALSE(desk().held());
  EXPECT_EQ(wounds(), 0U);
}

TEST_F(TracingTest, EscapeAbandonsAStroke) {
  take_up("trace");
  press({-3, 0});
  move({0, 3});
  move({3, 0});
  QTest::keyClick(&view, Qt::Key_Escape);
  release({0, -3});
  EXPECT_EQ(wounds(), 0U);
  EXPECT_EQ(steps(), 0);
}

TEST_F(TracingTest, CornersCloseOnTheFirstOneByDoubleClickAndByEnter) {
  draw_rectangle();
  EXPECT_NEAR(area(), 24, 0.3);
  EXPECT_EQ(wound().outline_cm.size(), 4U);
  driver.press(QKeySequence::Undo);

  take_up("corners");
  for (const Point& p : {Point{-3, -2}, Point{3, -2}, Point{0, 2}}) click(p);
  send(QEvent::MouseButtonDblClick, {0, 2}, Qt::LeftButton, Qt::LeftButton);
  release({0, 2});
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_EQ(wound().outline_cm.size(), 3U);
  driver.press(QKeySequence::Undo);

  take_up("corners");
  for (const Point& p : {Point{-3, -2}, Point{3, -2}, Point{4, 2}, Point{0, 2}}) click(p);
  QTest::keyClick(&view, Qt::Key_Backspace);
  QTest::keyClick(&view, Qt::Key_Return);
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_EQ(wound().outline_cm.size(), 3U);
}

TEST_F(TracingTest, CornersByKeysAlone) {
  take_up("corners");
  EXPECT_TRUE(view.hasFocus());
  const auto go = [&](int key, int times) {
    for (int i = 0; i < times; ++i) QTest::keyClick(&view, Qt::Key(key), Qt::ShiftModifier);
  };
  QTest::keyClick(&view, Qt::Key_Space);
  go(Qt::Key_Right, 5);
  QTest::keyClick(&view, Qt::Key_Space);
  go(Qt::Key_Up, 3);
  QTest::keyClick(&view, Qt::Key_Space);
  go(Qt::Key_Left, 5);
  QTest::keyClick(&view, Qt::Key_Space);
  QTest::keyClick(&view, Qt::Key_Return);
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), 15, 1e-9);
}

TEST_F(TracingTest, EllipseAndRectangleByTwoAxes) {
  take_up("ellipse");
  press({-4, 0});
  move({0, 0});
  move({4, 0});
  release({4, 0});
  hover({0, 2.5});
  click({0, 2.5});
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), geometry::pi * 10, 0.5);
  driver.press(QKeySequence::Undo);
  take_up("rectangle");
  for (const Point& p : {Point{-4, 0}, Point{4, 0}, Point{1, 1}}) click(p);
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), 16, 0.4);
}

TEST_F(TracingTest, SnappingGoesToTheGridAndAltHoldsItOff) {
  desk().set_snaps_to_grid(true);
  take_up("corners");
  for (const Point& p : {Point{-3.04, -2.03}, Point{3.05, -1.98}, Point{0.03, 2.04}}) click(p);
  QTest::keyClick(&view, Qt::Key_Return);
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), 12, 1e-9);
}

TEST_F(TracingTest, APointIsMovedInsertedAndRemoved) {
  draw_rectangle();
  const int were = steps();
  take_up("points");
  press(wound().outline_cm[1]);
  move({4, -2});
  move({5, -2});
  release({5, -2});
  driver.settle();
  EXPECT_NEAR(area(), 28, 0.4);
  EXPECT_EQ(steps(), were + 1) << "a drag is one step";
  stroke({{0, 2}, {0, 2.5}, {0, 3}});
  EXPECT_EQ(wound().outline_cm.size(), 5U);
  EXPECT_EQ(steps(), were + 2);
  click({0, 3});
  QTest::keyClick(&view, Qt::Key_Delete);
  driver.settle();
  EXPECT_EQ(wound().outline_cm.size(), 4U);
  EXPECT_NEAR(area(), 28, 0.4);
}

TEST_F(TracingTest, APointThatWouldCrossIsHeldBack) {
  draw_rectangle();
  const int were = steps();
  take_up("points");
  stroke({wound().outline_cm[1], {0, 0}, {-4, 0}});
  EXPECT_EQ(steps(), were);
  ASSERT_TRUE(desk().held());
  driver.click("abandon_outline");
  EXPECT_NEAR(area(), 24, 0.3);
}

TEST_F(TracingTest, TheWholeIsMovedTurnedAndScaledWithItsIslands) {
  draw_rectangle();
  driver.document().edit("test", {}, [](wound::Case& value) {
    value.current().wounds[0].islands_cm = {geometry::rectangle(1, 1)};
  });
  driver.settle();
  take_up("whole");
  const Point was = geometry::centroid(wound().outline_cm);
  stroke({{1.5, 1}, {2, 1}, {3.5, 2}});
  const Point now = geometry::centroid(wound().outline_cm);
  EXPECT_NEAR(now.x - was.x, 2, 0.1);
  EXPECT_NEAR(now.y - was.y, 1, 0.1);
  EXPECT_NEAR(geometry::distance(geometry::centroid(wound().islands_cm[0]), now), 0, 0.1);
  QTest::keyClick(&view, Qt::Key_Comma);
  QTest::keyClick(&view, Qt::Key_BracketRight);
  driver.settle();
  EXPECT_NEAR(area(), 23 * 1.01 * 1.01, 0.4);
}

TEST_F(TracingTest, AddAndTakeAwayAreUnionAndDifference) {
  draw_rectangle();
  const int were = steps();
  take_up("add");
  stroke(closed({{2, -1}, {5, -1}, {5, 1}, {2, 1}}));
  EXPECT_NEAR(area(), 28, 0.4) << words().toStdString();
  take_up("take_away");
  stroke(closed({{-4, -1}, {-2, -1}, {-2, 1}, {-4, 1}}));
  EXPECT_NEAR(area(), 26, 0.4);
  stroke(closed({{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}}));
  EXPECT_EQ(wound().islands_cm.size(), 1U) << "a hole is an island of intact skin";
  EXPECT_NEAR(area(), 25, 0.4);
  EXPECT_EQ(steps(), were + 3);
  stroke(closed({{20, 20}, {22, 20}, {22, 22}}));
  EXPECT_EQ(steps(), were + 3);
  EXPECT_TRUE(words().contains("does not touch")) << words().toStdString();
}

TEST_F(TracingTest, SplitMakesTwoWoundsAndAddJoinsThemAgain) {
  draw_rectangle();
  driver.document().edit("test", {},
                         [](wound::Case& value) { value.current().wounds[0].depth_cm = 2; });
  take_up("split");
  stroke({{1, -3}, {1, 0}, {1, 3}});
  ASSERT_EQ(wounds(), 2U) << words().toStdString();
  EXPECT_NEAR(area(0), 16, 0.3);
  EXPECT_NEAR(area(1), 8, 0.3);
  EXPECT_EQ(wound(1).depth_cm, 2);
  take_up("add");
  stroke(closed({{0, -1}, {2, -1}, {2, 1}, {0, 1}}));
  EXPECT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(0), 24, 0.4);
}

TEST_F(TracingTest, AStretchIsRetracedAndSmoothed) {
  draw_rectangle();
  take_up("retrace");
  stroke({{3, -1}, {4, -1}, {4, 1}, {3, 1}});
  EXPECT_NEAR(area(), 26, 0.4) << words().toStdString();
  const std::size_t corners = wound().outline_cm.size();
  take_up("smooth");
  stroke({{3, -1.5}, {4, 0}, {3, 1.5}});
  EXPECT_GT(wound().outline_cm.size(), corners);
  EXPECT_NEAR(area(), 26, 1);
}

TEST_F(TracingTest, UnderminingAndTunnelsAreDraggedOutwards) {
  draw_rectangle();
  take_up("undermining");
  stroke({{2.2, 2}, {2.5, 2.5}, {4, 1.2}, {4, 0}});
  ASSERT_EQ(wound().undermining.size(), 1U) << words().toStdString();
  EXPECT_NEAR(wound().undermining[0].extent_cm, 1, 0.15);
  EXPECT_NEAR(wound().undermining[0].to_clock, 3, 0.3);
  EXPECT_LT(wound().undermining[0].from_clock, 3);
  take_up("tunnel");
  stroke({{-3, 0}, {-5, 0}, {-6, 0}});
  ASSERT_EQ(wound().tunnels.size(), 1U) << words().toStdString();
  EXPECT_NEAR(wound().tunnels[0].length_cm, 3, 0.15);
  EXPECT_NEAR(wound().tunnels[0].clock, 9, 0.3);
}

TEST_F(TracingTest, MeasuringChangesNothing) {
  draw_rectangle();
  const auto before = driver.document().shared();
  take_up("measure");
  for (const Point& p : {Point{0, 0}, Point{4, 0}, Point{4, 3}}) click(p);
  EXPECT_EQ(driver.document().shared(), before);
  EXPECT_TRUE(view.accessibleName().contains("90\u00b0")) << view.accessibleName().toStdString();
  EXPECT_TRUE(view.accessibleName().contains("7.0 cm")) << view.accessibleName().toStdString();
}

TEST_F(TracingTest, AFingerDrawsTwoFingersDoNot) {
  take_up("trace");
  auto* finger = QTest::createTouchDevice();
  const Ring circle = closed(geometry::circle(6, {}, 60));
  QTest::touchEvent(&view, finger).press(0, at(circle[0]).toPoint(), &view);
  for (const Point& p : circle) {
    QTest::touchEvent(&view, finger).move(0, at(p).toPoint(), &view);
  }
  QTest::touchEvent(&view, finger).release(0, at(circle.back()).toPoint(), &view);
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), 9 * geometry::pi, 0.8);
  const double scale = view.pixels_per_cm();
  const int were = steps();
  const QPoint a = view.rect().center() - QPoint(50, 0), b = view.rect().center() + QPoint(50, 0);
  QTest::touchEvent(&view, finger).press(0, a, &view).press(1, b, &view);
  QTest::touchEvent(&view, finger)
      .move(0, a - QPoint(30, 0), &view)
      .move(1, b + QPoint(30, 0), &view);
  QTest::touchEvent(&view, finger)
      .release(0, a - QPoint(30, 0), &view)
      .release(1, b + QPoint(30, 0), &view);
  EXPECT_NEAR(view.pixels_per_cm() / scale, 1.6, 0.1);
  EXPECT_EQ(steps(), were);
}

TEST_F(TracingTest, APenDrawsAndTheHandBesideItDoesNot) {
  take_up("trace");
  const QPointingDevice pen("pen", 77, QInputDevice::DeviceType::Stylus,
                            QPointingDevice::PointerType::Pen, QInputDevice::Capability::Pressure,
                            1, 1);
  const auto event = [&](QEvent::Type type, Point cm, Qt::MouseButtons buttons) {
    QTabletEvent sent(type, &pen, at(cm), view.mapToGlobal(at(cm)), 0.2, 0, 0, 0, 0, 0, {},
                      type == QEvent::TabletMove ? Qt::NoButton : Qt::LeftButton, buttons);
    QApplication::sendEvent(&view, &sent);
  };
  auto* hand = QTest::createTouchDevice();
  const Ring circle = closed(geometry::circle(6, {}, 60));
  event(QEvent::TabletPress, circle[0], Qt::LeftButton);
  for (std::size_t i = 0; i < circle.size(); ++i) {
    event(QEvent::TabletMove, circle[i], Qt::LeftButton);
    if (i == 20) {
      QTest::touchEvent(&view, hand).press(0, at({5, -5}).toPoint(), &view);
      QTest::touchEvent(&view, hand).release(0, at({5, -5}).toPoint(), &view);
    }
  }
  event(QEvent::TabletRelease, circle.back(), Qt::NoButton);
  driver.settle();
  ASSERT_EQ(wounds(), 1U);
  EXPECT_NEAR(area(), 9 * geometry::pi, 0.8);
}

TEST_F(TracingTest, ADrawingBecomesWhatWasChosen) {
  draw_rectangle();
  driver.window().findChild<QAction*>("add_no_film")->trigger();
  take_up("rectangle");
  for (const Point& p : {Point{4, 0}, Point{6, 0}, Point{5, 1}}) click(p);
  driver.settle();
  EXPECT_EQ(wounds(), 1U);
  ASSERT_EQ(driver.document().value().current().skin_zones.size(), 1U);
  driver.window().findChild<QAction*>("add_island")->trigger();
  take_up("ellipse");
  for (const Point& p : {Point{-1, 0}, Point{1, 0}, Point{0, 0.5}}) click(p);
  driver.settle();
  EXPECT_EQ(wound().islands_cm.size(), 1U);
}

TEST_F(TracingTest, ADraftWaitsWhileAnotherToolIsInHand) {
  take_up("corners");
  click({0, 0});
  click({4, 0});
  take_up("look");
  EXPECT_TRUE(desk().has_draft());
  EXPECT_TRUE(view.isVisible()) << "the start page does not cover it";
  take_up("corners");
  click({4, 4});
  QTest::keyClick(&view, Qt::Key_Return);
  driver.settle();
  ASSERT_EQ(wounds(), 1u);
  EXPECT_EQ(wound().outline_cm.size(), 3u);
  EXPECT_FALSE(desk().has_draft());
}

TEST_F(TracingTest, AHeldOutlineIsNotLostByAnotherTool) {
  take_up("corners");
  for (const Point p : {Point{0, 0}, Point{4, 4}, Point{4, 0}, Point{0, 4}}) click(p);
  QTest::keyClick(&view, Qt::Key_Return);
  ASSERT_TRUE(desk().held());
  take_up("points");
  EXPECT_TRUE(desk().held());
  EXPECT_EQ(desk().tool(), Tool::corners);
  desk().abandon();
  take_up("points");
  EXPECT_EQ(desk().tool(), Tool::points);
}

}  // namespace
}  // namespace drapewright::desktop_test
