#include "app/desktop/sheets/cut_view.h"

#include <QEvent>
#include <QFontInfo>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/printing/painter.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"
#include "core/report/cut_drawing.h"

namespace drapewright::desktop {

CutView::CutView(QWidget* parent) : QWidget(parent) {
  setObjectName("cut_view");
  setAccessibleName(spoken("Filler sheets to open, with their pieces"));
}

void CutView::show_plan(std::shared_ptr<const dressing::Plan> plan) {
  plan_ = std::move(plan);
  draw();
}

void CutView::set_room(QSize pixels) {
  if (pixels == room_) return;
  room_ = pixels;
  draw();
}

void CutView::draw() {
  drawing_ = {};
  if (plan_) {
    const double text_mm = 0.92 * QFontInfo(font()).pixelSize() / pixels_per_mm();
    drawing_ =
        report::draw_cut(*plan_, {.width_mm = std::max(40, room_.width()) / pixels_per_mm(),
                                  .height_mm = std::max(40, room_.height()) / pixels_per_mm(),
                                  .text_mm = text_mm,
                                  .brief = true});
  }
  setFixedHeight(
      std::max(room_.height(), static_cast<int>(std::ceil(drawing_.height_mm * pixels_per_mm()))));
  setAccessibleDescription(QString::fromStdString(drawing_.description));
  update();
}

void CutView::paintEvent(QPaintEvent*) {
  const auto ground = palette().color(QPalette::Base).lightness() < 128 ? report::Ground::dark
                                                                        : report::Ground::light;
  QPainter painter(this);
  painter.fillRect(rect(), printing::to_qcolor(report::ground_colour(ground)));
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(pixels_per_mm(), pixels_per_mm());
  printing::paint(painter, drawing_, ground);
}

void CutView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) draw();
}

}  // namespace drapewright::desktop
