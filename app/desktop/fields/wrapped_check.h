#pragma once

#include <QWidget>

class QCheckBox;

namespace drapewright::desktop {

/// A check box whose text wraps; the whole text can be clicked.
class WrappedCheck : public QWidget {
  Q_OBJECT

 public:
  explicit WrappedCheck(const QString& text, QWidget* parent = nullptr);

  QCheckBox& box() { return *box_; }

 protected:
  void mouseReleaseEvent(QMouseEvent* event) override;

 private:
  QCheckBox* box_;
};

}  // namespace drapewright::desktop
