#include "app/desktop/stores/shelf_place_form.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;
constexpr int last_port = 65535;
constexpr int widest_field = 320;

QLineEdit* field(const char* name, QWidget* parent) {
  auto* line = new QLineEdit(parent);
  line->setObjectName(name);
  line->setMinimumHeight(least_height);
  line->setMaximumWidth(widest_field);
  return line;
}

}  // namespace

ShelfPlaceForm::ShelfPlaceForm(QWidget* parent)
    : QWidget(parent),
      file_(usual_shelf_file()),
      here_(new QRadioButton(spoken("On t&his computer"), this)),
      on_server_(
          new QRadioButton(spoken("On a PostgreS&QL server that several stores share"), this)),
      server_(build_server_fields()),
      open_(new QPushButton(spoken("Open this shelf"), this)) {
  here_->setObjectName("shelf_here");
  on_server_->setObjectName("shelf_on_server");
  open_->setObjectName("shelf_open");
  open_->setMinimumHeight(least_height);
  here_->setChecked(true);
  auto* choice = new QHBoxLayout;
  choice->addWidget(here_);
  choice->addWidget(on_server_);
  choice->addStretch(1);
  choice->addWidget(open_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(choice);
  column->addWidget(server_);
  connect(on_server_, &QRadioButton::toggled, this, &ShelfPlaceForm::tell);
  for (QLineEdit* each : {host_, database_, user_}) {
    connect(each, &QLineEdit::textChanged, this, &ShelfPlaceForm::tell);
  }
  for (QLineEdit* each : {host_, database_, user_, password_}) {
    connect(each, &QLineEdit::returnPressed, open_, &QPushButton::click);
  }
  connect(open_, &QPushButton::clicked, this, [this] {
    emit chosen(place());
    password_->clear();
  });
  tell();
}

QWidget* ShelfPlaceForm::build_server_fields() {
  auto* box = new QWidget(this);
  host_ = field("shelf_host", box);
  database_ = field("shelf_database", box);
  user_ = field("shelf_user", box);
  password_ = field("shelf_password", box);
  password_->setEchoMode(QLineEdit::Password);
  port_ = new QSpinBox(box);
  port_->setRange(1, last_port);
  port_->setValue(ShelfPlace().port);
  port_->setObjectName("shelf_port");
  port_->setMaximumWidth(widest_field);
  port_->setMinimumHeight(least_height);
  auto* left = new QFormLayout;
  left->addRow(spoken("Host"), host_);
  left->addRow(spoken("Port number"), port_);
  left->addRow(spoken("Database"), database_);
  auto* right = new QFormLayout;
  right->addRow(spoken("User"), user_);
  right->addRow(spoken("Password"), password_);
  right->addRow(
      quiet_text(spoken("Kept until the program is closed, and in no file. Leave it empty "
                        "where the server's client has its own."),
                 box));
  auto* row = new QHBoxLayout(box);
  row->setContentsMargins(0, 0, 0, 0);
  row->addLayout(left, 1);
  row->addLayout(right, 1);
  return box;
}

void ShelfPlaceForm::show_place(const ShelfPlace& place) {
  (place.is_server() ? on_server_ : here_)->setChecked(true);
  if (!place.is_server()) {
    file_ = place.file;
    return;
  }
  host_->setText(place.host);
  port_->setValue(place.port);
  database_->setText(place.database);
  user_->setText(place.user);
}

ShelfPlace ShelfPlaceForm::place() const {
  if (here_->isChecked()) return {.file = file_};
  return {.file = {},
          .host = host_->text().trimmed(),
          .port = port_->value(),
          .database = database_->text().trimmed(),
          .user = user_->text().trimmed(),
          .password = password_->text()};
}

void ShelfPlaceForm::ask_for_password() {
  show();
  password_->setFocus();
}

void ShelfPlaceForm::tell() {
  server_->setVisible(on_server_->isChecked());
  const bool complete = !host_->text().trimmed().isEmpty() &&
                        !database_->text().trimmed().isEmpty() &&
                        !user_->text().trimmed().isEmpty();
  open_->setEnabled(here_->isChecked() || complete);
}

}  // namespace drapewright::desktop
