#pragma once

#include <QWidget>

#include "core/forecast/settings.h"

class QDoubleSpinBox;
class QSpinBox;

namespace drapewright::desktop {

/// What a forecast rests on beside the cases.
class ForecastForm : public QWidget {
  Q_OBJECT

 public:
  explicit ForecastForm(QWidget* parent = nullptr);

  /// @param first_day  day number
  forecast::Settings settings(int first_day) const;
  double extra_dressings() const;  ///< per week
  void set_extra_dressings(double per_week);

 signals:
  void changed();

 private:
  QDoubleSpinBox& extra_dressings_field() const;

  QSpinBox* weeks_;
  QSpinBox* review_;
  std::vector<QDoubleSpinBox*> numbers_;  ///< in the order of forecast::numbers
};

}  // namespace drapewright::desktop
