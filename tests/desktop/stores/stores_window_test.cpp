// The stores' window: a folder of cases, its tables and charts, by mouse and keys.
#include "app/desktop/stores/stores_window.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QDoubleSpinBox>
#include <QHeaderView>
#include <QImage>
#include <QLabel>
#include <QPrinter>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QWheelEvent>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <array>

#include "app/desktop/stores/chart_pane.h"
#include "app/desktop/stores/chart_view.h"
#include "app/desktop/stores/shelf_page.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/theme/palette.h"
#include "core/base/calendar.h"
#include "tests/desktop/window_driver.h"
#include "tests/support/places.h"

namespace drapewright::desktop_test {
namespace {

using desktop::ChartPane;
using desktop::ShelfPage;
using desktop::SortedTable;
using desktop::StoresWindow;

constexpr int patience_ms = 60000;
const QString demo_cases = QString::fromStdString(support::project_folder()) + "/demo_cases";

constexpr const char* stock =
    "item,on_hand,expires,on_order,due,pack_size,lead_days,unit_cost\n"
    "Port with tubing,20,2026-12-31,,,5,4,14\n"
    "Port with tubing,,,30,2026-03-12,,,\n"
    "Film sheet 20 x 20 cm,90,2026-03-10,,,10,4,6\n";

class StoresWindowTest : public testing::Test {
 protected:
  StoresWindowTest() : window_(first_day()) {
    window_.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&window_));
    for (const char* name : {"plain-heel.json", "series-of-three.json", "no-port-zone.json"}) {
      QFile::copy(demo_cases + "/" + name, folder_.filePath(name));
    }
  }

  /// The window opens its shelf when it is made: it must find a place of the test's own.
  int first_day() {
    QSettings().setValue("shelf_place", folder_.filePath("shelf.sqlite"));
    QSettings().remove("stores");  // a rate that another test took over
    return day_number("2026-03-04").value();
  }
  void open() {
    QSignalSpy shown(&window_, &StoresWindow::shown_result);
    window_.open_folder(folder_.path());
    ASSERT_TRUE(shown.wait(patience_ms));
  }
  void put(const QString& name, const QByteArray& text) {
    QFile file(folder_.filePath(name));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
  }
  template <class Page>
  Page& page(const QString& title) {
    auto* pages = window_.findChild<QTabWidget*>();
    for (int i = 0; i < pages->count(); ++i) {
      if (pages->tabText(i) != title) continue;
      pages->setCurrentIndex(i);
      return dynamic_cast<Page&>(*pages->currentWidget());
    }
    throw std::logic_error("no page " + title.toStdString());
  }
  static QString cell(const SortedTable& table, int row, int column) {
    return table.model()->index(row, column).data().toString();
  }
  static QStringList column(const SortedTable& table, int index) {
    QStringList texts;
    for (int row = 0; row < table.model()->rowCount(); ++row) texts << cell(table, row, index);
    return texts;
  }
  QString words(const QString& label) { return words(label, window_); }
  static QString words(const QString& label, const QWidget& within) {
    return within.findChild<QLabel*>(label)->text();
  }

  QTemporaryDir folder_;
  StoresWindow window_;
};

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

/// Fewer ports than the three courses take, none to come: they run out within the eight weeks.
constexpr const char* scarce_ports =
    "item,on_hand,expires,on_order,due,pack_size,lead_days,unit_cost\n"
    "Port with tubing,5,2026-12-31,,,5,4,14\n";

class ScarcePorts : public StoresWindowTest {
 protected:
  ChartPane& stock_pane(const char* list = scarce_ports) {
    put("stock.csv", list);
    EXPECT_EQ(window_.open_stock(folder_.filePath("stock.csv")), "");
    open();
    auto& pane = page<ChartPane>("Stock");
    pane.items().setCurrentText("Port with tubing");
    return pane;
  }
  const forecast::ShelfForecast& shelf() const {
    for (const auto& item : window_.result()->forecast.items) {
      if (item.item == "Port with tubing" && item.shelf) return *item.shelf;
    }
    throw std::logic_error("no shelf of ports");
  }
  QString run_out_day(std::size_t chance) const {
    const int first = window_.result()->forecast.first_day;
    return QString::fromStdString(date_of_day(first + shelf().run_out_days.at(chance)));
  }
};

QAbstractSeries* series_named(ChartPane& pane, const QString& name) {
  for (auto* series : pane.view().chart()->series()) {
    if (series->name() == name) return series;
  }
  return nullptr;
}

TEST_F(ScarcePorts, DrawBothBandsOfWhatIsLeft) {
  auto& pane = stock_pane(stock);  // enough that some are left
  auto* wide = qobject_cast<QAreaSeries*>(series_named(pane, "90 % band"));
  auto* narrow = qobject_cast<QAreaSeries*>(series_named(pane, "50 % band"));
  auto* line = qobject_cast<QLineSeries*>(series_named(pane, "expected"));
  ASSERT_TRUE(wide && narrow && line);
  ASSERT_EQ(line->count(), 8);
  bool differ = false;
  for (int week = 0; week < 8; ++week) {
    const auto& band = shelf().weeks[static_cast<std::size_t>(week)].band;
    EXPECT_EQ(wide->lowerSeries()->at(week).y(), band.low90);
    EXPECT_EQ(wide->upperSeries()->at(week).y(), band.high90);
    EXPECT_EQ(narrow->lowerSeries()->at(week).y(), band.low50);
    EXPECT_EQ(narrow->upperSeries()->at(week).y(), band.high50);
    differ = differ || band.high90 > band.high50;
    EXPECT_EQ(cell(pane.table(), week, 6), QString("%1 to %2").arg(band.low50).arg(band.high50));
    EXPECT_EQ(cell(pane.table(), week, 7), QString("%1 to %2").arg(band.low90).arg(band.high90));
  }
  EXPECT_TRUE(differ);
}

TEST_F(ScarcePorts, MarkTheRunOutDayAndItsSpread) {
  auto& pane = stock_pane();
  const auto& days = shelf().run_out_days;
  ASSERT_EQ(days.size(), 5u);
  ASSERT_LT(days.front(), days.back());
  auto* span = qobject_cast<QLineSeries*>(series_named(pane, "runs out, 5 to 95 %"));
  auto* upright = qobject_cast<QLineSeries*>(series_named(pane, "runs out, even odds"));
  ASSERT_TRUE(span && upright);
  // A week's end is its number: the seventh day, day 6, ends at 1.
  EXPECT_NEAR(span->at(0).x(), (days.front() + 1) / 7.0, 1e-9);
  EXPECT_NEAR(span->at(1).x(), (days.back() + 1) / 7.0, 1e-9);
  EXPECT_NEAR(upright->at(0).x(), (days[2] + 1) / 7.0, 1e-9);
  auto* pieces = qobject_cast<QValueAxis*>(pane.view().chart()->axes(Qt::Vertical).front());
  EXPECT_EQ(upright->at(1).y(), pieces->max());
  auto* weeks = qobject_cast<QValueAxis*>(pane.view().chart()->axes(Qt::Horizontal).front());
  EXPECT_LT(weeks->min(), span->at(0).x());
  EXPECT_TRUE(pane.view().chart()->title().contains(
      QString("Runs out on %1 (even odds), from %2 (5 %) to %3 (95 %).")
          .arg(run_out_day(2), run_out_day(0), run_out_day(4))))
      << pane.view().chart()->title().toStdString();
}

TEST_F(ScarcePorts, TellTheRunOutDayUnderTheMouse) {
  auto& pane = stock_pane();
  QTest::qWait(50);
  auto& view = pane.view();
  auto* line = qobject_cast<QLineSeries*>(series_named(pane, "expected"));
  const auto over_week = [&](int week) {
    const QPointF at = view.chart()->mapToPosition(line->at(week - 1), line);
    QTest::mouseMove(view.viewport(),
                     view.mapFromScene(view.chart()->mapToScene(at)) + QPoint(2, -20));
  };
  over_week(3);
  over_week(5);
  QTRY_COMPARE_WITH_TIMEOUT(view.row(), 4, 2000);
  const QString told = words("chart_told", pane);
  EXPECT_TRUE(told.contains("50 % band " + cell(pane.table(), 4, 6))) << told.toStdString();
  EXPECT_TRUE(told.contains("90 % band " + cell(pane.table(), 4, 7))) << told.toStdString();
  EXPECT_TRUE(told.contains("Runs out on " + run_out_day(2) + " (even odds), from " +
                            run_out_day(0) + " (5 %) to " + run_out_day(4) + " (95 %)"))
      << told.toStdString();
  // The whole of it is seen: nothing is cut off at the label's edge.
  auto* label = pane.findChild<QLabel*>("chart_told");
  EXPECT_LE(label->heightForWidth(label->width()), label->height());
}

TEST_F(ScarcePorts, ListTheRunOutDaysInTheirWeeks) {
  auto& pane = stock_pane();
  const int days_column = 9;
  const auto& days = shelf().run_out_days;
  const QStringList chances{"5", "25", "50", "75", "95"};
  for (std::size_t i = 0; i < days.size(); ++i) {
    EXPECT_TRUE(cell(pane.table(), days[i] / 7, days_column)
                    .contains(run_out_day(i) + " (" + chances[static_cast<int>(i)] + " %)"))
        << i;
  }
  EXPECT_EQ(column(pane.table(), days_column).join(" ").count("%"), 5);
  const QString path = folder_.filePath("stock-chart.csv");
  ASSERT_EQ(pane.save_to(path), "");
  QFile csv(path);
  ASSERT_TRUE(csv.open(QIODevice::ReadOnly));
  const QByteArray numbers = csv.readAll();
  EXPECT_TRUE(numbers.contains("50 % band,90 % band")) << numbers.toStdString();
  EXPECT_TRUE(numbers.contains(run_out_day(2).toUtf8() + " (50 %)")) << numbers.toStdString();
}

TEST_F(ScarcePorts, AreFoundByTheDayWithItsSpread) {
  stock_pane();
  const QStringList found = column(page<SortedTable>("Findings"), 2).filter("Port with tubing");
  ASSERT_EQ(found.size(), 1);
  EXPECT_TRUE(found[0].contains(QString("runs out on %1 (even odds), from %2 (5 %) to %3 (95 %)")
                                    .arg(run_out_day(2), run_out_day(0), run_out_day(4))))
      << found[0].toStdString();
}

TEST_F(ScarcePorts, AreSavedWithTheirLegendInWholeWords) {
  const QString path = folder_.filePath("stock.svg");
  ASSERT_EQ(stock_pane().save_to(path), "");
  QFile svg(path);
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  const QByteArray drawn = svg.readAll();
  for (const char* words : {"90 % band", "50 % band", "expected", "reorder point",
                            "runs out, 5 to 95 %", "runs out, even odds", "Runs out on "}) {
    EXPECT_TRUE(drawn.contains(QByteArray(">") + words)) << words;
  }
}

/// A few ports more, and the last of the chances lies beyond the eight weeks.
TEST_F(ScarcePorts, MayLastBeyondTheForecast) {
  auto& pane = stock_pane();
  QSignalSpy shown(&window_, &StoresWindow::shown_result);
  put("more.csv", "item,on_hand\nPort with tubing,8\n");
  EXPECT_EQ(window_.open_stock(folder_.filePath("more.csv")), "");
  ASSERT_TRUE(shown.wait(patience_ms));
  ASSERT_EQ(shelf().run_out_days.size(), 4u);
  auto* span = qobject_cast<QLineSeries*>(series_named(pane, "runs out, from 5 % on"));
  ASSERT_NE(span, nullptr);
  auto* weeks = qobject_cast<QValueAxis*>(pane.view().chart()->axes(Qt::Horizontal).front());
  EXPECT_EQ(span->at(1).x(), weeks->max());
  EXPECT_TRUE(pane.view().chart()->title().contains(
      QString("Runs out on %1 (even odds), from %2 on (5 %).").arg(run_out_day(2), run_out_day(0))))
      << pane.view().chart()->title().toStdString();
}

TEST_F(StoresWindowTest, AFullShelfIsSaidToLast) {
  put("stock.csv", "item,on_hand\nPort with tubing,500\n");
  EXPECT_EQ(window_.open_stock(folder_.filePath("stock.csv")), "");
  open();
  auto& pane = page<ChartPane>("Stock");
  pane.items().setCurrentText("Port with tubing");
  EXPECT_TRUE(pane.view().chart()->title().contains("Lasts to the end of these weeks"));
  EXPECT_EQ(series_named(pane, "runs out, 5 to 95 %"), nullptr);
  EXPECT_EQ(series_named(pane, "runs out, even odds"), nullptr);
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

/// The tints themselves, on either ground: area fills that lie next to one another.
TEST_F(ScarcePorts, KeepTheTintsOfBothBandsApartInGrey) {
  auto& pane = stock_pane();
  for (const QPalette& palette : {desktop::light_palette(), desktop::dark_palette()}) {
    pane.setPalette(palette);
    QCoreApplication::sendPostedEvents();
    auto* wide = qobject_cast<QAreaSeries*>(series_named(pane, "90 % band"));
    auto* narrow = qobject_cast<QAreaSeries*>(series_named(pane, "50 % band"));
    ASSERT_TRUE(wide && narrow);
    const int ground = qGray(palette.color(QPalette::Base).rgb());
    const int outer = qGray(wide->brush().color().rgb());
    const int inner = qGray(narrow->brush().color().rgb());
    EXPECT_GE(std::abs(outer - ground), 30) << outer << " on " << ground;
    EXPECT_GE(std::abs(inner - outer), 30) << inner << " in " << outer;
    EXPECT_GE(std::abs(inner - ground), 60) << inner << " on " << ground;
  }
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
