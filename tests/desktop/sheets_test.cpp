// The page of the sheets to open, in the real window: what it shows, choosing, searching.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QTest>

#include "app/desktop/sheets/choice_table.h"
#include "app/desktop/sheets/cut_view.h"
#include "app/desktop/sheets/sheets_page.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

constexpr int patience_ms = 10000;

struct SheetsTest : testing::Test {
  SheetsTest() {
    page.findChild<QSpinBox*>("cut_seconds")->setValue(0);
    driver.draw_ellipse("8", "5");
    driver.find<QWidget>("sheet_choices");  // brings the page to the front
    wait();
  }

  /// Until the plan is there and the search is over.
  void wait() {
    driver.settle();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !page.is_searching(); }, patience_ms));
  }
  const dressing::Plan& plan() { return *driver.window().result().plan; }
  const std::vector<std::string>& items() {
    return driver.document().value().dressing.filler_items;
  }
  int row_of(const QString& words) {
    for (int row = 0; row < table.rowCount(); ++row) {
      if (table.item(row, 0)->text().contains(words)) return row;
    }
    return -1;
  }
  void click_row(const QString& words) {
    const QModelIndex cell = table.model()->index(row_of(words), 0);
    table.scrollTo(cell);
    QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, table.visualRect(cell).center());
    wait();
  }

  WindowDriver driver;
  desktop::SheetsPage& page = driver.window().sheets();
  desktop::ChoiceTable& table = page.table();
};

TEST_F(SheetsTest, ShowsTheLayoutAndAllSizesSideBySide) {
  EXPECT_EQ(plan().sheet_comparison.at(0).choices.size(), 4U);
  EXPECT_GE(row_of("Any of 3 sizes"), 0);
  EXPECT_GE(row_of("Filler sheet 30 x 20"), 0);
  EXPECT_TRUE(page.view().accessibleDescription().contains("holds: 1.1"))
      << page.view().accessibleDescription().toStdString();
  EXPECT_TRUE(table.item(row_of("Any of 3 sizes"), 0)->text().startsWith("\u25cf"));
}

TEST_F(SheetsTest, AClickOnARowIsAStepThatTheMaterialsFollow) {
  const int steps = driver.document().undo_stack().count();
  click_row("Filler sheet 20 x 12");
  ASSERT_EQ(items().size(), 1U);
  EXPECT_EQ(driver.document().undo_stack().count(), steps + 1);
  ASSERT_EQ(plan().cut_layout.size(), 1U);
  EXPECT_EQ(plan().cut_layout[0].item, items()[0]);
  EXPECT_TRUE(table.item(row_of("Filler sheet 20 x 12"), 0)->text().startsWith("\u25cf"));
  driver.press(QKeySequence::Undo);
  wait();
  EXPECT_TRUE(items().empty());
  EXPECT_NE(plan().cut_layout[0].length_cm, 20);
}

TEST_F(SheetsTest, EnterChoosesAndTheFirstRowLeavesItToTheProgram) {
  table.setFocus();
  table.setCurrentCell(row_of("Filler sheet 30 x 20"), 0);
  QTest::keyClick(&table, Qt::Key_Return);
  wait();
  ASSERT_EQ(items().size(), 1U);
  click_row("Any of 3 sizes");
  EXPECT_TRUE(items().empty());
}

TEST_F(SheetsTest, ChoosingWhatIsChosenIsNoStep) {
  const int steps = driver.document().undo_stack().count();
  click_row("Any of 3 sizes");
  EXPECT_EQ(driver.document().undo_stack().count(), steps);
}

TEST_F(SheetsTest, ALongSearchCanBeStoppedAndKeepsTheBest) {
  auto& seconds = driver.find<QSpinBox>("cut_seconds");
  seconds.setFocus();
  seconds.selectAll();
  QTest::keyClicks(&seconds, "600");
  QTest::keyClick(&seconds, Qt::Key_Return);
  ASSERT_TRUE(page.is_searching());
  EXPECT_TRUE(driver.find<QPushButton>("cut_stop").isEnabled());
  QTest::mouseClick(&driver.find<QPushButton>("cut_stop"), Qt::LeftButton);
  wait();
  EXPECT_FALSE(plan().cut_layout.empty());
  EXPECT_EQ(driver.find<QLabel>("cut_state").text(), "The best way found.");
  seconds.selectAll();
  QTest::keyClicks(&seconds, "0");
  QTest::keyClick(&seconds, Qt::Key_Return);
}

TEST_F(SheetsTest, AnEditWhileItSearchesShowsTheNewPlan) {
  page.findChild<QSpinBox*>("cut_seconds")->setValue(600);
  driver.type("length_cm", "9");
  EXPECT_EQ(driver.window().result().planned, driver.document().shared());
  page.findChild<QPushButton*>("cut_stop")->click();
}

}  // namespace
}  // namespace drapewright::desktop_test
