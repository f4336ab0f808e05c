// Writing down what went in and what came out.
#include <gtest/gtest.h>

#include <QDateEdit>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>
#include <algorithm>

#include "app/desktop/document/case_document.h"
#include "app/desktop/panels/record_page.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

struct RecordTest : testing::Test {
  void SetUp() override {
    driver.draw_ellipse("8", "5");
    driver.find<QWidget>("record_in");
  }
  QString text(const char* name) { return driver.find<QLabel>(name).text(); }
  QString cell(int row, int column) {
    return driver.find<QTableWidget>("record_table").item(row, column)->text();
  }
  bool has_finding(const char* code) {
    const auto& findings = driver.window().result().plan->findings;
    return std::ranges::find(findings, code, &dressing::Finding::code) != findings.end();
  }
  /// @return what was asked
  QString put_on(const QString& answer) {
    return answering("record_doubt", clicking(answer), [&] { driver.click("record_put_on"); });
  }
  const auto& applications() { return driver.document().value().applications; }

  WindowDriver driver;
};

TEST_F(RecordTest, TakesThePlannedCountOver) {
  const int planned = driver.window().result().plan->fill.piece_count;
  driver.click("record_put_on");
  ASSERT_EQ(applications().size(), 1u);
  EXPECT_EQ(applications()[0].pieces_placed, planned);
  EXPECT_TRUE(text("record_due").contains("Next change: ")) << text("record_due").toStdString();
  EXPECT_TRUE(text("record_due").contains("in 3 days"));
  EXPECT_EQ(cell(0, 4), "still on");
}

TEST_F(RecordTest, AChangeThatDiffersIsAStop) {
  driver.type("record_in", "3");
  driver.click("record_put_on");
  driver.settle();
  EXPECT_FALSE(has_finding("count-mismatch"));
  driver.type("record_out", "2");
  EXPECT_TRUE(text("record_advice").startsWith("STOP. 3 pieces went in and 2 came out"))
      << text("record_advice").toStdString();
  driver.type("record_in", "2");
  driver.type("record_note", "edge moist");
  put_on("Cancel");
  EXPECT_EQ(applications().size(), 1u) << "a difference is asked about";
  EXPECT_TRUE(put_on("Write it down").contains("3 pieces went in and 2 came out"));
  driver.settle();
  ASSERT_EQ(applications().size(), 2u);
  EXPECT_EQ(applications()[0].pieces_removed, 2);
  EXPECT_EQ(applications()[1].note, "edge moist");
  EXPECT_TRUE(has_finding("count-mismatch"));
  EXPECT_TRUE(cell(0, 4).startsWith("DIFFERS"));
}

TEST_F(RecordTest, AsksWhereNothingWasCountedOut) {
  driver.click("record_put_on");
  EXPECT_TRUE(put_on("Cancel").contains("was not counted"));
  EXPECT_EQ(applications().size(), 1u);
}

TEST_F(RecordTest, AsksWhereThePlanSaysStop) {
  driver.document().edit("tunnel", {}, [](wound::Case& value) {
    value.current().wounds[0].tunnels = {{.clock = 2, .length_cm = 3}};
  });
  driver.settle();
  EXPECT_TRUE(put_on("Cancel").contains("STOP"));
  EXPECT_TRUE(applications().empty());
}

TEST_F(RecordTest, EndsACourse) {
  driver.type("record_in", "3");
  driver.click("record_put_on");
  EXPECT_FALSE(driver.find<QPushButton>("record_taken_off").isEnabled()) << "nothing counted out";
  driver.type("record_out", "3");
  driver.click("record_taken_off");
  EXPECT_EQ(applications().size(), 1u);
  EXPECT_TRUE(text("record_due").contains("no dressing is on"));
  EXPECT_FALSE(driver.find<QWidget>("record_out").isEnabled());
}

TEST_F(RecordTest, EveryStepIsUndone) {
  const auto before = driver.document().value();
  driver.type("record_in", "3");
  driver.click("record_put_on");
  driver.type("record_out", "3");
  driver.click("record_taken_off");
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(applications()[0].pieces_removed, std::nullopt);
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(driver.document().value(), before);
  EXPECT_TRUE(text("record_due").startsWith("No dressing is written down yet"));
}

TEST_F(RecordTest, FollowsTheDayOvernight) {
  driver.click("record_put_on");
  auto* page = driver.window().findChild<desktop::RecordPage*>();
  const QDate tomorrow = QDate::currentDate().addDays(1);
  page->set_today(tomorrow.toString(Qt::ISODate).toStdString());
  EXPECT_TRUE(text("record_due").contains("in 2 days")) << text("record_due").toStdString();
  EXPECT_EQ(driver.find<QDateEdit>("record_day").date(), tomorrow);
  driver.find<QDateEdit>("record_day").setDate(tomorrow.addDays(5));
  page->set_today(tomorrow.addDays(1).toString(Qt::ISODate).toStdString());
  EXPECT_EQ(driver.find<QDateEdit>("record_day").date(), tomorrow.addDays(5)) << "chosen by hand";
}

TEST_F(RecordTest, RefusesADayBeforeTheLastDressing) {
  driver.click("record_put_on");
  auto& day = driver.find<QWidget>("record_day");
  QTest::keyClick(&day, Qt::Key_A, Qt::ControlModifier);
  QTest::keyClicks(&day, "2020-01-01");
  QTest::keyClick(&day, Qt::Key_Tab);
  driver.click("record_put_on");
  EXPECT_EQ(applications().size(), 1u);
  EXPECT_TRUE(text("record_advice").contains("before the last dressing"))
      << text("record_advice").toStdString();
}

}  // namespace
}  // namespace drapewright::desktop_test
