#pragma once

#include <QWidget>

class QLabel;

namespace drapewright::desktop {

class SectionView;

/// The section, and beside it what must be known to read it.
class SectionPane : public QWidget {
  Q_OBJECT

 public:
  explicit SectionPane(QWidget* parent = nullptr);

  SectionView& view() { return *view_; }

 private:
  void tell();

  SectionView* view_;
  QLabel* notes_;
};

}  // namespace drapewright::desktop
