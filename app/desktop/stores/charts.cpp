#include "app/desktop/stores/charts.h"

#include <QPen>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QBarCategoryAxis>
#include <QtCharts/QBarSet>
#include <QtCharts/QHorizontalBarSeries>
#include <QtCharts/QLegendMarker>
#include <QtCharts/QLineSeries>
#include <QtCharts/QScatterSeries>
#include <QtCharts/QValueAxis>
#include <algorithm>
#include <cmath>

#include "app/desktop/stores/tables.h"
#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"
#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

using forecast::Band;
using forecast::Forecast;
using forecast::ItemForecast;

// Okabe and Ito's palette for the colour-blind (2008).
const QColor blue(0, 114, 178), sky_blue(86, 180, 233), vermillion(213, 94, 0), green(0, 158, 115);

/// The axis has room for so many, so that its marks are whole pieces.
constexpr double least_pieces = 5;
/// Weeks of bare ground beside a mark that begins before the first week's end.
constexpr double ground_beside = 0.05;
/// On a bar: whole units of money, as many as there may be.
constexpr int digits_of_cost = 9;

/// The band that holds 90 %: nearer to the ground than the one that holds 50 %. Tints, since the
/// dots of a pattern get lost in print.
QColor wide_band(const QPalette& palette) {
  return is_dark(palette) ? blue.darker(130) : sky_blue.lighter(145);
}
QColor narrow_band(const QPalette& palette) {
  return is_dark(palette) ? blue.lighter(150) : sky_blue.darker(110);
}
QColor edge_of(const QColor& band) {
  return band.lightness() > 128 ? band.darker(150) : band.lighter(170);
}

/// Bands and lines by week. A week's figures stand at its number, 1, 2, ...
class WeekChart {
 public:
  WeekChart(const QString& title, const Forecast& forecast, const QPalette& palette)
      : ink_(palette.color(QPalette::Text)), chart_(std::make_unique<QChart>()) {
    chart_->setTitle(title);
    chart_->setBackgroundBrush(palette.base());
    chart_->setTitleBrush(ink_);
    chart_->legend()->setLabelColor(ink_);
    chart_->legend()->setAlignment(Qt::AlignBottom);
    chart_->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
    chart_->setAnimationOptions(QChart::NoAnimation);
    chart_->setMargins({4, 4, 4, 4});
    weeks_ = new QValueAxis;
    weeks_->setTitleText(spoken("Week (1 begins on {1})",
                                {QString::fromStdString(date_of_day(forecast.first_day))}));
    weeks_->setRange(0.5, forecast.weeks + 0.5);
    weeks_->setTickType(QValueAxis::TicksDynamic);
    weeks_->setTickAnchor(1);
    weeks_->setTickInterval(forecast.weeks > 20 ? 4 : 1);
    weeks_->setLabelFormat("%d");
    pieces_ = new QValueAxis;
    pieces_->setTitleText(spoken("Pieces"));
    pieces_->setLabelFormat("%.0f");
    for (QValueAxis* axis : {weeks_, pieces_}) {
      axis->setLabelsColor(ink_);
      axis->setTitleBrush(ink_);
      axis->setGridLineColor(palette.color(QPalette::Mid));
    }
    chart_->addAxis(weeks_, Qt::AlignBottom);
    chart_->addAxis(pieces_, Qt::AlignLeft);
  }

  void add_band(const QString& name, QColor fill, const std::vector<std::pair<int, int>>& bounds) {
    // The area keeps no hold of its borders: they belong to the chart.
    auto* low = new QLineSeries(chart_.get());
    auto* high = new QLineSeries(chart_.get());
    for (std::size_t week = 0; week < bounds.size(); ++week) {
      low->append(static_cast<double>(week + 1), bounds[week].first);
      high->append(static_cast<double>(week + 1), bounds[week].second);
      reach(bounds[week].second);
    }
    auto* area = new QAreaSeries(high, low);
    area->setBrush(fill);
    area->setPen(QPen(edge_of(fill), 1));
    add(name, area);
    // Its mark in the legend takes no colour from an area by itself.
    for (QLegendMarker* mark : chart_->legend()->markers(area)) {
      mark->setShape(QLegend::MarkerShapeRectangle);
      mark->setBrush(fill);
      mark->setPen(QPen(edge_of(fill), 1));
    }
  }

  void add_line(const QString& name, const QPen& pen, const std::vector<double>& values) {
    auto* line = new QLineSeries;
    for (std::size_t week = 0; week < values.size(); ++week) {
      line->append(static_cast<double>(week + 1), values[week]);
      reach(values[week]);
    }
    line->setPen(pen);
    line->setPointsVisible(values.size() <= 30 && pen.style() == Qt::SolidLine);
    add(name, line);
  }

  /// Marks on the weeks in which something happened.
  void add_marks(const QString& name, QScatterSeries::MarkerShape shape, QColor colour,
                 const std::vector<double>& values) {
    auto* marks = new QScatterSeries;
    for (std::size_t week = 0; week < values.size(); ++week) {
      if (values[week] <= 0) continue;
      marks->append(static_cast<double>(week + 1), values[week]);
      reach(values[week]);
    }
    if (marks->count() == 0) {
      delete marks;
      return;
    }
    marks->setMarkerShape(shape);
    marks->setMarkerSize(12);
    marks->setColor(colour);
    marks->setBorderColor(ink_);
    add(name, marks);
  }

  /// Along the ground, between two places on the axis of weeks.
  void add_span(const QString& name, const QPen& pen, double from, double to) {
    auto* span = new QLineSeries;
    span->append(from, 0);
    span->append(to, 0);
    span->setPen(pen);
    add(name, span);
    weeks_->setMin(std::min(weeks_->min(), from - ground_beside));
  }

  /// From the ground to the top, once that is known.
  void add_upright(const QString& name, const QPen& pen, double at) {
    upright_ = new QLineSeries;
    upright_->append(at, 0);
    upright_->setPen(pen);
    add(name, upright_);
  }

  std::unique_ptr<QChart> taken() {
    pieces_->setRange(0, std::max(least_pieces, highest_ * 1.05));
    pieces_->applyNiceNumbers();
    if (upright_ != nullptr) upright_->append(upright_->at(0).x(), pieces_->max());
    return std::move(chart_);
  }

 private:
  void add(const QString& name, QAbstractSeries* series) {
    series->setName(name);
    chart_->addSeries(series);
    series->attachAxis(weeks_);
    series->attachAxis(pieces_);
  }
  void reach(double value) { highest_ = std::max(highest_, value); }

  QColor ink_;
  std::unique_ptr<QChart> chart_;
  QValueAxis* weeks_;
  QValueAxis* pieces_;
  QLineSeries* upright_ = nullptr;
  double highest_ = 0;
};

/// Where the end of a day, counted from 0, lies on the axis of weeks: a week's end is its number.
double place_of(int day) { return (day + 1) / 7.0; }

/// The day by which it is short as likely as not, and from where to where nine in ten such days
/// lie; as far as the forecast reaches.
void add_run_out(const std::vector<int>& days, int weeks, QColor ink, WeekChart& chart) {
  if (days.empty()) return;
  const bool ends = days.size() == forecast::run_out_chances.size();
  chart.add_span(ends ? spoken("runs out, 5 to 95 %") : spoken("runs out, from 5 % on"),
                 QPen(ink, 8, Qt::SolidLine, Qt::FlatCap), place_of(days.front()),
                 ends ? std::max(place_of(days.back()), place_of(days.front() + 1)) : weeks + 0.5);
  constexpr std::size_t even_odds = forecast::run_out_chances.size() / 2;
  if (days.size() <= even_odds) return;
  chart.add_upright(spoken("runs out, even odds"), QPen(ink, 2, Qt::DashDotLine),
                    place_of(days[even_odds]));
}

template <typename Week, typename Value>
std::vector<Value> each(const std::vector<Week>& weeks, Value (*of)(const Week&)) {
  std::vector<Value> values;
  for (const Week& week : weeks) values.push_back(of(week));
  return values;
}

}  // namespace

std::unique_ptr<QChart> draw_use(const Forecast& forecast, const ItemForecast& item,
                                 const QPalette& palette) {
  WeekChart chart(spoken("Use in each week: {1}", {supplies::shown_name(item.item)}), forecast,
                  palette);
  const bool dark = is_dark(palette);
  chart.add_band(spoken("90 % band"), wide_band(palette),
                 each<Band, std::pair<int, int>>(
                     item.weeks, [](const Band& b) { return std::pair(b.low90, b.high90); }));
  chart.add_band(spoken("50 % band"), narrow_band(palette),
                 each<Band, std::pair<int, int>>(
                     item.weeks, [](const Band& b) { return std::pair(b.low50, b.high50); }));
  chart.add_line(spoken("expected"), QPen(dark ? QColor(Qt::white) : QColor(Qt::black), 2),
                 each<Band, double>(item.weeks, [](const Band& b) { return b.mean; }));
  return chart.taken();
}

std::unique_ptr<QChart> draw_stock(const Forecast& forecast, const ItemForecast& item,
                                   const QPalette& palette) {
  using forecast::ShelfWeek;
  const std::string name = supplies::shown_name(item.item);
  WeekChart chart(item.shelf ? spoken("On the shelf at each week's end: {1}", {name}) + "<br>" +
                                   run_out_words(forecast, *item.shelf)
                             : spoken("{1} is not on the stock list.", {name}),
                  forecast, palette);
  if (!item.shelf) return chart.taken();
  const auto& weeks = item.shelf->weeks;
  chart.add_band(spoken("90 % band"), wide_band(palette),
                 each<ShelfWeek, std::pair<int, int>>(weeks, [](const ShelfWeek& w) {
                   return std::pair(w.band.low90, w.band.high90);
                 }));
  chart.add_band(spoken("50 % band"), narrow_band(palette),
                 each<ShelfWeek, std::pair<int, int>>(weeks, [](const ShelfWeek& w) {
                   return std::pair(w.band.low50, w.band.high50);
                 }));
  chart.add_line(spoken("expected"), QPen(is_dark(palette) ? Qt::white : Qt::black, 2),
                 each<ShelfWeek, double>(weeks, [](const ShelfWeek& w) { return w.band.mean; }));
  if (item.order) {
    chart.add_line(spoken("reorder point"), QPen(vermillion, 2, Qt::DashLine),
                   std::vector<double>(weeks.size(), item.order->reorder_point));
  }
  chart.add_marks(spoken("delivered"), QScatterSeries::MarkerShapeTriangle, green,
                  each<ShelfWeek, double>(weeks, [](const ShelfWeek& w) { return w.received; }));
  chart.add_marks(spoken("past its date"), QScatterSeries::MarkerShapeRectangle, vermillion,
                  each<ShelfWeek, double>(weeks, [](const ShelfWeek& w) { return w.wasted; }));
  add_run_out(item.shelf->run_out_days, forecast.weeks, palette.color(QPalette::Text), chart);
  return chart.taken();
}

std::unique_ptr<QChart> draw_cost(const Forecast& forecast, const QPalette& palette) {
  auto chart = std::make_unique<QChart>();
  const QColor ink = palette.color(QPalette::Text);
  chart->setTitleBrush(ink);
  chart->setBackgroundBrush(palette.base());
  chart->legend()->hide();
  auto* set = new QBarSet(spoken("Cost"));
  set->setColor(is_dark(palette) ? sky_blue : blue);
  QStringList names;
  const NumberTable table = cost_table(forecast);
  const auto all = static_cast<int>(table.rows.size()), drawn = std::min(all, most_bars);
  chart->setTitle(
      drawn == all
          ? spoken("Cost by item, expected over all weeks")
          : spoken("Cost by item, expected over all weeks: the {1} dearest of {2}", {drawn, all}));
  // The axis counts upwards: the dearest comes last.
  for (auto i = static_cast<std::size_t>(drawn); i > 0; --i) {
    names.append(table.rows[i - 1].front().text());
    set->append(std::round(table.rows[i - 1].back().value.toDouble()));
  }
  set->setLabelColor(ink);
  if (drawn == 0) chart->setTitle(spoken("No cost of any item is known."));
  auto* bars = new QHorizontalBarSeries;
  bars->setLabelsVisible(true);
  bars->setLabelsPrecision(digits_of_cost);
  bars->setLabelsPosition(QAbstractBarSeries::LabelsOutsideEnd);
  bars->append(set);
  chart->addSeries(bars);
  auto* items = new QBarCategoryAxis;
  items->append(names);
  items->setLabelsColor(ink);
  auto* cost = new QValueAxis;
  cost->setLabelFormat("%.0f");
  cost->setLabelsColor(ink);
  cost->setTitleText(spoken("Cost"));
  cost->setTitleBrush(ink);
  chart->addAxis(items, Qt::AlignLeft);
  chart->addAxis(cost, Qt::AlignBottom);
  bars->attachAxis(items);
  bars->attachAxis(cost);
  cost->setMin(0);
  if (drawn > 0) cost->applyNiceNumbers();
  return chart;
}

}  // namespace drapewright::desktop
