#pragma once

#include <QWidget>

#include "app/desktop/jobs/plan_result.h"

class QLabel;

namespace drapewright::desktop {

/// The figure that must not be missed: how many pieces go in, and so must come out; and whether
/// anything says stop.
class CountBanner : public QWidget {
  Q_OBJECT

 public:
  explicit CountBanner(QWidget* parent = nullptr);

  void show_result(const PlanResult& result);
  QString count_text() const;

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void show_weights();
  void fit_font();

  std::vector<dressing::Finding> findings_;
  QLabel* count_;
  QLabel* advice_;
  QLabel* mark_;
  QLabel* weights_;
};

}  // namespace drapewright::desktop
