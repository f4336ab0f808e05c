#pragma once

#include <QtCharts/QChartView>
#include <memory>

namespace drapewright::desktop {

/// A chart that is looked at closely: drag, wheel, + and - zoom, 0 shows all of it again, the mouse
/// or the arrows point at a row of its numbers (a week, or a bar). Shift and an arrow move what is
/// zoomed.
class ChartView : public QChartView {
  Q_OBJECT

 public:
  explicit ChartView(QWidget* parent = nullptr);

  /// @param rows  how many rows of its numbers are drawn; the previous chart is deleted
  void show_chart(std::unique_ptr<QChart> chart, int rows);
  /// @param row  none for what is not drawn
  void point_at(int row);
  int row() const { return row_; }
  void zoom_by(double factor);
  void show_all();

 signals:
  void pointed(int row);

 protected:
  void mouseMoveEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void drawForeground(QPainter* painter, const QRectF& rect) override;

 private:
  bool has_bars() const;
  int row_at(const QPoint& position) const;
  void move(int key, bool scrolls);
  double extent() const;

  int rows_ = 0;
  int row_ = -1;
  double whole_extent_ = 0;  ///< of the axis of numbers, not zoomed
};

}  // namespace drapewright::desktop
