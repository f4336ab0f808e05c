#include "app/desktop/jobs/plan_job.h"

#include <QMetaObject>
#include <utility>

namespace drapewright::desktop {
namespace {

PlanResult plan_of(const std::shared_ptr<const wound::Case>& value, const std::string& today,
                   const Progress& progress) {
  PlanResult result{.planned = value};
  try {
    result.plan =
        std::make_shared<const dressing::Plan>(dressing::plan_dressing(*value, progress, today));
  } catch (const InputError& error) {
    result.fault = error;
  } catch (const Cancelled&) {
    throw;
  } catch (const std::exception& error) {
    result.breakdown = QString::fromUtf8(error.what());
  }
  return result;
}

}  // namespace

PlanJob::PlanJob(QObject* parent)
    : QObject(parent), thread_([this](const std::stop_token& quit) { work(quit); }) {}

PlanJob::~PlanJob() { running_.request_stop(); }

void PlanJob::request(std::shared_ptr<const wound::Case> value, std::string today) {
  running_.request_stop();
  running_ = std::stop_source();
  {
    const std::lock_guard lock(mutex_);
    waiting_ = Request{++latest_, std::move(value), std::move(today), running_.get_token()};
  }
  wake_.notify_one();
  set_busy(true);
}

void PlanJob::cancel() {
  running_.request_stop();
  ++latest_;
  {
    const std::lock_guard lock(mutex_);
    waiting_.reset();
  }
  set_busy(false);
}

void PlanJob::work(const std::stop_token& quit) {
  while (true) {
    std::unique_lock lock(mutex_);
    if (!wake_.wait(lock, quit, [this] { return waiting_.has_value(); })) return;
    const Request request = *std::exchange(waiting_, std::nullopt);
    lock.unlock();
    run(request);
  }
}

void PlanJob::run(const Request& request) {
  const int number = request.number;
  const Progress progress(request.stop, [this, number](double fraction) {
    QMetaObject::invokeMethod(this, [=, this] { report_progress(number, fraction); });
  });
  try {
    const PlanResult result = plan_of(request.value, request.today, progress);
    QMetaObject::invokeMethod(this, [=, this] { report(number, result); });
  } catch (const Cancelled&) {  // a later request is on its way, or nobody waits any more
  }
}

void PlanJob::report(int number, const PlanResult& result) {
  if (number != latest_) return;
  set_busy(false);
  emit finished(result);
}

void PlanJob::report_progress(int number, double fraction) {
  if (number == latest_ && busy_) emit progressed(fraction);
}

void PlanJob::set_busy(bool busy) {
  if (busy == busy_) return;
  busy_ = busy;
  emit busy_changed(busy);
}

}  // namespace drapewright::desktop
