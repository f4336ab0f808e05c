#include "app/desktop/photo/photo_row.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSlider>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/number_field.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/wording/spoken.h"
#include "core/practice/limits.h"

namespace drapewright::desktop {
namespace {

constexpr int button_px = 28;
constexpr int full_strength = 100;

QPushButton* button(const QString& text, const QString& name, const QString& tip, QWidget* parent) {
  auto* made = new QPushButton(text, parent);
  made->setObjectName(name);
  made->setToolTip(tip);
  made->setMinimumHeight(button_px);
  return made;
}

}  // namespace

PhotoRow::PhotoRow(PhotoDesk& photo, QWidget* parent)
    : QWidget(parent),
      photo_(photo),
      words_(quiet_text({}, this)),
      length_(new NumberField(range_of(practice::limit("known_length_cm")), this)),
      set_(button(spoken("Set the scale"), "photo_set_scale",
                  spoken("Gives the photograph its scale."), this)),
      strength_(new QSlider(Qt::Horizontal, this)),
      turn_(button(spoken("Turn"), "photo_turn", spoken("A quarter turn, before there is a scale."),
                   this)),
      unroll_(button(spoken("Unroll"), "photo_unroll",
                     spoken("Lays the chosen outline out from the round limb onto the flat."),
                     this)),
      rules_(quiet_text(
          spoken("A photograph of a patient is personal data under local rules. It is kept "
                 "beside the case, without place, device or time."),
          this)) {
  words_->setObjectName("photo_words");
  length_->setObjectName("photo_length");
  length_->setAccessibleName(spoken("Known length in the photograph"));
  strength_->setRange(0, full_strength);
  strength_->setValue(static_cast<int>(full_strength * photo.strength()));
  strength_->setAccessibleName(spoken("How strongly the photograph shows"));
  strength_->setToolTip(spoken("How strongly the photograph shows under the drawing."));
  strength_->setMaximumWidth(120);
  strength_->setMinimumHeight(24);
  auto* remove = button(spoken("Remove photograph"), "photo_remove",
                        spoken("Takes it out of the case; the outlines stay."), this);
  connect(strength_, &QSlider::valueChanged, this,
          [this](int value) { photo_.set_strength(static_cast<double>(value) / full_strength); });
  connect(turn_, &QPushButton::clicked, &photo_, &PhotoDesk::turn);
  connect(unroll_, &QPushButton::clicked, &photo_, &PhotoDesk::unroll);
  connect(remove, &QPushButton::clicked, &photo_, &PhotoDesk::remove);
  connect(set_, &QPushButton::clicked, this, &PhotoRow::give);
  // Queued: the field takes what was typed first.
  connect(length_->findChild<QLineEdit*>(), &QLineEdit::returnPressed, this, &PhotoRow::give,
          Qt::QueuedConnection);
  auto* row = new QHBoxLayout;
  row->addWidget(length_);
  row->addWidget(set_);
  row->addWidget(strength_);
  row->addWidget(turn_);
  row->addWidget(unroll_);
  row->addWidget(remove);
  row->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 0, 6, 0);
  column->addLayout(row);
  column->addWidget(words_);
  column->addWidget(rules_);
  connect(&photo, &PhotoDesk::changed, this, &PhotoRow::follow);
  follow();
}

void PhotoRow::follow() {
  const QString words = photo_.words();
  setVisible(!words.isEmpty());
  words_->setText(words);
  const bool asked = photo_.asked() != PhotoDesk::Asked::nothing;
  length_->setVisible(asked);
  set_->setVisible(asked);
  turn_->setVisible(photo_.has_photo() && !photo_.is_measured());
  unroll_->setVisible(photo_.is_measured());
  rules_->setVisible(!photo_.is_measured());  // said once, before the work begins
  if (!asked) return;
  length_->setFocus(Qt::OtherFocusReason);
  length_->selectAll();
  set_->setDefault(true);
}

void PhotoRow::give() {
  if (const auto cm = length_->number()) photo_.give_length(*cm);
}

}  // namespace drapewright::desktop
