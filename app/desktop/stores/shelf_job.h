#pragma once

#include <QObject>
#include <functional>
#include <memory>
#include <vector>

#include "app/desktop/jobs/worker.h"
#include "app/desktop/stores/shelf_store.h"

namespace drapewright::desktop {

/// A shelf as it stood at one moment.
struct ShelfView {
  bool is_open = false;
  forecast::Shelf shelf;
  std::vector<Booking> log;  ///< the latest first
  QString problem;           ///< what was refused, or why the shelf could not be opened; else empty
};

/// Books and reads on a thread of its own. The shelf is opened anew each time: what others booked
/// is always seen, and a server that was away for a while is no trouble.
class ShelfJob : public QObject {
  Q_OBJECT

 public:
  using Action = std::function<void(ShelfStore&)>;

  explicit ShelfJob(QObject* parent = nullptr);

  /// @param action  what to book; none: look only
  /// @pre not busy
  void request(const ShelfPlace& place, const QString& who, const Action& action = {});
  bool is_busy() const { return worker_.is_busy(); }

 signals:
  void finished(const std::shared_ptr<const drapewright::desktop::ShelfView>& view);
  void busy_changed(bool busy);

 private:
  Worker worker_;
};

}  // namespace drapewright::desktop
