#pragma once

#include <QWidget>

#include "app/desktop/jobs/plan_result.h"

namespace drapewright::desktop {

class CountBanner;
class FindingsPanel;
class MaterialsPanel;
class MeasuresPanel;

/// What to do: the count of pieces, then findings, measures and materials below each other.
class ResultPane : public QWidget {
  Q_OBJECT

 public:
  explicit ResultPane(QWidget* parent = nullptr);

  void show_result(const PlanResult& result);
  FindingsPanel& findings() { return *findings_; }
  MaterialsPanel& materials() { return *materials_; }
  /// It asks for no more than that, however large the text.
  void set_most_width(int px);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 private:
  int width_of(int characters) const;

  int most_width_ = QWIDGETSIZE_MAX;
  CountBanner* banner_;
  FindingsPanel* findings_;
  MeasuresPanel* measures_;
  MaterialsPanel* materials_;
};

}  // namespace drapewright::desktop
