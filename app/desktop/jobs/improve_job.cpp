#include "app/desktop/jobs/improve_job.h"

#include <QMetaObject>
#include <chrono>
#include <limits>
#include <utility>

namespace drapewright::desktop {
namespace {

using Clock = std::chrono::steady_clock;

/// A share of the time has passed, or the user has had enough.
std::function<bool(double)> timer(double seconds, std::shared_ptr<std::atomic<bool>> stopped) {
  return [began = Clock::now(), seconds, stopped = std::move(stopped)](double share) {
    return stopped->load() ||
           std::chrono::duration<double>(Clock::now() - began).count() >= share * seconds;
  };
}

PlanResult result_of(const std::shared_ptr<const wound::Case>& value, dressing::Plan plan) {
  return {.planned = value, .plan = std::make_shared<const dressing::Plan>(std::move(plan))};
}

}  // namespace

ImproveJob::ImproveJob(QObject* parent) : QObject(parent) {
  connect(&worker_, &Worker::busy_changed, this, &ImproveJob::busy_changed);
}

ImproveJob::~ImproveJob() { stop(); }

void ImproveJob::stop() {
  if (stopped_) stopped_->store(true);
}

void ImproveJob::cancel() {
  ++latest_;
  stop();
  worker_.cancel();
}

void ImproveJob::request(std::shared_ptr<const wound::Case> value, std::string today,
                         double seconds) {
  stop();
  stopped_ = std::make_shared<std::atomic<bool>>(false);
  const int number = ++latest_;
  worker_.request([this, number, value = std::move(value), today = std::move(today), seconds,
                   stopped = stopped_](const Progress& progress) -> Worker::Delivery {
    dressing::PlanOptions how{.today = today, .compare_sheets = true};
    how.cut.steps = std::numeric_limits<std::int64_t>::max();
    how.cut.out_of_time = timer(seconds, stopped);
    how.on_better = [&](const dressing::Plan& plan) {
      QMetaObject::invokeMethod(
          this, [=, this, result = result_of(value, plan)] { deliver(number, result); });
    };
    try {
      PlanResult last = result_of(value, dressing::plan_dressing(*value, progress, how));
      return [=, this] { deliver(number, last); };
    } catch (const Cancelled&) {
      throw;
    } catch (const std::exception&) {  // the plan itself has failed the same way, and says so
      return [] {};
    }
  });
}

void ImproveJob::deliver(int number, const PlanResult& result) {
  if (number == latest_) emit found(result);
}

}  // namespace drapewright::desktop
