#pragma once

#include <QWidget>
#include <memory>
#include <optional>

#include "core/dressing/section.h"
#include "core/report/drawing.h"

namespace drapewright::desktop {

/// The cut through wound and dressing, to scale and as large as the widget has room for. Observes a
/// case and its plan.
class SectionView : public QWidget {
  Q_OBJECT

 public:
  explicit SectionView(QWidget* parent = nullptr);

  /// Without a plan it stays empty and says why. The line is kept where it was laid by hand;
  /// `fresh` lays the usual one.
  void show_plan(std::shared_ptr<const wound::Case> value,
                 std::shared_ptr<const dressing::Plan> plan, bool fresh);
  void set_line(const geometry::Segment& line);
  void lay_usual_line();

  const std::optional<geometry::Segment>& line() const { return line_; }
  const dressing::Section& section() const { return section_; }
  const report::Drawing& drawing() const { return drawing_; }

  QSize sizeHint() const override { return {520, 240}; }
  QSize minimumSizeHint() const override { return {200, 120}; }

 signals:
  void line_laid();
  void cut_anew();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  double pixels_per_mm() const { return logicalDpiX() / 25.4; }
  void cut();
  void draw();

  std::shared_ptr<const wound::Case> case_;
  std::unique_ptr<dressing::SectionCutter> cutter_;
  std::optional<geometry::Segment> line_;
  bool by_hand_ = false;
  dressing::Section section_;
  report::Drawing drawing_;
};

}  // namespace drapewright::desktop
