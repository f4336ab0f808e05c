// Laying the section through the drawing, by mouse and keys, in the real window.
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QMouseEvent>
#include <QTest>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/section/section_view.h"
#include "app/desktop/tools/section_tool.h"
#include "app/desktop/window/drawing_pane.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using geometry::Point;
using geometry::Segment;

struct SectionTest : testing::Test {
  SectionTest() {
    driver.draw_ellipse("12", "8");
    view.fit();
  }

  void drag(Point from, Point to) {
    QTest::mousePress(&view, Qt::LeftButton, {}, view.to_pixels(from).toPoint());
    const QPointF at = view.to_pixels(to);
    QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
    QApplication::sendEvent(&view, &move);
  }
  void release(Point at) {
    QTest::mouseRelease(&view, Qt::LeftButton, {}, view.to_pixels(at).toPoint());
  }
  Segment line() { return *section.line(); }
  void focus_end_a() {
    view.setFocus(Qt::OtherFocusReason);
    while (!view.accessibleName().contains("end A")) QTest::keyClick(&view, Qt::Key_Tab);
  }

  WindowDriver driver;
  desktop::PlanView& view = driver.window().plan_view();
  desktop::SectionView& section = driver.window().drawing().section();
};

TEST_F(SectionTest, CutsAlongTheLengthAtFirst) {
  ASSERT_EQ(section.section().cavities.size(), 1U);
  EXPECT_NEAR(section.section().cavities[0].span.length_cm(), 12, 0.01);
  EXPECT_FALSE(section.drawing().layers.empty());
}

TEST_F(SectionTest, FollowsAnEndThatIsDragged) {
  const Segment before = line();
  const Point to = before.from + Point{3, 9};
  drag(before.from, to);
  EXPECT_NEAR(line().from.y, to.y, 0.2) << "while it is dragged";
  EXPECT_EQ(line().to, before.to);
  release(to);
  EXPECT_NEAR(line().from.x, to.x, 0.2);
  EXPECT_EQ(driver.document().undo_stack().count(), 1) << "the outline: no step of its own";
}

TEST_F(SectionTest, EscapeLaysItBack) {
  const Segment before = line();
  drag(before.to, before.to + Point{2, -3});
  EXPECT_NE(line(), before);
  QTest::keyClick(&view, Qt::Key_Escape);
  EXPECT_EQ(line(), before);
}

TEST_F(SectionTest, IsMovedAsAWholeBetweenItsEnds) {
  const Segment before = line();
  const Point grasped = before.from + 0.15 * (before.to - before.from);  // beside the port
  drag(grasped, grasped + Point{0, 2});
  release(grasped + Point{0, 2});
  EXPECT_NEAR(line().from.y - before.from.y, 2, 0.2);
  EXPECT_NEAR(line().to.y - before.to.y, 2, 0.2);
}

TEST_F(SectionTest, KeysMoveAnEndAndLayTheUsualLineAgain) {
  const Segment before = line();
  focus_end_a();
  QTest::keyClick(&view, Qt::Key_Up);
  EXPECT_NEAR(line().from.y, before.from.y + 0.1, 1e-9);
  QTest::keyClick(&view, Qt::Key_Left, Qt::ShiftModifier);
  EXPECT_NEAR(line().from.x, before.from.x - 1, 1e-9);
  QTest::keyClick(&view, Qt::Key_Delete);
  EXPECT_EQ(line(), before);
}

TEST_F(SectionTest, StaysWhereItWasLaidWhenTheCaseChanges) {
  const Segment before = line();
  focus_end_a();
  QTest::keyClick(&view, Qt::Key_Up, Qt::ShiftModifier);
  const Segment laid = line();
  driver.draw_ellipse("13", "8");
  EXPECT_EQ(line(), laid);
  driver.open_demo_file("plain-heel.json");
  EXPECT_NE(line(), laid) << "another case";
  EXPECT_NE(line(), before);
}

TEST_F(SectionTest, CanBeHidden) {
  driver.window().drawing().section_switch().trigger();
  EXPECT_FALSE(section.isVisible());
  EXPECT_FALSE(driver.window().drawing().section_tool().line());
  driver.window().drawing().section_switch().trigger();
  EXPECT_TRUE(section.isVisible());
  EXPECT_TRUE(driver.window().drawing().section_tool().line());
}

TEST_F(SectionTest, SaysWhatMustBeKnownToReadIt) {
  EXPECT_TRUE(driver.find<QLabel>("section_notes").text().contains("thicker than they are"));
  const Segment before = line();
  drag(before.from + 0.15 * (before.to - before.from), Point{before.from.x, 30});
  EXPECT_TRUE(driver.find<QLabel>("section_notes").text().contains("No wound lies on this line."));
}

}  // namespace
}  // namespace drapewright::desktop_test
