// Moving the port on the drawing, by mouse and keys, in the real window.
#include <gtest/gtest.h>

#include <QAction>
#include <QLabel>
#include <QMouseEvent>
#include <QTest>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/port_tool.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using geometry::Point;

struct PortTest : testing::Test {
  PortTest() {
    driver.draw_ellipse("12", "8");
    view.fit();
  }

  const dressing::Port& port(std::size_t film = 0) {
    return driver.window().result().plan->drapes.at(film).port;
  }
  const std::vector<Point>& places() { return driver.document().value().dressing.port_places_cm; }
  int steps() { return driver.document().undo_stack().count(); }
  void move_to(Point place) {
    const QPointF at = view.to_pixels(place);
    QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
    QApplication::sendEvent(&view, &move);
  }
  void press(Point place) {
    QTest::mousePress(&view, Qt::LeftButton, {}, view.to_pixels(place).toPoint());
  }
  void release(Point place) {
    QTest::mouseRelease(&view, Qt::LeftButton, {}, view.to_pixels(place).toPoint());
    driver.settle();
  }
  void drag(Point from, Point to) {
    press(from);
    move_to(from + 0.5 * (to - from));
    move_to(to);
    release(to);
  }
  bool is_said(const QString& words) {
    return driver.window().port_tool().words().join(" ").contains(words);
  }
  void expect_near(Point a, Point b, double by) {
    EXPECT_NEAR(a.x, b.x, by);
    EXPECT_NEAR(a.y, b.y, by);
  }

  WindowDriver driver;
  desktop::PlanView& view = driver.window().plan_view();
  const double pixel_cm = 2.0 / view.pixels_per_cm() + 0.01;  // whole pixels, places to 0.1 mm
};

TEST_F(PortTest, DroppedIsOneStepAndAChosenPlace) {
  const Point before = *port().centre_cm;
  const Point to = before + Point{0.5, 1.5};
  const int were = steps();
  drag(before, to);
  ASSERT_EQ(places().size(), 1U);
  expect_near(places().front(), to, pixel_cm);
  EXPECT_EQ(steps(), were + 1);
  EXPECT_TRUE(port().chosen);
  EXPECT_EQ(port().centre_cm, places().front());
  driver.press(QKeySequence::Undo);
  EXPECT_TRUE(places().empty());
  EXPECT_FALSE(port().chosen);
  driver.press(QKeySequence("Ctrl+Shift+Z"));
  EXPECT_EQ(places().size(), 1U);
}

TEST_F(PortTest, TheBaseIsAHandleToo) {
  const Point before = *port().centre_cm;
  const Point grasped = before + Point{0, 2};  // outside the aperture of 2 cm, on the base of 5 cm
  drag(grasped, grasped + Point{0.4, 0.6});
  ASSERT_EQ(places().size(), 1U);
  expect_near(places().front(), before + Point{0.4, 0.6}, pixel_cm);
}

TEST_F(PortTest, WhileItMovesTheRoomIsToldAndNothingIsChanged) {
  const Point before = *port().centre_cm;
  const auto shown = driver.document().shared();
  press(before);
  move_to(before + Point{0.5, 0});
  EXPECT_TRUE(is_said("Room on filler: "))
      << driver.window().port_tool().words().join(" ").toStdString();
  EXPECT_TRUE(is_said("The aperture of 2 cm fits."));
  EXPECT_TRUE(is_said("The base of 5 cm lies on film."));
  move_to(before + Point{3.5, 0});
  EXPECT_TRUE(is_said("does not lie wholly over filler"));
  move_to(before + Point{8.5, 0});
  EXPECT_TRUE(is_said("reaches beyond the film"));
  move_to(before + Point{12, 0});
  EXPECT_TRUE(is_said("Too far from the wound"));
  EXPECT_EQ(driver.document().shared(), shown);
  QTest::keyClick(&view, Qt::Key_Escape);
  EXPECT_TRUE(driver.window().port_tool().words().isEmpty());
  release(before);
  EXPECT_EQ(driver.document().shared(), shown) << "Escape leaves it where it was";
}

TEST_F(PortTest, WhatIsToldIsWhatThePlanThenSays) {
  const Point before = *port().centre_cm;
  press(before);
  const Point to = before + Point{1.2, 1.8};
  move_to(to);
  const QString words = driver.window().port_tool().words().front();
  release(to);
  const double told = words.section(' ', 3, 3).toDouble();
  EXPECT_NEAR(told, port().room.value, 0.01) << words.toStdString();
}

TEST_F(PortTest, OutOfReachItStaysWhereItWas) {
  const Point before = *port().centre_cm;
  const int were = steps();
  drag(before, before + Point{12, 0});
  EXPECT_TRUE(places().empty());
  EXPECT_EQ(steps(), were);
  EXPECT_TRUE(is_said("It stays where it was"));
}

TEST_F(PortTest, KeysMoveItAndTheirStepsAreOne) {
  const Point before = *port().centre_cm;
  const int were = steps();
  press(before);
  release(before);
  EXPECT_TRUE(places().empty()) << "a click chooses it and moves nothing";
  QTest::keyClick(&view, Qt::Key_Right);
  QTest::keyClick(&view, Qt::Key_Right);
  QTest::keyClick(&view, Qt::Key_Up, Qt::ShiftModifier);
  driver.settle();
  ASSERT_EQ(places().size(), 1U);
  expect_near(places().front(), before + Point{0.2, 1}, 0.011);
  EXPECT_EQ(steps(), were + 1);
  QTest::keyClick(&view, Qt::Key_Delete);
  driver.settle();
  EXPECT_TRUE(places().empty());
  EXPECT_FALSE(port().chosen);
}

TEST_F(PortTest, TheOtherFilmKeepsItsPlace) {
  driver.document().edit("test", {}, [](wound::Case& value) {
    auto other = value.current().wounds.front();
    other.id = "far";
    for (Point& p : other.outline_cm) p.x += 40;
    value.current().wounds.push_back(other);
    value.dressing.port_places_cm = {{40, 1}};
  });
  driver.settle();
  view.fit();
  const Point before = *port().centre_cm;
  drag(before, before + Point{0, -1.5});
  ASSERT_EQ(places().size(), 2U);
  EXPECT_EQ(places().front(), (Point{40, 1}));
  EXPECT_TRUE(port(0).chosen);
  EXPECT_TRUE(port(1).chosen);
  driver.window().findChild<QAction*>("automatic_ports")->trigger();
  driver.settle();
  EXPECT_TRUE(places().empty());
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(places().size(), 2U);
}

TEST_F(PortTest, TheSettingsSayThatItWasChosenAndTakeItBack) {
  const auto state = [&] { return driver.find<QLabel>("port_place").text(); };
  EXPECT_TRUE(state().contains("automatic"));
  const Point before = *port().centre_cm;
  drag(before, before + Point{1, 0});
  EXPECT_TRUE(state().contains("one chosen"));
  driver.click("automatic_port_place");
  EXPECT_TRUE(places().empty());
  EXPECT_TRUE(state().contains("automatic"));
}

}  // namespace
}  // namespace drapewright::desktop_test
