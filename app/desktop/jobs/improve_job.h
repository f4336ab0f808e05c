#pragma once

#include <QObject>
#include <atomic>
#include <memory>
#include <string>

#include "app/desktop/jobs/plan_result.h"
#include "app/desktop/jobs/worker.h"

namespace drapewright::desktop {

/// Looks for a better way to cut the filler of a case, on a thread of its own, for a given time.
/// It takes a value and gives whole plans back, each better cut than the one before. The latest
/// request wins.
class ImproveJob : public QObject {
  Q_OBJECT

 public:
  explicit ImproveJob(QObject* parent = nullptr);
  ~ImproveJob() override;

  /// @param today  YYYY-MM-DD, as for the plan
  void request(std::shared_ptr<const wound::Case> value, std::string today, double seconds);
  /// Ends the search early: what was found so far is delivered.
  void stop();
  /// Drops the search; nothing more is delivered for it.
  void cancel();
  bool is_busy() const { return worker_.is_busy(); }

 signals:
  /// A plan that is cut better than the one before; emitted in this object's thread.
  void found(const drapewright::desktop::PlanResult& result);
  void busy_changed(bool busy);

 private:
  using Flag = std::shared_ptr<std::atomic<bool>>;

  void deliver(int number, const PlanResult& result);

  Flag stopped_;
  int latest_ = 0;
  Worker worker_;  ///< last: it ends before what it uses
};

}  // namespace drapewright::desktop
