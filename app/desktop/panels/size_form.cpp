#include "app/desktop/panels/size_form.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <cmath>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/geometry/clock.h"
#include "core/geometry/shapes.h"

namespace drapewright::desktop {
namespace {

LimitedField* size_field(std::string_view id, QWidget* parent) {
  return new LimitedField(
      practice::limit(id),
      {.decimals = 2, .step = 0.1, .optional = true, .when_empty = spoken("to be typed")}, parent);
}

NumberField* place_field(const QString& name, QWidget* parent) {
  auto* field = new NumberField({.minimum = -1000, .maximum = 1000, .unit = "cm"}, parent);
  field->setAccessibleName(name);
  return field;
}

}  // namespace

SizeForm::SizeForm(QWidget* parent)
    : QWidget(parent),
      length_(size_field("length_cm", this)),
      width_(size_field("width_cm", this)),
      hour_(new NumberField(clock_range(), this)),
      x_(place_field(spoken("Middle, x"), this)),
      y_(place_field(spoken("Middle, y"), this)),
      draw_(new QPushButton(this)) {
  hour_->setAccessibleName(spoken("Length points to"));
  hour_->setObjectName("length_hour");
  hour_->setToolTip(spoken("Which way the length lies: 12 is towards the patient's head."));
  hour_->show_number(12);
  draw_->setObjectName("draw_size");
  draw_->setMinimumHeight(28);
  build();
  for (NumberField* field : {&length_->field(), &width_->field()}) {
    connect(field, &NumberField::entered, this, &SizeForm::follow);
    field->installEventFilter(this);
  }
  connect(draw_, &QPushButton::clicked, this, &SizeForm::draw);
  follow();
}

void SizeForm::build() {
  auto* middle = new QHBoxLayout;
  middle->addWidget(x_);
  middle->addWidget(y_);
  auto* form = new QFormLayout;
  form->addRow(spoken("Length points to"), hour_);
  form->addRow(spoken("Middle at x, y"), middle);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(length_);
  column->addWidget(width_);
  column->addLayout(form);
  column->addWidget(draw_);
}

void SizeForm::set_shape(Shape shape) {
  shape_ = shape;
  follow();
}

void SizeForm::set_centre(geometry::Point centre) {
  const auto to_tenth_mm = [](double value) { return std::round(value * 100) / 100; };
  x_->show_number(to_tenth_mm(centre.x));
  y_->show_number(to_tenth_mm(centre.y));
}

void SizeForm::start() {
  length_->field().setFocus(Qt::OtherFocusReason);
  length_->field().selectAll();
}

void SizeForm::set_replaces(bool replaces) {
  replaces_ = replaces;
  follow();
}

void SizeForm::follow() {
  const QString name = shape_ == Shape::ellipse ? spoken("ellipse") : spoken("rectangle");
  draw_->setText(
      spoken(replaces_ ? term("Replace the outline by this {1}") : term("Draw the {1}"), {name}));
  draw_->setEnabled(length_->field().number() && width_->field().number());
}

void SizeForm::draw() {
  length_->field().interpretText();
  width_->field().interpretText();
  const auto length = length_->field().number();
  const auto width = width_->field().number();
  if (!length || !width) return;
  const geometry::Point centre{x_->value(), y_->value()};
  const double angle = geometry::clock_direction_deg(hour_->value(), head_deg_);
  if (shape_ == Shape::ellipse) {
    emit drawn(geometry::ellipse(*length, *width, centre, angle), "ellipse");
  } else {
    emit drawn(geometry::rectangle(*length, *width, centre, angle), "rectangle");
  }
}

bool SizeForm::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    auto* field = qobject_cast<NumberField*>(watched);
    if (field != nullptr && (key == Qt::Key_Return || key == Qt::Key_Enter)) {
      field->interpretText();
      if (draw_->isEnabled()) draw();
    }
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace drapewright::desktop
