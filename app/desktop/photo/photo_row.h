#pragma once

#include <QWidget>

class QLabel;
class QPushButton;
class QSlider;

namespace drapewright::desktop {

class NumberField;
class PhotoDesk;

/// What is done with the photograph: its strength, a quarter turn, the length that was marked, the
/// limb, taking it away. Hidden while there is none.
class PhotoRow : public QWidget {
  Q_OBJECT

 public:
  explicit PhotoRow(PhotoDesk& photo, QWidget* parent = nullptr);

 private:
  void follow();
  void give();

  PhotoDesk& photo_;
  QLabel* words_;
  NumberField* length_;
  QPushButton* set_;
  QSlider* strength_;
  QPushButton* turn_;
  QPushButton* unroll_;
  QLabel* rules_;
};

}  // namespace drapewright::desktop
