#pragma once

#include <QObject>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include "core/base/progress.h"

namespace drapewright::desktop {

/// Works on a thread of its own, one task at a time. The latest request wins, and a task that is
/// still running is told to stop. What a task takes and gives are values: it must not refer to
/// anything that this object's thread may change.
class Worker : public QObject {
  Q_OBJECT

 public:
  using Delivery = std::function<void()>;
  /// Done on the worker's thread; what it returns is called in this object's thread. Throws
  /// Cancelled when it was told to stop, and nothing else.
  using Task = std::function<Delivery(const Progress& progress)>;

  explicit Worker(QObject* parent = nullptr);
  ~Worker() override;
  Q_DISABLE_COPY_MOVE(Worker)

  void request(Task task);
  /// Drops what is asked for or under way; nothing is delivered for it.
  void cancel();
  bool is_busy() const { return busy_; }

 signals:
  /// 0 to 1, while the latest request runs.
  void progressed(double fraction);
  void busy_changed(bool busy);

 private:
  struct Request {
    int number = 0;
    Task task;
    std::stop_token stop;
  };

  void work(const std::stop_token& quit);
  void run(const Request& request);
  void deliver(int number, const Delivery& delivery);
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
