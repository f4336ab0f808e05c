#include "app/desktop/stores/shelf_job.h"

#include "core/base/error.h"

namespace drapewright::desktop {
namespace {

constexpr int most_log_lines = 1000;

std::shared_ptr<const ShelfView> look(const ShelfPlace& place, const QString& who,
                                      const ShelfJob::Action& action) {
  auto view = std::make_shared<ShelfView>();
  try {
    ShelfStore store(place, who);
    try {
      if (action) action(store);
    } catch (const InputError& refused) {  // what is there is shown all the same
      view->problem = QString::fromUtf8(refused.what());
    }
    view->shelf = store.load();
    view->log = store.log(most_log_lines);
    view->is_open = true;
  } catch (const std::exception& error) {
    view->problem = QString::fromUtf8(error.what());
  }
  return view;
}

}  // namespace

ShelfJob::ShelfJob(QObject* parent) : QObject(parent) {
  connect(&worker_, &Worker::busy_changed, this, &ShelfJob::busy_changed);
}

void ShelfJob::request(const ShelfPlace& place, const QString& who, const Action& action) {
  worker_.request([=, this](const Progress&) -> Worker::Delivery {
    return [this, view = look(place, who, action)] { emit finished(view); };
  });
}

}  // namespace drapewright::desktop
