// The chart of the stock: its bands, the run-out day and its spread, wherever they are told.
#include <gtest/gtest.h>

#include <QComboBox>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <algorithm>

#include "app/desktop/theme/palette.h"
#include "tests/desktop/stores/stores_window_driver.h"

namespace drapewright::desktop_test {
namespace {

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
    const QString listed = cell(pane.table(), days[i] / 7, days_column);
    const auto at = listed.indexOf(run_out_day(i) + " (");
    ASSERT_GE(at, 0) << listed.toStdString();
    const QString in_brackets = listed.mid(at).section('(', 1).section(" %)", 0, 0);
    EXPECT_TRUE(in_brackets.split(", ").contains(chances[static_cast<int>(i)]))
        << listed.toStdString();
  }
  for (int week = 0; week < 8; ++week) {
    const bool any = std::ranges::any_of(days, [&](int day) { return day / 7 == week; });
    EXPECT_EQ(cell(pane.table(), week, days_column).isEmpty(), !any) << week;
  }
  const QString path = folder_.filePath("stock-chart.csv");
  ASSERT_EQ(pane.save_to(path), "");
  QFile csv(path);
  ASSERT_TRUE(csv.open(QIODevice::ReadOnly));
  const QByteArray numbers = csv.readAll();
  EXPECT_TRUE(numbers.contains("50 % band,90 % band")) << numbers.toStdString();
  EXPECT_TRUE(numbers.contains(run_out_day(2).toUtf8() + " (")) << numbers.toStdString();
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

}  // namespace
}  // namespace drapewright::desktop_test
