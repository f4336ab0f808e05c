#pragma once

#include <QLabel>

namespace drapewright::desktop {

/// Text of several lines that is never squeezed: forms ask a label how high it is before they know
/// how wide, and give it too little or too much.
class WrappedLabel : public QLabel {
  Q_OBJECT

 public:
  explicit WrappedLabel(QWidget* parent = nullptr);
  void show_text(const QString& text);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void claim_height();
};

}  // namespace drapewright::desktop
