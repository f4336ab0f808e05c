#pragma once

#include <QWidget>

class QLabel;
class QPushButton;

namespace drapewright::desktop {

class CaseDocument;

/// Says whether the ports' places are chosen, how they are, and takes the choice back.
class PortPlaceRow : public QWidget {
  Q_OBJECT

 public:
  explicit PortPlaceRow(CaseDocument& document, QWidget* parent = nullptr);

 private:
  void show_case();

  CaseDocument& document_;
  QLabel* state_;
  QPushButton* automatic_;
};

/// Gives every port its automatic place, as one step of undo.
void take_back_port_places(CaseDocument& document);

}  // namespace drapewright::desktop
