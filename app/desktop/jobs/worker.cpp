#include "app/desktop/jobs/worker.h"

#include <QMetaObject>
#include <utility>

namespace drapewright::desktop {

Worker::Worker(QObject* parent)
    : QObject(parent), thread_([this](const std::stop_token& quit) { work(quit); }) {}

Worker::~Worker() { running_.request_stop(); }

void Worker::request(Task task) {
  running_.request_stop();
  running_ = std::stop_source();
  {
    const std::lock_guard lock(mutex_);
    waiting_ = Request{++latest_, std::move(task), running_.get_token()};
  }
  wake_.notify_one();
  set_busy(true);
}

void Worker::cancel() {
  running_.request_stop();
  ++latest_;
  {
    const std::lock_guard lock(mutex_);
    waiting_.reset();
  }
  set_busy(false);
}

void Worker::work(const std::stop_token& quit) {
  while (true) {
    std::unique_lock lock(mutex_);
    if (!wake_.wait(lock, quit, [this] { return waiting_.has_value(); })) return;
    const Request request = *std::exchange(waiting_, std::nullopt);
    lock.unlock();
    run(request);
  }
}

void Worker::run(const Request& request) {
  const int number = request.number;
  const Progress progress(request.stop, [this, number](double fraction) {
    QMetaObject::invokeMethod(this, [=, this] { report_progress(number, fraction); });
  });
  try {
    const Delivery delivery = request.task(progress);
    QMetaObject::invokeMethod(this, [=, this] { deliver(number, delivery); });
  } catch (const Cancelled&) {  // a later request is on its way, or nobody waits any more
  }
}

void Worker::deliver(int number, const Delivery& delivery) {
  if (number != latest_) return;
  set_busy(false);
  delivery();
}

void Worker::report_progress(int number, double fraction) {
  if (number == latest_ && busy_) emit progressed(fraction);
}

void Worker::set_busy(bool busy) {
  if (busy == busy_) return;
  busy_ = busy;
  emit busy_changed(busy);
}

}  // namespace drapewright::desktop
