#include "app/desktop/jobs/plan_job.h"

#include <utility>

namespace drapewright::desktop {
namespace {

PlanResult plan_of(const std::shared_ptr<const wound::Case>& value, const std::string& today,
                   const Progress& progress) {
  PlanResult result{.planned = value};
  try {
    result.plan = std::make_shared<const dressing::Plan>(
        dressing::plan_dressing(*value, progress, {.today = today}));
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

PlanJob::PlanJob(QObject* parent) : QObject(parent) {
  connect(&worker_, &Worker::progressed, this, &PlanJob::progressed);
  connect(&worker_, &Worker::busy_changed, this, &PlanJob::busy_changed);
}

void PlanJob::request(std::shared_ptr<const wound::Case> value, std::string today) {
  worker_.request([this, value = std::move(value),
                   today = std::move(today)](const Progress& progress) -> Worker::Delivery {
    return [this, result = plan_of(value, today, progress)] { emit finished(result); };
  });
}

}  // namespace drapewright::desktop
