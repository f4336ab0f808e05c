#include "app/desktop/theme/style.h"

#include <QApplication>
#include <QComboBox>
#include <QPainter>
#include <QStyleOption>
#include <algorithm>

namespace drapewright::desktop {
namespace {

constexpr int least_target_px = 24;  // WCAG 2.2, 2.5.8
constexpr int touch_target_px = 44;  // WCAG 2.2, 2.5.5
constexpr int touch_bar_px = 30;
constexpr int touch_box_px = 26;

void draw_edge(const QStyleOption& option, QRect where, QPainter& painter) {
  const bool focused =
      option.state.testFlag(QStyle::State_HasFocus) && option.state.testFlag(QStyle::State_Enabled);
  const bool strong = focused || option.state.testFlag(QStyle::State_On);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(strong ? QPen(option.palette.color(QPalette::Highlight), 2)
                         : QPen(inks(option.palette).outline, 1));
  const double half = strong ? 1.0 : 0.5;
  painter.drawRoundedRect(QRectF(where).adjusted(half, half, -half, -half), 2, 2);
  painter.restore();
}

const QPalette& desktop_palette() {
  static const QPalette palette = QApplication::palette();
  return palette;
}

}  // namespace

Style::Style() : QProxyStyle("Fusion") {}

bool WheelGuard::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::Wheel || qobject_cast<QComboBox*>(watched) == nullptr) return false;
  event->ignore();  // it goes on to what scrolls
  return true;
}

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
  if (touch_) {
    if (metric == PM_ScrollBarExtent) return touch_bar_px;
    if (metric == PM_IndicatorWidth || metric == PM_IndicatorHeight) return touch_box_px;
    if (metric == PM_SplitterWidth) return touch_box_px;
  }
  if (metric == PM_ScrollBarSliderMin) return std::max(size, least_target_px);
  return size;
}

QSize Style::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                              const QWidget* widget) const {
  QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
  // Fusion gives the mark before an entry a part of its height, and forgets that in the width.
  if (type == CT_MenuItem) size.rwidth() += touch_ ? touch_target_px : size.height();
  if (!touch_) return size;
  switch (type) {
    case CT_PushButton:
    case CT_ToolButton:
    case CT_ComboBox:
    case CT_LineEdit:
    case CT_SpinBox:
    case CT_MenuItem:
    case CT_MenuBarItem:
    case CT_TabBarTab:
    case CT_CheckBox:
    case CT_RadioButton:
    case CT_ItemViewItem:
      size.setHeight(std::max(size.height(), touch_target_px));
      break;
    default:
      break;
  }
  return size;
}

void set_touch_sizes(QApplication& program, bool large) {
  auto* style = qobject_cast<Style*>(program.style());
  if (style == nullptr) return;
  style->set_touch_sizes(large);
  // Every widget asks its style anew: the way that Qt has for a style that has changed.
  QEvent changed(QEvent::StyleChange);
  for (QWidget* widget : QApplication::allWidgets()) {
    QApplication::sendEvent(widget, &changed);
    widget->updateGeometry();
    widget->update();
  }
}

void set_up_look(QApplication& program, Scheme scheme) {
  const bool dark =
      scheme == Scheme::dark || (scheme == Scheme::system && is_dark(desktop_palette()));
  if (qobject_cast<Style*>(program.style()) == nullptr) {
    QApplication::setStyle(new Style);
    program.installEventFilter(new WheelGuard(&program));
  }
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
