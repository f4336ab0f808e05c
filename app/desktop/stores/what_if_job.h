#pragma once

#include <QObject>
#include <QString>
#include <memory>
#include <vector>

#include "app/desktop/jobs/worker.h"
#include "app/desktop/stores/caseload_job.h"

namespace drapewright::desktop {

/// A forecast with one thing changed, or as it is.
struct Alternative {
  QString title;
  std::string words;  ///< "change_every_h=48" (core/casefile/what_if.h); empty: as it is
};

struct WhatIfResult {
  struct Column {
    QString title;
    forecast::Forecast forecast;
  };
  std::vector<Column> columns;    ///< the first is as it is
  std::vector<CaseFault> faults;  ///< these cases are in no column
  QString problem;                ///< why there is nothing to compare; else empty
};

/// The same cases under several alternatives, each case read once, on a thread of its own.
class WhatIfJob : public QObject {
  Q_OBJECT

 public:
  explicit WhatIfJob(QObject* parent = nullptr);

  void request(const QString& folder, const forecast::Settings& settings,
               const forecast::Shelf& stock, const std::vector<Alternative>& alternatives);
  void cancel() { worker_.cancel(); }
  bool is_busy() const { return worker_.is_busy(); }

 signals:
  void finished(const std::shared_ptr<const drapewright::desktop::WhatIfResult>& result);
  void progressed(double fraction);
  void busy_changed(bool busy);

 private:
  Worker worker_;
};

}  // namespace drapewright::desktop
