#include "app/desktop/stores/chart_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QtCharts/QChart>
#include <QtCharts/QHorizontalBarSeries>
#include <QtCharts/QValueAxis>
#include <algorithm>
#include <cmath>
#include <memory>

namespace drapewright::desktop {
namespace {

constexpr double zoom_step = 1.25;
constexpr double scroll_share = 0.1;  // of the plot

QPointF direction_of(int key) {
  switch (key) {
    case Qt::Key_Left:
      return {-1, 0};
    case Qt::Key_Right:
      return {1, 0};
    case Qt::Key_Up:
      return {0, 1};
    default:
      return {0, -1};
  }
}

}  // namespace

ChartView::ChartView(QWidget* parent) : QChartView(parent) {
  setRenderHint(QPainter::Antialiasing);
  setRubberBand(RectangleRubberBand);
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
}

void ChartView::show_chart(std::unique_ptr<QChart> chart, int rows) {
  const std::unique_ptr<QChart> before(this->chart());
  rows_ = rows;
  row_ = -1;
  setChart(chart.release());
  whole_extent_ = extent();
}

bool ChartView::has_bars() const {
  const auto series = chart()->series();
  return !series.isEmpty() && qobject_cast<QHorizontalBarSeries*>(series.front()) != nullptr;
}

double ChartView::extent() const {
  for (QAbstractAxis* axis : chart()->axes()) {
    if (auto* numbers = qobject_cast<QValueAxis*>(axis)) return numbers->max() - numbers->min();
  }
  return 0;
}

void ChartView::point_at(int row) {
  const int now = row < 0 || row >= rows_ ? -1 : row;
  if (now == row_) return;
  row_ = now;
  viewport()->update();
  emit pointed(row_);
}

/// Weeks count from 1 from the left; bars from 0 from below, the first row at the top.
int ChartView::row_at(const QPoint& position) const {
  const QPointF on_chart = chart()->mapFromScene(mapToScene(position));
  if (chart()->series().isEmpty() || !chart()->plotArea().contains(on_chart)) return -1;
  const QPointF value = chart()->mapToValue(on_chart, chart()->series().front());
  const auto row = std::lround(has_bars() ? rows_ - 1 - value.y() : value.x() - 1);
  return row < 0 || row >= rows_ ? -1 : static_cast<int>(row);
}

void ChartView::zoom_by(double factor) {
  chart()->zoom(factor);
  if (extent() >= whole_extent_) chart()->zoomReset();
  viewport()->update();
}

void ChartView::show_all() {
  chart()->zoomReset();
  viewport()->update();
}

void ChartView::move(int key, bool scrolls) {
  const QPointF way = direction_of(key);
  if (rows_ == 0) return;
  if (scrolls) {
    if (chart()->isZoomed()) {
      chart()->scroll(way.x() * scroll_share * chart()->plotArea().width(),
                      way.y() * scroll_share * chart()->plotArea().height());
    }
    return;
  }
  const int step = static_cast<int>(has_bars() ? -way.y() : way.x());
  if (step != 0) point_at(std::clamp(row_ + step, 0, rows_ - 1));
}

void ChartView::mouseMoveEvent(QMouseEvent* event) {
  QChartView::mouseMoveEvent(event);
  point_at(row_at(event->pos()));
}

void ChartView::wheelEvent(QWheelEvent* event) {
  if (event->angleDelta().y() == 0) return QChartView::wheelEvent(event);
  zoom_by(event->angleDelta().y() > 0 ? zoom_step : 1 / zoom_step);
  event->accept();
}

void ChartView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom_by(zoom_step);
    case Qt::Key_Minus:
      return zoom_by(1 / zoom_step);
    case Qt::Key_0:
    case Qt::Key_Home:
      return show_all();
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
      return move(event->key(), event->modifiers().testFlag(Qt::ShiftModifier));
    default:
      QChartView::keyPressEvent(event);
  }
}

/// A line through what is pointed at.
void ChartView::drawForeground(QPainter* painter, const QRectF& rect) {
  QChartView::drawForeground(painter, rect);
  if (row_ < 0 || chart()->series().isEmpty()) return;
  const QPointF value = has_bars() ? QPointF(0, rows_ - 1 - row_) : QPointF(row_ + 1, 0);
  const QPointF at = chart()->mapToScene(chart()->mapToPosition(value, chart()->series().front()));
  const QRectF plot = chart()->mapRectToScene(chart()->plotArea());
  painter->setPen(QPen(palette().color(QPalette::Text), 1, Qt::DotLine));
  if (has_bars()) {
    if (at.y() > plot.top() && at.y() < plot.bottom()) {
      painter->drawLine(QPointF(plot.left(), at.y()), QPointF(plot.right(), at.y()));
    }
  } else if (at.x() > plot.left() && at.x() < plot.right()) {
    painter->drawLine(QPointF(at.x(), plot.top()), QPointF(at.x(), plot.bottom()));
  }
}

}  // namespace drapewright::desktop
