#pragma once

#include <QWidget>
#include <optional>

#include "app/desktop/stores/kept_rate.h"
#include "core/forecast/recorded.h"

class QLabel;
class QPushButton;

namespace drapewright::desktop {

/// What the cases recorded against what was planned, and the rate of extra dressings that follows:
/// taken over by a click, and taken back by another. A rate that was taken over is kept when the
/// program closes.
class CorrectionBox : public QWidget {
  Q_OBJECT

 public:
  explicit CorrectionBox(QWidget* parent = nullptr);

  /// Hidden where nothing was recorded and no rate that was taken over is in effect.
  /// @param rate  of extra dressings a week, as the forecast has it now
  void show_recorded(const forecast::RecordedUse& recorded, double rate);

 signals:
  void rate_chosen(double per_week);

 private:
  void show_offer(const forecast::RecordedUse& recorded);
  void accept();
  void go_back();

  double rate_ = 0;
  forecast::ExtraRate offered_;
  std::optional<TakenOverRate> taken_;  ///< nothing once the rate is another
  QLabel* words_;
  QPushButton* accept_;
  QPushButton* back_;
};

}  // namespace drapewright::desktop
