#pragma once

#include <QObject>
#include <memory>
#include <string>

#include "app/desktop/jobs/plan_result.h"
#include "app/desktop/jobs/worker.h"

namespace drapewright::desktop {

/// Plans cases on a thread of its own. It takes a value and gives a value back; the latest request
/// wins, and one that is still running is told to stop.
class PlanJob : public QObject {
  Q_OBJECT

 public:
  explicit PlanJob(QObject* parent = nullptr);

  /// @param today  YYYY-MM-DD, to say how old the assessment is; empty: not said
  void request(std::shared_ptr<const wound::Case> value, std::string today = {});
  /// Drops what is asked for or under way; nothing is reported for it.
  void cancel() { worker_.cancel(); }
  bool is_busy() const { return worker_.is_busy(); }

 signals:
  /// Emitted in this object's thread, for the latest request only.
  void finished(const drapewright::desktop::PlanResult& result);
  /// 0 to 1, while the latest request runs.
  void progressed(double fraction);
  void busy_changed(bool busy);

 private:
  Worker worker_;
};

}  // namespace drapewright::desktop
