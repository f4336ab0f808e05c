// Thousands of random presses, moves, keys and tools, with undo and redo between them. Whatever
// they make, the case stays one that can be saved, and undoing everything leads back to the start.
#include <gtest/gtest.h>

#include <QAction>
#include <QMouseEvent>
#include <QTest>
#include <QWheelEvent>
#include <cmath>
#include <random>
#include <vector>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/desktop/window/drawing_pane.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

class Monkey {
 public:
  Monkey(WindowDriver& driver, unsigned seed)
      : driver_(driver), view_(driver.window().plan_view()), random_(seed) {}

  void act() {
    switch (up_to(19)) {
      case 0:
        return driver_.window().drawing().desk().take_up(static_cast<desktop::Tool>(up_to(14)));
      case 1:
        return driver_.document().undo_stack().undo();
      case 2:
        return driver_.document().undo_stack().redo();
      case 3:
      case 4:
        return key();
      case 5:
        return wheel();
      case 6:
        return mouse(QEvent::MouseButtonDblClick, up_to(5) == 0 ? Qt::RightButton : Qt::LeftButton);
      case 7:
        return choose_target();
      case 8:
        return repair();
      default:
        return stroke();
    }
  }

 private:
  int up_to(int most) { return std::uniform_int_distribution<int>(0, most)(random_); }

  void send(QEvent::Type type, QPointF at, Qt::MouseButton button, Qt::MouseButtons down) {
    QMouseEvent event(type, at, view_.mapToGlobal(at), button, down, {});
    QApplication::sendEvent(&view_, &event);
  }
  QPointF anywhere() { return {double(up_to(view_.width())), double(up_to(view_.height()))}; }
  void mouse(QEvent::Type type, Qt::MouseButton button) {
    const QPointF at = anywhere();
    send(type, at, button, button);
    send(QEvent::MouseButtonRelease, at, button, Qt::NoButton);
  }
  /// A press, some way, and mostly a release.
  void stroke() {
    const auto button = up_to(9) == 0 ? Qt::RightButton : Qt::LeftButton;
    const std::vector<QPointF> way = up_to(2) == 0 ? zigzag() : round();
    send(QEvent::MouseMove, way.front(), Qt::NoButton, Qt::NoButton);
    send(QEvent::MouseButtonPress, way.front(), button, button);
    for (const QPointF& at : way) {
      send(QEvent::MouseMove, at, Qt::NoButton, button);
      if (up_to(200) == 0) QTest::keyClick(&view_, Qt::Key_Escape);
    }
    if (up_to(20) != 0) send(QEvent::MouseButtonRelease, way.back(), button, Qt::NoButton);
  }
  std::vector<QPointF> zigzag() {
    std::vector<QPointF> way{anywhere()};
    const int reach = up_to(1) == 0 ? 200 : 40;
    for (int i = up_to(8); i >= 0; --i) {
      way.push_back(way.back() + QPointF(up_to(2 * reach) - reach, up_to(2 * reach) - reach));
    }
    return way;
  }
  std::vector<QPointF> round() {
    const QPointF middle = anywhere();
    const double reach = 10 + up_to(120);
    const int points = 6 + up_to(20);
    std::vector<QPointF> way;
    for (int i = 0; i <= points; ++i) {
      const double angle = 6.28 * i / points, far = reach * (0.8 + up_to(4) / 10.0);
      way.push_back(middle + far * QPointF(std::cos(angle), std::sin(angle)));
    }
    return way;
  }
  void key() {
    constexpr Qt::Key keys[] = {
        Qt::Key_Left,   Qt::Key_Right,        Qt::Key_Up,     Qt::Key_Down,   Qt::Key_Space,
        Qt::Key_Return, Qt::Key_Backspace,    Qt::Key_Delete, Qt::Key_Insert, Qt::Key_Escape,
        Qt::Key_Comma,  Qt::Key_BracketRight, Qt::Key_0};
    const auto pressed = keys[up_to(static_cast<int>(std::size(keys)) - 1)];
    const int times = 1 + up_to(3);
    for (int i = 0; i < times; ++i) {
      QTest::keyClick(&view_, pressed, up_to(2) == 0 ? Qt::ShiftModifier : Qt::NoModifier);
    }
  }
  void wheel() {
    const QPointF at = anywhere();
    QWheelEvent event(at, view_.mapToGlobal(at), {}, {0, up_to(1) == 0 ? 120 : -120}, Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&view_, &event);
    if (up_to(6) == 0) view_.fit();
  }
  void choose_target() {
    constexpr const char* targets[] = {"add_wound", "add_island", "add_no_film", "add_no_port"};
    auto* action = driver_.window().findChild<QAction*>(targets[up_to(3)]);
    if (action->isEnabled()) action->trigger();
    driver_.window().drawing().desk().take_up(desktop::Tool::trace);
  }
  void repair() {
    auto& desk = driver_.window().drawing().desk();
    up_to(1) == 0 ? desk.keep_larger_loop() : desk.split_in_two();
  }

  WindowDriver& driver_;
  desktop::PlanView& view_;
  std::mt19937 random_;
};

class MonkeyTest : public testing::TestWithParam<unsigned> {};

TEST_P(MonkeyTest, LeavesACaseThatCanBeSavedAndUndoneToItsStart) {
  constexpr int acts = 1500;  // of about five events each
  WindowDriver driver;
  const bool opened = GetParam() % 2 == 0 || driver.open_demo_file("two-wounds-one-film.json");
  ASSERT_TRUE(opened);
  auto& undo = driver.document().undo_stack();
  const wound::Case start = driver.document().value();
  int most_steps = 0;
  Monkey monkey(driver, GetParam());
  for (int i = 0; i < acts; ++i) {
    monkey.act();
    most_steps = std::max(most_steps, undo.index());
    if (i % 25 == 0) QCoreApplication::processEvents();
    if (!driver.document().has_wounds()) continue;
    ASSERT_NO_THROW(wound::check(driver.document().value())) << "after act " << i;
  }
  const wound::Case end = driver.document().value();
  const int end_index = undo.index();
  while (undo.canUndo()) undo.undo();
  EXPECT_TRUE(driver.document().value() == start);
  while (undo.index() < end_index) undo.redo();
  EXPECT_TRUE(driver.document().value() == end);
  EXPECT_GT(most_steps, 5) << "something was made";
}

INSTANTIATE_TEST_SUITE_P(Seeds, MonkeyTest, testing::Values(1U, 2U, 3U, 4U));

}  // namespace
}  // namespace drapewright::desktop_test
