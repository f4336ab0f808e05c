#include "app/desktop/section/section_view.h"

#include <QEvent>
#include <QFontInfo>
#include <QPainter>

#include "app/printing/painter.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"
#include "core/report/section_drawing.h"

namespace drapewright::desktop {

SectionView::SectionView(QWidget* parent) : QWidget(parent) {
  setObjectName("section_view");
  setAccessibleName(spoken("Section through wound and dressing"));
}

void SectionView::show_plan(std::shared_ptr<const wound::Case> value,
                            std::shared_ptr<const dressing::Plan> plan, bool fresh) {
  if (fresh) by_hand_ = false;
  case_ = std::move(value);
  cutter_.reset();
  if (case_ && plan) cutter_ = std::make_unique<dressing::SectionCutter>(*case_, *plan);
  if (!cutter_) {
    line_.reset();
  } else if (!by_hand_ || !line_) {
    line_ = cutter_->usual_line();
  }
  cut();
  emit line_laid();
}

void SectionView::set_line(const geometry::Segment& line) {
  if (!cutter_) return;
  by_hand_ = true;
  line_ = line;
  cut();
}

void SectionView::lay_usual_line() {
  by_hand_ = false;
  if (cutter_) line_ = cutter_->usual_line();
  cut();
  emit line_laid();
}

void SectionView::cut() {
  section_ = cutter_ && line_ ? cutter_->cut(*line_) : dressing::Section{};
  draw();
  emit cut_anew();
}

void SectionView::draw() {
  drawing_ = {};
  if (case_ && section_.length_cm > 0) {
    const double text_mm = 0.88 * QFontInfo(font()).pixelSize() / pixels_per_mm();
    drawing_ = report::draw_section(
        section_, case_->label, case_->dressing.border_cm,
        {.drawing = {.room_mm = report::DrawingSize{std::max(80, width()) / pixels_per_mm(),
                                                    std::max(60, height()) / pixels_per_mm()},
                     .text_mm = text_mm},
         .for_screen = true});
  }
  setAccessibleDescription(QString::fromStdString(drawing_.description));
  update();
}

void SectionView::paintEvent(QPaintEvent*) {
  const auto ground = palette().color(QPalette::Base).lightness() < 128 ? report::Ground::dark
                                                                        : report::Ground::light;
  QPainter painter(this);
  painter.fillRect(rect(), printing::to_qcolor(report::ground_colour(ground)));
  if (drawing_.layers.empty()) {
    painter.setPen(printing::to_qcolor(report::ink_colour(ground)));
    painter.drawText(rect(), Qt::AlignCenter,
                     spoken("The section is drawn here once there is a plan."));
    return;
  }
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(pixels_per_mm(), pixels_per_mm());
  printing::paint(painter, drawing_, ground);
}

void SectionView::resizeEvent(QResizeEvent*) { draw(); }

void SectionView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) draw();
}

}  // namespace drapewright::desktop
