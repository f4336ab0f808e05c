#pragma once

#include <QFrame>
#include <vector>

#include "core/report/layer_style.h"

class QToolButton;

namespace drapewright::desktop {

/// The legend in the view's corner: a heading that folds it, and a row for each layer shown.
class LegendBox : public QFrame {
  Q_OBJECT

 public:
  explicit LegendBox(QWidget* parent);

  void set_rows(std::vector<report::LayerKind> layers, QStringList notes);
  void set_ground(report::Ground ground);
  bool is_open() const { return open_; }
  /// Folds or unfolds it, unless the user has done either before.
  void suggest_open(bool open);
  QSize unfolded_size() const;

 signals:
  void folded();  ///< or unfolded, by the user

 private:
  void rebuild();
  void set_open(bool open);

  QToolButton* heading_;
  QWidget* rows_;
  std::vector<report::LayerKind> layers_;
  QStringList notes_;
  bool open_ = true;
  bool user_chose_ = false;
  report::Ground ground_ = report::Ground::light;
};

}  // namespace drapewright::desktop
