#include "app/desktop/theme/style.h"

#include <QApplication>
#include <QPainter>
#include <QStyleOption>
#include <algorithm>

namespace drapewright::desktop {
namespace {

constexpr int least_target_px = 24;  // WCAG 2.2, 2.5.8

void draw_edge(const QStyleOption& option, QRect where, QPainter& painter) {
  const bool focused =
      option.state.testFlag(QStyle::State_HasFocus) && option.state.testFlag(QStyle::State_Enabled);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(focused ? QPen(option.palette.color(QPalette::Highlight), 2)
                         : QPen(inks(option.palette).outline, 1));
  const double half = focused ? 1.0 : 0.5;
  painter.drawRoundedRect(QRectF(where).adjusted(half, half, -half, -half), 2, 2);
  painter.restore();
}

const QPalette& desktop_palette() {
  static const QPalette palette = QApplication::palette();
  return palette;
}

}  // namespace

Style::Style() : QProxyStyle("Fusion") {}

void Style::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                          const QWidget* widget) const {
  QProxyStyle::drawPrimitive(element, option, painter, widget);
  switch (element) {
    case PE_FrameLineEdit:
    case PE_PanelButtonCommand:
    case PE_IndicatorCheckBox:
    case PE_IndicatorRadioButton:
      if (element != PE_IndicatorRadioButton) draw_edge(*option, option->rect, *painter);
      break;
    default:
      break;
  }
}

void Style::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                               QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_SpinBox || control == CC_ComboBox) draw_edge(*option, option->rect, *painter);
}

int Style::pixelMetric(PixelMetric metric, const QStyleOption* option,
                       const QWidget* widget) const {
  const int size = QProxyStyle::pixelMetric(metric, option, widget);
  if (metric == PM_IndicatorWidth || metric == PM_IndicatorHeight) return std::max(size, 16);
  if (metric == PM_ScrollBarSliderMin) return std::max(size, least_target_px);
  return size;
}

void set_up_look(QApplication& program, Scheme scheme) {
  const bool dark =
      scheme == Scheme::dark || (scheme == Scheme::system && is_dark(desktop_palette()));
  if (qobject_cast<Style*>(program.style()) == nullptr) QApplication::setStyle(new Style);
  QApplication::setPalette(dark ? dark_palette() : light_palette());
}

void set_text_size(QApplication&, int percent) {
  static const QFont font = QApplication::font();
  QFont scaled = font;
  if (font.pointSizeF() > 0) {
    scaled.setPointSizeF(font.pointSizeF() * percent / 100);
  } else {
    scaled.setPixelSize(font.pixelSize() * percent / 100);
  }
  QApplication::setFont(scaled);
}

}  // namespace drapewright::desktop
