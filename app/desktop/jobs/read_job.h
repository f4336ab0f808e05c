#pragma once

#include <QObject>
#include <QString>
#include <memory>
#include <optional>

#include "app/desktop/jobs/worker.h"
#include "core/base/error.h"
#include "core/wound/case.h"

namespace drapewright::desktop {

/// What became of a file: the case in it, or why there is none.
struct ReadResult {
  QString path;
  std::shared_ptr<const wound::Case> value;  ///< nothing when it could not be read
  std::optional<InputError> fault;
};

/// Reads and checks case files on a thread of its own; the latest request wins.
class ReadJob : public QObject {
  Q_OBJECT

 public:
  explicit ReadJob(QObject* parent = nullptr);

  void request(const QString& path);
  /// Nothing is reported for a file that is being read.
  void cancel() { worker_.cancel(); }
  bool is_busy() const { return worker_.is_busy(); }

 signals:
  void finished(const drapewright::desktop::ReadResult& result);
  /// 0 to 1, while a file is being read.
  void progressed(double fraction);
  void busy_changed(bool busy);

 private:
  Worker worker_;
};

}  // namespace drapewright::desktop
