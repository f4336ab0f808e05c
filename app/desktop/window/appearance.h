#pragma once

#include <QObject>

#include "app/desktop/theme/palette.h"

class QMenu;

namespace drapewright::desktop {

/// The choices of palette and text size in the View menu; kept between runs.
class Appearance : public QObject {
  Q_OBJECT

 public:
  explicit Appearance(QObject* parent = nullptr);

  void add_to(QMenu& menu);
  /// Applies what was chosen last time.
  static void restore();

 private:
  void add_schemes(QMenu& menu);
  void add_text_sizes(QMenu& menu);
};

}  // namespace drapewright::desktop
