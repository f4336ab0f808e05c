#pragma once

#include <QObject>

#include "app/desktop/theme/palette.h"

class QMenu;

namespace drapewright::desktop {

/// The choices of palette, text size and language in the View menu; kept between runs.
class Appearance : public QObject {
  Q_OBJECT

 public:
  explicit Appearance(QObject* parent = nullptr);

  void add_to(QMenu& menu);
  /// Applies what was chosen last time.
  static void restore();
  /// Speaks the language chosen last time; before any window is built.
  static void restore_language();
  /// Whether everything is to be large enough for fingers.
  static bool touch_sizes();

 signals:
  /// Another language is to be spoken from the next start on.
  void language_chosen();
  void touch_sizes_changed(bool large);

 private:
  void add_schemes(QMenu& menu);
  void add_text_sizes(QMenu& menu);
  void add_touch_sizes(QMenu& menu);
  void add_languages(QMenu& menu);
};

}  // namespace drapewright::desktop
