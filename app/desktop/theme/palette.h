#pragma once

#include <QColor>
#include <QPalette>

namespace drapewright::desktop {

/// Which of our two palettes is used; `system` takes the one nearer to the desktop's own.
enum class Scheme { system, light, dark };

QPalette light_palette();
QPalette dark_palette();
/// Whether text is lighter than its ground.
bool is_dark(const QPalette& palette);

/// Contrast of two opaque colours, 1 to 21, as WCAG 2.2 defines it ("contrast ratio").
double contrast_ratio(const QColor& a, const QColor& b);

/// Ink for words and marks that are neither plain text nor a link, readable (4.5:1) on the
/// palette's window and base.
struct Inks {
  QColor stop;
  QColor warning;
  QColor note;
  QColor muted;    ///< small explanations
  QColor outline;  ///< edges of fields and buttons (3:1)
};
Inks inks(const QPalette& palette);

}  // namespace drapewright::desktop
