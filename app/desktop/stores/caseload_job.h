#pragma once

#include <QObject>
#include <QString>
#include <memory>
#include <vector>

#include "app/desktop/jobs/worker.h"
#include "core/forecast/study.h"

namespace drapewright::desktop {

/// A case file that could not be read or planned, and why.
struct CaseFault {
  QString file;
  QString reason;
};

/// What was made of a folder of cases.
struct CaseloadResult {
  QString folder;
  forecast::Settings settings;
  forecast::Forecast forecast;
  std::vector<forecast::PatientSummary> patients;
  std::vector<CaseFault> faults;
  QString problem;  ///< why there is no forecast at all; else empty
};

/// Reads every case of a folder, plans it and works out the forecast, on a thread of its own. A
/// broken file is a fault in the result and keeps nothing else from being read.
class CaseloadJob : public QObject {
  Q_OBJECT

 public:
  explicit CaseloadJob(QObject* parent = nullptr);

  void request(const QString& folder, const forecast::Settings& settings,
               const forecast::Shelf& stock);
  void cancel() { worker_.cancel(); }
  bool is_busy() const { return worker_.is_busy(); }

 signals:
  void finished(const std::shared_ptr<const drapewright::desktop::CaseloadResult>& result);
  void progressed(double fraction);
  void busy_changed(bool busy);

 private:
  Worker worker_;
};

}  // namespace drapewright::desktop
