#include "app/desktop/panels/shape_form.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QFormLayout>
#include <QSignalBlocker>
#include <algorithm>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/text_field.h"
#include "app/desktop/panels/undermining_form.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int longest_id = 16;  // the file format's

bool is_free(const wound::Case& value, const std::string& id) {
  return std::ranges::none_of(value.current().wounds,
                              [&](const wound::Wound& wound) { return wound.id == id; });
}

}  // namespace

ShapeForm::ShapeForm(CaseDocument& document, QWidget* parent)
    : QWidget(parent), document_(document), wound_part_(wound_part()), zone_part_(zone_part()) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(wound_part_);
  column->addWidget(zone_part_);
  connect(&document, &CaseDocument::case_changed, this, &ShapeForm::show_case);
  show_case();
}

QWidget* ShapeForm::wound_part() {
  auto* part = new QWidget(this);
  id_ = new TextField("W1", part);
  id_->setObjectName("wound_id");
  id_->setAccessibleName(spoken("Wound's name"));
  id_->setMaxLength(longest_id);
  connect(id_, &QLineEdit::editingFinished, this, [this] {
    const std::string id = id_->text().trimmed().toStdString();
    if (ref_.kind != ShapeRef::Kind::wound || !exists(document_.value(), ref_)) return;
    if (!id.empty() && is_free(document_.value(), id)) {
      document_.edit(spoken("name of wound"), {},
                     [&](wound::Case& value) { value.current().wounds[ref_.index].id = id; });
    }
    show_case();  // a name that is empty or taken gives way to the old one
  });
  depth_ = wound_field("depth_cm", spoken("depth"), &wound::Wound::depth_cm);
  run_in_ = wound_field("wall_run_in_cm", spoken("wall run-in"), &wound::Wound::wall_run_in_cm);
  undermining_ = new UnderminingForm(document_, part);
  auto* form = new QFormLayout(part);
  form->setContentsMargins(0, 0, 0, 0);
  form->addRow(spoken("Name"), id_);
  form->addRow(depth_);
  form->addRow(run_in_);
  form->addRow(undermining_);
  return part;
}

QWidget* ShapeForm::zone_part() {
  auto* part = new QWidget(this);
  kind_ = new QComboBox(part);
  kind_->setObjectName("zone_kind");
  kind_->setAccessibleName(spoken("Kind of zone"));
  kind_->view()->setAccessibleName(spoken("Kind of zone"));
  kind_->addItems({spoken("No film on it"), spoken("No port on it")});
  kind_->setMinimumHeight(26);
  connect(kind_, &QComboBox::currentIndexChanged, this, [this](int index) {
    document_.edit(spoken("kind of zone"), {}, [&](wound::Case& value) {
      value.current().skin_zones.at(ref_.index).kind =
          index == 0 ? wound::ZoneKind::no_film : wound::ZoneKind::no_port;
    });
  });
  note_ = new TextField(spoken("for example: toes"), part);
  note_->setObjectName("zone_note");
  note_->setAccessibleName(spoken("Note on the zone"));
  connect(note_, &QLineEdit::textEdited, this, [this](const QString& text) {
    document_.edit(spoken("note on zone"), QString("zone_note%1").arg(ref_.index),
                   [&](wound::Case& value) {
                     value.current().skin_zones.at(ref_.index).note = text.toStdString();
                   });
  });
  connect(note_, &QLineEdit::editingFinished, this, [this] { document_.end_stretch(); });
  auto* form = new QFormLayout(part);
  form->setContentsMargins(0, 0, 0, 0);
  form->addRow(spoken("Kind"), kind_);
  form->addRow(spoken("Note"), note_);
  return part;
}

LimitedField* ShapeForm::wound_field(std::string_view id, const QString& what,
                                     double wound::Wound::*member) {
  auto* made = new LimitedField(practice::limit(id), {}, this);
  connect(&made->field(), &NumberField::entered, this,
          [this, what, member](std::optional<double> entered) {
            if (ref_.kind != ShapeRef::Kind::wound || !exists(document_.value(), ref_)) return;
            document_.edit(what, QString("%1 %2").arg(what).arg(ref_.index),
                           [&](wound::Case& value) {
                             value.current().wounds[ref_.index].*member = entered.value_or(0);
                           });
          });
  connect(&made->field(), &NumberField::left, this, [this] { document_.end_stretch(); });
  return made;
}

void ShapeForm::set_shape(const ShapeRef& ref) {
  ref_ = ref;
  show_case();
}

void ShapeForm::show_case() {
  const auto& value = document_.value();
  const bool there = exists(value, ref_);
  const bool is_wound = there && ref_.kind == ShapeRef::Kind::wound;
  wound_part_->setVisible(is_wound);
  undermining_->set_wound(is_wound ? std::optional(ref_.index) : std::nullopt);
  zone_part_->setVisible(there && ref_.kind == ShapeRef::Kind::zone);
  if (!there) return;
  if (ref_.kind == ShapeRef::Kind::wound) show_wound(value.current().wounds[ref_.index]);
  if (ref_.kind == ShapeRef::Kind::zone) {
    const auto& zone = value.current().skin_zones[ref_.index];
    const QSignalBlocker quiet(kind_);
    kind_->setCurrentIndex(zone.kind == wound::ZoneKind::no_film ? 0 : 1);
    note_->show_text(QString::fromStdString(zone.note));
  }
}

void ShapeForm::show_wound(const wound::Wound& wound) {
  if (!id_->hasFocus() || !id_->isModified()) id_->show_text(QString::fromStdString(wound.id));
  depth_->show_number(wound.depth_cm);
  run_in_->show_number(wound.wall_run_in_cm);
}

}  // namespace drapewright::desktop
