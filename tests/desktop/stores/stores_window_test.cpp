// The stores' window: a folder of cases, its tables and charts, by mouse and keys.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QHeaderView>
#include <QImage>
#include <QPrinter>
#include <QProgressBar>
#include <QPushButton>
#include <QWheelEvent>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <algorithm>
#include <array>

#include "tests/desktop/stores/stores_window_driver.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

TEST_F(StoresWindowTest, FitsASmallScreen) {
  auto* pages = window_.findChild<QTabWidget*>();
  pages->setCurrentWidget(&window_.shelf_page());
  auto* hint = window_.findChild<QWidget*>("shelf_empty");
  ASSERT_TRUE(QTest::qWaitFor([&] { return hint->isVisible(); }, patience_ms));
  QCoreApplication::sendPostedEvents();
  EXPECT_LE(window_.minimumSizeHint().width(), 1366);
}

TEST_F(StoresWindowTest, SaysWhatToDoFirst) {
  EXPECT_TRUE(words("stores_totals").contains("Open a folder of cases"));
}

TEST_F(StoresWindowTest, ListsEveryCaseAndTheReasonOfABrokenOne) {
  put("broken.json", "{ \"drapewright_case\": 1,, }");
  open();
  EXPECT_EQ(page<SortedTable>("Patients").model()->rowCount(), 3);
  EXPECT_TRUE(words("stores_totals").contains("3 cases"));
  EXPECT_TRUE(words("stores_totals").contains("1 not read"));
  auto& findings = page<SortedTable>("Findings");
  EXPECT_EQ(cell(findings, 0, 1), "broken.json");
  EXPECT_TRUE(cell(findings, 0, 2).contains("broken.json:1:"));
  EXPECT_TRUE(column(findings, 2).filter("2 pieces went in and 1 came out").size() == 1);
}

TEST_F(StoresWindowTest, SaysThatAFolderHoldsNoCases) {
  QSignalSpy shown(&window_, &StoresWindow::shown_result);
  const QTemporaryDir empty;
  window_.open_folder(empty.path());
  ASSERT_TRUE(shown.wait(patience_ms));
  EXPECT_TRUE(words("stores_totals").contains("No case file lies in this folder"));
}

TEST_F(StoresWindowTest, SortsNumbersAsNumbersByAClickOnTheTitle) {
  open();
  auto& table = page<SortedTable>("Items");
  auto* titles = table.horizontalHeader();
  const int expected = 3;
  const auto click = [&] {
    const QPoint at(titles->sectionViewportPosition(expected) + 10, titles->height() / 2);
    QTest::mouseClick(titles->viewport(), Qt::LeftButton, {}, at);
  };
  const auto values = [&] {
    std::vector<double> numbers;
    for (const QString& text : column(table, expected)) numbers.push_back(text.toDouble());
    return numbers;
  };
  click();
  auto first = values();
  EXPECT_TRUE(std::is_sorted(first.begin(), first.end()) ||
              std::is_sorted(first.rbegin(), first.rend()));
  click();
  auto second = values();
  std::reverse(first.begin(), first.end());
  EXPECT_EQ(first.front(), second.front());
  EXPECT_EQ(first.back(), second.back());
}

TEST_F(StoresWindowTest, DrawsUseWithItsBandsAndTheSameNumbersBelow) {
  open();
  auto& pane = page<ChartPane>("Use");
  pane.items().setCurrentText("Port with tubing");
  const auto series = pane.view().chart()->series();
  ASSERT_EQ(series.size(), 3);
  auto* line = qobject_cast<QLineSeries*>(series[2]);
  ASSERT_NE(line, nullptr);
  EXPECT_EQ(line->count(), 8);
  auto* wide = qobject_cast<QAreaSeries*>(series[0]);
  auto* narrow = qobject_cast<QAreaSeries*>(series[1]);
  for (int week = 0; week < 8; ++week) {
    EXPECT_LE(wide->lowerSeries()->at(week).y(), narrow->lowerSeries()->at(week).y());
    EXPECT_GE(wide->upperSeries()->at(week).y(), narrow->upperSeries()->at(week).y());
    EXPECT_NEAR(line->at(week).y(), cell(pane.table(), week, 1).toDouble(), 0.051);
  }
}

/// Where a week of the chart's last line is on the screen.
QPoint place_of_week(desktop::ChartView& view, int week) {
  auto* line = qobject_cast<QLineSeries*>(view.chart()->series().last());
  const QPointF on_chart = view.chart()->mapToPosition(line->at(week - 1), line);
  return view.mapFromScene(view.chart()->mapToScene(on_chart));
}

TEST_F(StoresWindowTest, TellsTheFiguresUnderTheMouse) {
  open();
  auto& pane = page<ChartPane>("Use");
  pane.items().setCurrentText("Port with tubing");
  QTest::qWait(50);
  auto& view = pane.view();
  // Anywhere above the week, not only on its line.
  QTest::mouseMove(view.viewport(), place_of_week(view, 1) + QPoint(2, -30));
  QTest::mouseMove(view.viewport(), place_of_week(view, 3) + QPoint(2, -30));
  QTRY_COMPARE_WITH_TIMEOUT(view.row(), 2, 2000);
  const QString told = words("chart_told", pane);
  EXPECT_TRUE(told.contains("Week from 2026-03-18")) << told.toStdString();
  EXPECT_TRUE(told.contains("Expected " + cell(pane.table(), 2, 1))) << told.toStdString();
  EXPECT_EQ(pane.table().currentIndex().row(), 2);
}

TEST_F(StoresWindowTest, PointsByKeysAndFromTheTable) {
  open();
  auto& pane = page<ChartPane>("Use");
  auto& view = pane.view();
  view.setFocus();
  for (int i = 0; i < 3; ++i) QTest::keyClick(&view, Qt::Key_Right);
  EXPECT_EQ(view.row(), 2);
  QTest::keyClick(&view, Qt::Key_Left);
  EXPECT_EQ(view.row(), 1);
  EXPECT_TRUE(view.accessibleDescription().contains("2026-03-11"));
  const QRect fifth = pane.table().visualRect(pane.table().model()->index(4, 0));
  QTest::mouseClick(pane.table().viewport(), Qt::LeftButton, {}, fifth.center());
  EXPECT_EQ(view.row(), 4);
  auto& cost = page<ChartPane>("Cost");
  cost.view().setFocus();
  QTest::keyClick(&cost.view(), Qt::Key_Down);
  EXPECT_TRUE(words("chart_told", cost).contains(cell(cost.table(), 0, 0)));
}

TEST_F(StoresWindowTest, ZoomsByWheelAndKeysAndShowsAllAgain) {
  open();
  auto& view = page<ChartPane>("Use").view();
  const auto weeks = [&] {
    auto* axis = qobject_cast<QValueAxis*>(view.chart()->axes(Qt::Horizontal).front());
    return axis->max() - axis->min();
  };
  const double whole = weeks();
  const auto turn = [&](int way) {
    const QPointF at = view.viewport()->rect().center();
    QWheelEvent event(at, view.viewport()->mapToGlobal(at), {}, {0, way}, Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(view.viewport(), &event);
  };
  turn(120);
  EXPECT_LT(weeks(), whole);
  turn(-120);
  turn(-120);  // no further out than the whole
  EXPECT_DOUBLE_EQ(weeks(), whole);
  view.setFocus();
  QTest::keyClick(&view, Qt::Key_Plus);
  EXPECT_LT(weeks(), whole);
  QTest::keyClick(&view, Qt::Key_0);
  EXPECT_DOUBLE_EQ(weeks(), whole);
  EXPECT_FALSE(view.chart()->isZoomed());
}

TEST_F(StoresWindowTest, LooksCloserWhenDraggedOver) {
  open();
  auto& view = page<ChartPane>("Use").view();
  QTest::qWait(50);
  const QRectF plot = view.chart()->plotArea();
  const QPoint from = view.mapFromScene(plot.center()), to = from + QPoint(80, 60);
  QTest::mousePress(view.viewport(), Qt::LeftButton, {}, from);
  QTest::mouseMove(view.viewport(), to);
  QTest::mouseRelease(view.viewport(), Qt::LeftButton, {}, to);
  EXPECT_TRUE(view.chart()->isZoomed());
}

TEST_F(StoresWindowTest, FollowsTheShelfAndOrders) {
  put("stock.csv", stock);
  EXPECT_EQ(window_.open_stock(folder_.filePath("stock.csv")), "");
  open();
  auto& pane = page<ChartPane>("Stock");
  pane.items().setCurrentText("Port with tubing");
  QStringList names;
  for (auto* series : pane.view().chart()->series()) names << series->name();
  EXPECT_TRUE(names.contains("reorder point"));
  EXPECT_TRUE(names.contains("delivered"));
  pane.items().setCurrentText("Film sheet 20 x 20 cm");
  names.clear();
  for (auto* series : pane.view().chart()->series()) names << series->name();
  EXPECT_TRUE(names.contains("past its date"));
  EXPECT_EQ(page<SortedTable>("Orders").model()->rowCount(), 2);
  EXPECT_TRUE(words("stores_totals").contains("Orders"));
}

TEST_F(StoresWindowTest, SaysRowAndColumnOfAFaultyStockList) {
  put("stock.csv", "item,on_hand\nFilm,many\n");
  EXPECT_TRUE(window_.open_stock(folder_.filePath("stock.csv"))
                  .contains("stock.csv:2:6: row 2, column on_hand"));
}

TEST_F(StoresWindowTest, SavesAChartAndItsNumbers) {
  open();
  auto& pane = page<ChartPane>("Cost");
  for (const char* name : {"cost.svg", "cost.png", "cost.csv"}) {
    EXPECT_EQ(pane.save_to(folder_.filePath(name)), "");
  }
  EXPECT_FALSE(QImage(folder_.filePath("cost.png")).isNull());
  QFile svg(folder_.filePath("cost.svg")), csv(folder_.filePath("cost.csv"));
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  const QByteArray drawn = svg.readAll();
  EXPECT_TRUE(drawn.contains("Cost by item"));
  ASSERT_TRUE(csv.open(QIODevice::ReadOnly));
  EXPECT_TRUE(csv.readAll().startsWith("Item,Expected use,Unit cost,Cost\r\n"));
  EXPECT_TRUE(pane.save_to(folder_.filePath("nowhere/cost.csv")).contains("cannot be written"));
}

TEST_F(StoresWindowTest, SavesTheLegendInWholeWords) {
  open();
  const QString path = folder_.filePath("use.svg");
  ASSERT_EQ(page<ChartPane>("Use").save_to(path), "");
  QFile svg(path);
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  const QByteArray drawn = svg.readAll();
  for (const char* words : {"90 % band", "50 % band", "expected"}) {
    EXPECT_TRUE(drawn.contains(QByteArray(">") + words)) << words;
  }
}

TEST_F(StoresWindowTest, PrintsAChart) {
  open();
  const QString path = folder_.filePath("use.pdf");
  QPrinter printer;
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(path);
  page<ChartPane>("Use").print_on(printer);
  QFile pdf(path);
  ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
  const QByteArray bytes = pdf.readAll();
  EXPECT_TRUE(bytes.startsWith("%PDF"));
  EXPECT_GT(bytes.size(), 5000);
}

/// How many colours' worth of lightness a picture holds: its greys that cover at least `least`
/// pixels and are `apart` from one another.
int greys_of(const QImage& picture, int least, int apart) {
  std::array<int, 256> counts{};
  for (int y = 0; y < picture.height(); ++y) {
    for (int x = 0; x < picture.width(); ++x) {
      ++counts[static_cast<std::size_t>(qGray(picture.pixel(x, y)))];
    }
  }
  int found = 0, last = -apart;
  for (int grey = 0; grey < 256; ++grey) {
    if (counts[static_cast<std::size_t>(grey)] < least || grey - last < apart) continue;
    ++found;
    last = grey;
  }
  return found;
}

TEST_F(StoresWindowTest, DrawsBandsLineAndGroundApartInGrey) {
  open();
  auto& pane = page<ChartPane>("Use");
  pane.items().setCurrentText("Port with tubing");
  const QString path = folder_.filePath("use.png");
  ASSERT_EQ(pane.save_to(path), "");
  // The line's black, the tones of the two bands, and the ground.
  EXPECT_GE(greys_of(QImage(path), 500, 35), 4);
}

TEST_F(StoresWindowTest, ForecastsWithTheShelfInTheDatabase) {
  put("stock.csv", stock);
  auto& shelf = page<ShelfPage>("Shelf");
  ASSERT_TRUE(QTest::qWaitFor([&] { return !shelf.is_busy(); }, patience_ms));
  open();
  EXPECT_TRUE(words("stores_totals").contains("No stock list"));
  QSignalSpy shown(&window_, &StoresWindow::shown_result);
  EXPECT_EQ(shelf.import_list(folder_.filePath("stock.csv")), "");
  ASSERT_TRUE(shown.wait(patience_ms));
  EXPECT_TRUE(words("stores_totals").contains("Stock: the shelf in the database"));
  EXPECT_EQ(page<SortedTable>("Orders").model()->rowCount(), 2);
  EXPECT_TRUE(words("stores_totals").contains("No unit cost is known for"));
  // A list that is read is forecast with in its place, until the shelf is chosen again.
  put("other.csv", "item,on_hand\nPort with tubing,3\n");
  shown.clear();
  EXPECT_EQ(window_.open_stock(folder_.filePath("other.csv")), "");
  ASSERT_TRUE(shown.wait(patience_ms));
  EXPECT_TRUE(words("stores_totals").contains("Stock: other.csv"));
  EXPECT_EQ(page<SortedTable>("Orders").model()->rowCount(), 1);
  shown.clear();
  page<ShelfPage>("Shelf");
  auto* use = window_.findChild<QCheckBox*>("shelf_forecast");
  EXPECT_FALSE(use->isChecked());
  QTest::mouseClick(use, Qt::LeftButton, {}, QPoint(8, use->height() / 2));
  ASSERT_TRUE(shown.wait(patience_ms));
  EXPECT_EQ(page<SortedTable>("Orders").model()->rowCount(), 2);
}

TEST_F(StoresWindowTest, CanBeCancelledAndKeepsWhatWasThere) {
  open();
  const auto before = window_.result();
  for (int i = 0; i < 200; ++i) {
    QFile::copy(demo_cases + "/traced-150-points.json",
                folder_.filePath(QString("c%1.json").arg(i)));
  }
  window_.open_folder(folder_.path());
  auto* cancel = window_.findChild<QPushButton*>("stores_cancel");
  ASSERT_TRUE(QTest::qWaitFor([&] { return cancel->isVisible(); }));
  EXPECT_TRUE(window_.findChild<QProgressBar*>("stores_progress")->isVisible());
  QTest::mouseClick(cancel, Qt::LeftButton);
  EXPECT_FALSE(window_.is_busy());
  EXPECT_FALSE(cancel->isVisible());
  EXPECT_EQ(window_.result(), before);
}

TEST(StoresInTheMainWindow, AreOpenedByAKey) {
  WindowDriver driver;
  driver.press(QKeySequence("Ctrl+T"));
  auto* stores = driver.window().findChild<StoresWindow*>();
  ASSERT_NE(stores, nullptr);
  EXPECT_TRUE(stores->isVisible());
}

}  // namespace
}  // namespace drapewright::desktop_test
