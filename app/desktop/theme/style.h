#pragma once

#include <QProxyStyle>

#include "app/desktop/theme/palette.h"

class QApplication;

namespace drapewright::desktop {

/// Fusion, with two things added that WCAG 2.2 asks for and that no palette can give it: edges of
/// fields and boxes at 3:1 against their ground, and a focus mark that is seen.
class Style : public QProxyStyle {
  Q_OBJECT

 public:
  Style();

  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                          QPainter* painter, const QWidget* widget) const override;
  int pixelMetric(PixelMetric metric, const QStyleOption* option,
                  const QWidget* widget) const override;
  QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                         const QWidget* widget) const override;

  /// Targets for fingers, half as large again as those for a mouse.
  void set_touch_sizes(bool large) { touch_ = large; }

 private:
  bool touch_ = false;
};

/// Keeps the wheel from changing a closed drop-down: who scrolls a form past it means the form.
class WheelGuard : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;
  bool eventFilter(QObject* watched, QEvent* event) override;
};

/// Gives the program our style, and the palette of `scheme`.
void set_up_look(QApplication& program, Scheme scheme);

/// Buttons, fields, tabs, menus and scroll bars for fingers, or for a mouse.
void set_touch_sizes(QApplication& program, bool large);

/// The program's text, `percent` of what the desktop asks for.
void set_text_size(QApplication& program, int percent);

}  // namespace drapewright::desktop
