#pragma once

#include <QObject>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <string>
#include <thread>

#include "app/desktop/jobs/plan_result.h"

namespace drapewright::desktop {

/// Plans cases on a thread of its own. It takes a value and gives a value back; the latest request
/// wins, and one that is still running is told to stop.
class PlanJob : public QObject {
  Q_OBJECT

 public:
  explicit PlanJob(QObject* parent = nullptr);
  ~PlanJob() override;
  Q_DISABLE_COPY_MOVE(PlanJob)

  /// @param today  YYYY-MM-DD, to say how old the assessment is; empty: not said
  void request(std::shared_ptr<const wound::Case> value, std::string today = {});
  /// Drops what is asked for or under way; nothing is reported for it.
  void cancel();
  bool is_busy() const { return busy_; }

 signals:
  /// Emitted in this object's thread, for the latest request only.
  void finished(const drapewright::desktop::PlanResult& result);
  /// 0 to 1, while the latest request runs.
  void progressed(double fraction);
  void busy_changed(bool busy);

 private:
  struct Request {
    int number = 0;
    std::shared_ptr<const wound::Case> value;
    std::string today;
    std::stop_token stop;
  };

  void work(const std::stop_token& quit);
  void run(const Request& request);
  void report(int number, const PlanResult& result);
  void report_progress(int number, double fraction);
  void set_busy(bool busy);

  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Request> waiting_;  ///< guarded by mutex_
  std::stop_source running_;        ///< of the latest request; touched by this object's thread only
  int latest_ = 0;                  ///< number of the latest request; this object's thread only
  bool busy_ = false;
  std::jthread thread_;  ///< last: it ends before what it uses
};

}  // namespace drapewright::desktop
