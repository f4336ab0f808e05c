// The rate of extra dressings that follows from the record: taken over, kept, taken back.
#include <gtest/gtest.h>

#include <QDoubleSpinBox>
#include <QPushButton>

#include "tests/desktop/stores/stores_window_driver.h"

namespace drapewright::desktop_test {
namespace {

class RecordedRate : public StoresWindowTest {
 protected:
  void put_records() {
    QFile file(folder_.filePath("plain-heel.json"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    QByteArray text = file.readAll();
    file.close();
    ASSERT_FALSE(text.contains("applications"));
    // Every second day instead of every third, since before the forecast.
    QByteArray records;
    for (const char* day : {"2026-02-22", "2026-02-24", "2026-02-26", "2026-02-28", "2026-03-02"}) {
      records += QByteArray(records.isEmpty() ? "" : ",") + "{\"date\": \"" + day +
                 "\", \"pieces_placed\": 1}";
    }
    text.insert(text.lastIndexOf('}'), ", \"applications\": [" + records + "]\n");
    put("plain-heel.json", text);
  }
  static QDoubleSpinBox& field(const StoresWindow& window) {
    return *window.findChild<QDoubleSpinBox*>("extra_dressings_per_week");
  }
  static QPushButton& button(const StoresWindow& window, const char* name) {
    return *window.findChild<QPushButton*>(name);
  }
  /// Takes the recorded rate over by a click and waits for the forecast with it.
  void take_over() {
    put_records();
    open();
    QSignalSpy shown(&window_, &StoresWindow::shown_result);
    QTest::mouseClick(&button(window_, "stores_correct"), Qt::LeftButton);
    ASSERT_TRUE(shown.wait(patience_ms));
  }
};

TEST_F(RecordedRate, IsTakenOver) {
  put_records();
  open();
  EXPECT_TRUE(words("stores_recorded").contains("changes recorded"));
  auto* field = window_.findChild<QDoubleSpinBox*>("extra_dressings_per_week");
  const double before = field->value();
  QSignalSpy shown(&window_, &StoresWindow::shown_result);
  QTest::mouseClick(window_.findChild<QPushButton*>("stores_correct"), Qt::LeftButton);
  EXPECT_GT(field->value(), before);
  EXPECT_TRUE(shown.wait(patience_ms));
  EXPECT_FALSE(window_.findChild<QPushButton*>("stores_correct")->isEnabled());
  auto& recorded = page<SortedTable>("Recorded");
  ASSERT_GT(recorded.model()->rowCount(), 0);
  EXPECT_GT(recorded.table().rows[0][3].value.toDouble(), 0);  // more than planned
  auto* back = window_.findChild<QPushButton*>("stores_correct_back");
  ASSERT_TRUE(back->isVisible());
  shown.clear();
  QTest::mouseClick(back, Qt::LeftButton);
  EXPECT_EQ(field->value(), before);
  EXPECT_TRUE(shown.wait(patience_ms));
  EXPECT_TRUE(window_.findChild<QPushButton*>("stores_correct")->isEnabled());
  EXPECT_FALSE(back->isVisible());
}

TEST_F(RecordedRate, IsRememberedAndTakenBackInALaterRun) {
  const double before = field(window_).value();
  take_over();
  const double taken = field(window_).value();
  ASSERT_GT(taken, before);
  window_.close();
  {
    StoresWindow later(window_.result()->forecast.first_day);
    later.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&later));
    // Before any folder is opened: in effect, said, and to be undone.
    EXPECT_EQ(field(later).value(), taken);
    EXPECT_TRUE(words("stores_recorded", later).contains("taken over from what was recorded"));
    EXPECT_FALSE(button(later, "stores_correct").isVisible());
    auto& back = button(later, "stores_correct_back");
    ASSERT_TRUE(back.isVisible());
    EXPECT_EQ(back.text(), QString("&Back to %1 a week").arg(before, 0, 'f', 2));
    // With the cases it was taken from it is still known as theirs.
    QSignalSpy shown(&later, &StoresWindow::shown_result);
    later.open_folder(folder_.path());
    ASSERT_TRUE(shown.wait(patience_ms));
    EXPECT_EQ(button(later, "stores_correct").text(), "This rate is taken over");
    ASSERT_TRUE(back.isVisible());
    shown.clear();
    back.setFocus();
    QTest::keyClick(&back, Qt::Key_Space);
    EXPECT_EQ(field(later).value(), before);
    ASSERT_TRUE(shown.wait(patience_ms));
    EXPECT_FALSE(back.isVisible());
    EXPECT_TRUE(button(later, "stores_correct").isEnabled());
  }
  const StoresWindow last(window_.result()->forecast.first_day);
  EXPECT_EQ(field(last).value(), before);
  EXPECT_TRUE(button(last, "stores_correct_back").isHidden());
}

TEST_F(RecordedRate, IsForgottenOnceAnotherIsTyped) {
  take_over();
  QSignalSpy shown(&window_, &StoresWindow::shown_result);
  auto& rate = field(window_);
  rate.setFocus();
  rate.selectAll();
  QTest::keyClicks(&rate, "3");
  QTest::keyClick(&rate, Qt::Key_Return);
  ASSERT_EQ(rate.value(), 3);
  ASSERT_TRUE(shown.wait(patience_ms));
  EXPECT_FALSE(button(window_, "stores_correct_back").isVisible());
  const StoresWindow later(window_.result()->forecast.first_day);
  EXPECT_LT(field(later).value(), 3);
  EXPECT_TRUE(button(later, "stores_correct_back").isHidden());
}

TEST_F(RecordedRate, GoesBackToTheUsersOwnHoweverOftenItWasTakenOver) {
  const double own = field(window_).value();
  take_over();
  // A change more: another rate is on offer.
  QFile file(folder_.filePath("plain-heel.json"));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  QByteArray text = file.readAll();
  file.close();
  text.replace("{\"date\": \"2026-03-02\"",
               "{\"date\": \"2026-03-01\", \"pieces_placed\": 1}, {\"date\": \"2026-03-02\"");
  put("plain-heel.json", text);
  open();
  auto& back = button(window_, "stores_correct_back");
  ASSERT_TRUE(button(window_, "stores_correct").isEnabled());
  ASSERT_TRUE(back.isVisible());
  QSignalSpy shown(&window_, &StoresWindow::shown_result);
  QTest::mouseClick(&button(window_, "stores_correct"), Qt::LeftButton);
  ASSERT_TRUE(shown.wait(patience_ms));
  QTest::mouseClick(&back, Qt::LeftButton);
  EXPECT_EQ(field(window_).value(), own);
}

TEST_F(RecordedRate, OfDamagedSettingsIsNotUsed) {
  const double standard = field(window_).value();
  for (const char* rubbish : {"often", "nan", "-1", "1e9"}) {
    QSettings().setValue("stores/extra_dressings_taken_over", rubbish);
    QSettings().setValue("stores/extra_dressings_before", 1);
    const StoresWindow window(day_number("2026-03-04").value());
    EXPECT_EQ(field(window).value(), standard) << rubbish;
    EXPECT_TRUE(button(window, "stores_correct_back").isHidden()) << rubbish;
  }
}

}  // namespace
}  // namespace drapewright::desktop_test
