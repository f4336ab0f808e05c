// The main job in the real window, by mouse and keys.
#include <gtest/gtest.h>

#include <QAction>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QSettings>
#include <QTableView>
#include <QTableWidget>
#include <QTest>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/window/drawing_pane.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

void choose_way(WindowDriver& driver, int index) {
  driver.find<QComboBox>("outline_way").setCurrentIndex(index);
}

void type_point(WindowDriver& driver, const QString& x, const QString& y) {
  const int row = driver.find<QTableView>("points").model()->rowCount() - 1;
  driver.type_cell("points", row, 0, x);
  driver.type_cell("points", row, 1, y);
}

int row_of_code(const desktop::MainWindow& window, const std::string& code) {
  const auto& findings = window.result().plan->findings;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].code == code) return static_cast<int>(i);
  }
  return -1;
}

TEST(Window, StartsEmptyAndSaysWhatToDo) {
  WindowDriver driver;
  EXPECT_FALSE(driver.document().is_modified());
  EXPECT_FALSE(driver.window().result().plan);
  EXPECT_EQ(driver.piece_count(), "Nothing planned yet");
  EXPECT_TRUE(driver.find<QWidget>("start_open").isVisible());
}

// 8 x 5 ellipse: area pi/4 x 8 x 5 = 31.4159 cm2 (Postepy Dermatol Alergol 2023;40(4):554); film
// with a border of 5 cm: the smallest rectangle is 18 x 15 cm (Steiner's formula's example).
TEST(Window, TypedEllipseIsPlanned) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  ASSERT_TRUE(driver.window().result().plan);
  EXPECT_EQ(driver.measure("Area"), "31.4 cm²");
  EXPECT_EQ(driver.measure("Length"), "8.0 cm");
  EXPECT_EQ(driver.measure("Width"), "5.0 cm");
  EXPECT_EQ(driver.measure("Head to foot"), "8.0 cm") << "the length lies towards 12 o'clock";
  EXPECT_EQ(driver.measure("Smallest rectangle"), "18.0 x 15.0 cm");
  EXPECT_EQ(driver.piece_count(), "1 piece of filler");
}

TEST(Window, DecimalCommaIsTaken) {
  WindowDriver driver;
  driver.draw_ellipse("8,4", "5,2");
  EXPECT_EQ(driver.measure("Length"), "8.4 cm");
  EXPECT_EQ(driver.measure("Width"), "5.2 cm");
}

TEST(Window, TypedCornersArePlanned) {
  WindowDriver driver;
  choose_way(driver, 2);
  type_point(driver, "0", "0");
  type_point(driver, "6", "0");
  EXPECT_FALSE(driver.document().has_wounds()) << "two points are no outline yet";
  type_point(driver, "6", "4");
  EXPECT_EQ(driver.measure("Area"), "12.0 cm²");
  type_point(driver, "0", "4,0");
  EXPECT_EQ(driver.measure("Area"), "24.0 cm²");
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(driver.measure("Area"), "12.0 cm²");
}

TEST(Window, PastedCoordinatesArePlanned) {
  WindowDriver driver;
  choose_way(driver, 3);
  auto& text = driver.find<QWidget>("pasted");
  text.setFocus();
  QGuiApplication::clipboard()->setText("x;y\n0;0\n60,0;0\n60;40\n0;40");
  QTest::keySequence(&text, QKeySequence::Paste);
  driver.find<QComboBox>("paste_unit").setCurrentIndex(1);  // mm
  driver.click("use_pasted");
  EXPECT_EQ(driver.measure("Area"), "24.0 cm²");
}

TEST(Window, SettingsChangeThePlanAtOnce) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  driver.type("border_cm", "4");
  EXPECT_EQ(driver.measure("Smallest rectangle"), "16.0 x 13.0 cm");
  const double filler = driver.window().result().plan->fill.area_cm2;
  driver.type("inset_cm", "0.5");
  EXPECT_LT(driver.window().result().plan->fill.area_cm2, filler);
  EXPECT_EQ(driver.measure("Applications"), "5");
  driver.type("change_every_h", "48");
  EXPECT_EQ(driver.measure("Applications"), "7");
  driver.type("course_days", "7");
  EXPECT_EQ(driver.measure("Applications"), "4");
}

TEST(Window, ThePlanFollowsWhileTyping) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  driver.type_only("border_cm", "4");
  driver.settle();
  EXPECT_EQ(driver.measure("Smallest rectangle"), "16.0 x 13.0 cm");
}

TEST(Window, UndoAndRedoBringTheFiguresBack) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  driver.type("border_cm", "4");
  driver.press(QKeySequence::Undo);
  EXPECT_EQ(driver.measure("Smallest rectangle"), "18.0 x 15.0 cm");
  driver.press(QKeySequence("Ctrl+Shift+Z"));
  EXPECT_EQ(driver.measure("Smallest rectangle"), "16.0 x 13.0 cm");
  driver.press(QKeySequence::Undo);
  driver.press(QKeySequence::Undo);
  EXPECT_FALSE(driver.document().has_wounds());
  EXPECT_FALSE(driver.document().is_modified());
  EXPECT_EQ(driver.piece_count(), "Nothing planned yet");
}

TEST(Window, ABridgeToThePortIsOneMorePieceAndCanBeTakenBack) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  ASSERT_EQ(driver.piece_count(), "1 piece of filler");
  EXPECT_EQ(driver.measure("Bridge to the port"), QString());
  driver.click("bridge_wanted");
  driver.settle();
  EXPECT_TRUE(driver.document().value().dressing.bridge_wanted);
  ASSERT_TRUE(driver.window().result().plan);
  ASSERT_EQ(driver.window().result().plan->drapes.front().bridges.size(), 1U);
  EXPECT_TRUE(driver.window().result().plan->drapes.front().port.on_bridge);
  EXPECT_EQ(driver.piece_count(), "2 pieces of filler");
  EXPECT_TRUE(driver.measure("Bridge to the port").endsWith(" cm"));
  driver.press(QKeySequence::Undo);
  driver.settle();
  EXPECT_FALSE(driver.find<QCheckBox>("bridge_wanted").isChecked());
  EXPECT_EQ(driver.piece_count(), "1 piece of filler");
  EXPECT_TRUE(driver.document().has_wounds()) << "only the bridge is taken back";
}

TEST(Window, DepthMakesLayers) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  driver.type("filler_thickness_cm", "1");
  driver.type("depth_cm", "2.5");
  EXPECT_EQ(driver.piece_count(), "3 pieces of filler");
}

TEST(Window, CautionsAreAskedForAndKept) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  driver.click("cautions_reviewed");
  EXPECT_TRUE(driver.document().value().cautions.reviewed);
  driver.click("exposed-vessels");
  ASSERT_EQ(driver.document().value().cautions.present.size(), 1U);
  EXPECT_EQ(driver.window().result().plan->findings.front().severity, dressing::Severity::stop);
  driver.press(QKeySequence::Undo);
  EXPECT_FALSE(driver.find<QCheckBox>("exposed-vessels").isChecked());
}

TEST(Window, FaultyOutlineIsAStopAndNoFigureStays) {
  WindowDriver driver;
  choose_way(driver, 2);
  for (const auto& [x, y] : {std::pair("0", "0"), {"6", "5"}, {"6", "0"}, {"0", "4"}}) {
    type_point(driver, x, y);
  }
  EXPECT_FALSE(driver.window().result().plan);
  EXPECT_EQ(driver.measure("Area"), QString()) << "the figures of the triangle before are gone";
  const auto& findings = driver.find<QTableWidget>("findings");
  ASSERT_EQ(findings.rowCount(), 1);
  EXPECT_EQ(findings.item(0, 0)->text(), "Stop");
}

// The demo cases were assessed long before today, whenever that is.
TEST(Window, OldAssessmentIsPointedOut) {
  WindowDriver driver;
  ASSERT_TRUE(driver.open_demo_file("plain-heel.json"));
  EXPECT_GE(row_of_code(driver.window(), "assessment-old"), 0);
  WindowDriver fresh;
  fresh.draw_ellipse("8", "5");
  EXPECT_EQ(row_of_code(fresh.window(), "assessment-old"), -1) << "a new case is of today";
}

TEST(Window, SelectedFindingShowsItsPlace) {
  WindowDriver driver;
  ASSERT_TRUE(driver.open_demo_file("film-cut-short.json"));
  const auto& findings = driver.window().result().plan->findings;
  auto& table = driver.find<QTableWidget>("findings");
  ASSERT_EQ(table.rowCount(), static_cast<int>(findings.size()));
  const int row = row_of_code(driver.window(), "border-short");
  ASSERT_GE(row, 0);
  ASSERT_TRUE(findings[static_cast<std::size_t>(row)].where_cm);
  const QImage before = driver.window().plan_view().grab().toImage();
  QTest::mouseClick(table.viewport(), Qt::LeftButton, {},
                    table.visualItemRect(table.item(row, 1)).center());
  const QImage after = driver.window().plan_view().grab().toImage();
  EXPECT_NE(before, after) << "a mark appears";
  const QPointF at =
      driver.window().plan_view().to_pixels(*findings[static_cast<std::size_t>(row)].where_cm);
  EXPECT_TRUE(QRectF(driver.window().plan_view().rect()).contains(at));
}

TEST(Layout, OfTheWindowIsKeptFromRunToRun) {
  QSize size;
  {
    desktop::MainWindow window("2026-05-04");
    window.keep_layout();
    window.show();
    window.resize(window.size() - QSize(60, 40));
    QCoreApplication::processEvents();
    size = window.size();
    window.drawing().section_switch().setChecked(false);
    window.close();
  }
  desktop::MainWindow window("2026-05-04");
  window.keep_layout();
  window.show();
  QCoreApplication::processEvents();
  EXPECT_EQ(window.size(), size);
  EXPECT_FALSE(window.drawing().section_switch().isChecked());
  QSettings().clear();
}

}  // namespace
}  // namespace drapewright::desktop_test
