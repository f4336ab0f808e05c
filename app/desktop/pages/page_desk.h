#pragma once

#include <QDialog>
#include <QTimer>

#include "app/desktop/jobs/plan_result.h"
#include "app/desktop/jobs/worker.h"
#include "core/report/paper.h"

class QPrinter;
class QPushButton;

namespace drapewright::desktop {

class FileDesk;
class PagePreview;
class PageSettings;

/// What leaves the program on paper: chosen, looked at, then printed at life size or kept as PDF.
/// Shows the plan that it was opened with.
class PageDesk : public QDialog {
  Q_OBJECT

 public:
  /// @param today YYYY-MM-DD, the date of printing
  PageDesk(PlanResult result, std::string today, FileDesk& files, QWidget* parent = nullptr);

  const report::Document& document() const { return document_; }
  /// Whether the pages shown are still to be laid out.
  bool is_busy() const { return worker_.is_busy(); }
  PageSettings& settings() { return *settings_; }
  PagePreview& preview() { return *preview_; }
  /// @return false when the printer took no job
  bool print_on(QPrinter& printer);

 signals:
  void laid_out();

 private:
  QWidget* buttons();
  void lay_out();
  void take(report::Document document, const QString& fault);
  void ask_printer();
  void offer(bool pages);

  PlanResult result_;
  std::string today_;
  FileDesk& files_;
  report::Document document_;
  PageSettings* settings_;
  PagePreview* preview_;
  QPushButton* print_ = nullptr;
  QPushButton* save_ = nullptr;
  QTimer late_;  ///< runs out when pages take long enough to be waited for
  Worker worker_;
};

}  // namespace drapewright::desktop
