#include "app/batch/offscreen.h"

namespace drapewright::batch {

Offscreen::Offscreen() : prepared_(prepared()), application_(count_, arguments_) {}

/// Before the application looks for its platform.
bool Offscreen::prepared() {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
  return true;
}

}  // namespace drapewright::batch
