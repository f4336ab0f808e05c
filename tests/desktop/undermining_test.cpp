// Undermining and tunnels, typed into their tables in the real window.
#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QTest>

#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

struct UnderminingTest : testing::Test {
  UnderminingTest() { driver.draw_ellipse("8", "5"); }

  const wound::Wound& wound() { return driver.document().value().current().wounds.front(); }
  void type_row(const QString& table, const QStringList& cells) {
    const int row = driver.find<QTableView>(table).model()->rowCount() - 1;
    for (int i = 0; i < cells.size(); ++i) driver.type_cell(table, row, i, cells[i]);
  }
  void choose(const QString& table, int row, int column = 0) {
    auto& view = driver.find<QTableView>(table);
    view.setFocus();
    view.setCurrentIndex(view.model()->index(row, column));
  }
  bool is_said(const QString& words) {
    for (const auto* label : driver.window().findChildren<QLabel*>()) {
      if (label->isVisible() && label->text().contains(words)) return true;
    }
    return false;
  }
  bool is_found(const std::string& code) {
    for (const auto& finding : driver.window().result().plan->findings) {
      if (finding.code == code) return true;
    }
    return false;
  }

  WindowDriver driver;
};

TEST_F(UnderminingTest, ARangeCountsOnceItIsComplete) {
  driver.type("depth_cm", "2");
  const double filler = driver.window().result().plan->fill.area_cm2;
  const int steps = driver.document().undo_stack().count();
  type_row("undermining", {"10", "2"});
  EXPECT_TRUE(wound().undermining.empty()) << "how far is not known yet";
  EXPECT_TRUE(is_said("Missing: extent cm"));
  driver.type_cell("undermining", 0, 2, "1,5");
  ASSERT_EQ(wound().undermining.size(), 1U);
  EXPECT_EQ(wound().undermining.front(), (wound::Undermining{10, 2, 1.5, {}}));
  EXPECT_EQ(driver.document().undo_stack().count(), steps + 1) << "one step for the row";
  EXPECT_GT(driver.window().result().plan->fill.area_cm2, filler) << "the lowest layer reaches in";
  choose("undermining", 0);
  EXPECT_TRUE(is_said("10 to 2 o'clock, clockwise past 12: 4 h of the clock"));
  driver.press(QKeySequence::Undo);
  EXPECT_TRUE(wound().undermining.empty());
  EXPECT_NEAR(driver.window().result().plan->fill.area_cm2, filler, 1e-9);
  driver.press(QKeySequence("Ctrl+Shift+Z"));
  EXPECT_EQ(wound().undermining.size(), 1U);
}

TEST_F(UnderminingTest, ACellIsChangedAndRefusedInWords) {
  type_row("undermining", {"3", "6", "2"});
  driver.type_cell("undermining", 0, 1, "7");
  EXPECT_EQ(wound().undermining.front().to_clock, 7);
  for (const char* wrong : {"13", "0", "-2", "six"}) {
    driver.type_cell("undermining", 0, 1, wrong);
    EXPECT_EQ(wound().undermining.front().to_clock, 7) << wrong;
    EXPECT_TRUE(is_said(QString("“%1” is not").arg(wrong))) << wrong;
    EXPECT_TRUE(is_said("kept 7")) << wrong;
  }
  driver.type_cell("undermining", 0, 2, "31");
  EXPECT_TRUE(is_said("above 0 to 30 cm"));
  driver.type_cell("undermining", 0, 2, "2 mm");
  EXPECT_EQ(wound().undermining.front().extent_cm, 2) << "another unit is refused";
}

TEST_F(UnderminingTest, KeysTypeWalkAndRemove) {
  auto& table = driver.find<QTableView>("undermining");
  driver.click("add_undermining");
  for (const char* text : {"1", "4", "2"}) {
    auto* cell = table.viewport()->findChild<QLineEdit*>();
    ASSERT_NE(cell, nullptr) << text;
    QTest::keyClicks(cell, text);
    QTest::keyClick(cell, *text == '2' ? Qt::Key_Return : Qt::Key_Tab);
    QTest::qWait(1);
  }
  driver.settle();
  ASSERT_EQ(wound().undermining.size(), 1U);
  EXPECT_EQ(wound().undermining.front(), (wound::Undermining{1, 4, 2, {}}));
  choose("undermining", 0);
  QTest::keyClick(&table, Qt::Key_Delete);
  driver.settle();
  EXPECT_TRUE(wound().undermining.empty());
}

TEST_F(UnderminingTest, WhatTheFileHoldsBesideTheNumbersIsKept) {
  driver.document().edit("test", {}, [](wound::Case& value) {
    wound::Undermining range{3, 6, 2, {}};
    range.extra["probed_by"] = "\"own\"";
    value.current().wounds.front().undermining.push_back(range);
  });
  driver.settle();
  driver.type_cell("undermining", 0, 2, "3");
  EXPECT_EQ(wound().undermining.front().extent_cm, 3);
  EXPECT_EQ(wound().undermining.front().extra.size(), 1U);
}

TEST_F(UnderminingTest, ATunnelStopsThePlanUntilItWasExplored) {
  type_row("tunnels", {"5", "4"});
  ASSERT_EQ(wound().tunnels.size(), 1U);
  EXPECT_EQ(wound().tunnels.front(), (wound::Tunnel{5, 4, false, {}}));
  EXPECT_TRUE(is_found("tunnel-unexplored"));
  auto& table = driver.find<QTableView>("tunnels");
  choose("tunnels", 0, 2);
  QTest::keyClick(&table, Qt::Key_Space);
  driver.settle();
  EXPECT_TRUE(wound().tunnels.front().explored);
  EXPECT_FALSE(is_found("tunnel-unexplored"));
  EXPECT_EQ(driver.window().result().plan->fill.strips.size(), 1U);
  driver.press(QKeySequence::Undo);
  EXPECT_FALSE(wound().tunnels.front().explored);
  driver.click("remove_tunnels");
  EXPECT_TRUE(wound().tunnels.empty());
}

TEST_F(UnderminingTest, EachWoundHasItsOwn) {
  ASSERT_TRUE(driver.open_demo_file("pocket-and-tunnel.json"));
  const auto& table = driver.find<QTableView>("undermining");
  EXPECT_EQ(table.model()->rowCount(), static_cast<int>(wound().undermining.size()) + 1);
  EXPECT_EQ(driver.find<QTableView>("tunnels").model()->rowCount(),
            static_cast<int>(wound().tunnels.size()) + 1);
  ASSERT_TRUE(driver.open_demo_file("plain-heel.json"));
  EXPECT_EQ(table.model()->rowCount(), 1);
}

}  // namespace
}  // namespace drapewright::desktop_test
