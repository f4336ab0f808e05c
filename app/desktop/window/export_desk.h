#pragma once

#include <QObject>
#include <functional>
#include <vector>

#include "app/desktop/jobs/plan_result.h"
#include "app/desktop/jobs/worker.h"

class QAction;
class QMenu;
class QWidget;

namespace drapewright::desktop {

class FileDesk;

/// The plan and the case's measures out to other programs, in open formats (docs/exchange.md).
/// Worked out in the background, as every earlier assessment is planned again; one at a time.
class ExportDesk : public QObject {
  Q_OBJECT

 public:
  /// @param latest  what is to be exported when it is asked for
  ExportDesk(FileDesk& files, std::function<PlanResult()> latest, QWidget& window);

  void add_to(QMenu& menu);
  /// Offers what can be exported: nothing while there is no plan.
  void offer();

 private:
  struct Format;
  static const std::vector<Format>& formats();
  void save(const Format& format);

  FileDesk& files_;
  std::function<PlanResult()> latest_;
  QWidget& window_;
  std::vector<QAction*> actions_;
  Worker worker_;
};

}  // namespace drapewright::desktop
