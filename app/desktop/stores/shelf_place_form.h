#pragma once

#include <QWidget>

#include "app/desktop/stores/shelf_place.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QRadioButton;
class QSpinBox;

namespace drapewright::desktop {

/// Where the shelf is kept: on this computer, or on a server that several stores share. The
/// password is asked for here and goes no further than to the server.
class ShelfPlaceForm : public QWidget {
  Q_OBJECT

 public:
  explicit ShelfPlaceForm(QWidget* parent = nullptr);

  void show_place(const ShelfPlace& place);
  ShelfPlace place() const;
  void ask_for_password();

 signals:
  void chosen(const drapewright::desktop::ShelfPlace& place);

 private:
  QWidget* build_server_fields();
  void tell();

  QString file_;
  QRadioButton* here_;
  QRadioButton* on_server_;
  QWidget* server_;
  QLineEdit* host_;
  QSpinBox* port_;
  QLineEdit* database_;
  QLineEdit* user_;
  QLineEdit* password_;
  QPushButton* open_;
};

}  // namespace drapewright::desktop
