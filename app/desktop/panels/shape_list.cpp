#include "app/desktop/panels/shape_list.h"

#include <QHBoxLayout>
#include <QListWidget>
#include <QMenu>
#include <QPushButton>
#include <QSignalBlocker>

#include "app/desktop/document/case_document.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int rows_shown = 3;
constexpr int least_row_px = 24;

}  // namespace

ShapeList::ShapeList(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      list_(new QListWidget(this)),
      remove_(new QPushButton(spoken("Remove"), this)) {
  list_->setObjectName("shapes");
  list_->setAccessibleName(spoken("Wounds and skin zones"));
  remove_->setToolTip(spoken("Take the chosen outline out of the case."));
  remove_->setMinimumHeight(26);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(add_button());
  buttons->addWidget(remove_);
  buttons->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(list_);
  column->addLayout(buttons);
  connect(remove_, &QPushButton::clicked, this, &ShapeList::remove_chosen);
  connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
    const auto all = shapes_of(document_.value());
    if (row >= 0 && row < static_cast<int>(all.size())) {
      choose({.ref = all[static_cast<std::size_t>(row)], .is_new = false});
    }
  });
  connect(&document, &CaseDocument::case_changed, this, &ShapeList::show_case);
  connect(&document, &CaseDocument::case_replaced, this, [this] { target_ = first_target(); });
  show_case();
}

QPushButton* ShapeList::add_button() {
  auto* button = new QPushButton(spoken("Add"), this);
  button->setObjectName("add_shape");
  button->setMinimumHeight(26);
  button->setToolTip(spoken("Add a wound, an island of intact skin, or a skin zone."));
  auto* menu = new QMenu(button);
  using Kind = ShapeRef::Kind;
  add_choice(*menu, spoken("Wound"), "add_wound", {.ref = {Kind::wound}});
  island_ = add_choice(*menu, spoken("Island of intact skin in the wound"), "add_island",
                       {.ref = {Kind::island}});
  add_choice(*menu, spoken("No-film zone"), "add_no_film",
             {.ref = {Kind::zone}, .zone_kind = wound::ZoneKind::no_film});
  add_choice(*menu, spoken("No-port zone"), "add_no_port",
             {.ref = {Kind::zone}, .zone_kind = wound::ZoneKind::no_port});
  button->setMenu(menu);
  return button;
}

QAction* ShapeList::add_choice(QMenu& menu, const QString& text, const QString& name,
                               OutlineTarget target) {
  QAction* action = menu.addAction(text);
  action->setObjectName(name);
  connect(action, &QAction::triggered, this, [this, target] {
    OutlineTarget wanted = target;
    // An island goes into the wound that is chosen, or that the chosen island is in.
    if (wanted.ref.kind == ShapeRef::Kind::island && target_.ref.kind != ShapeRef::Kind::zone) {
      wanted.ref.index = target_.ref.index;
    }
    choose(wanted);
  });
  return action;
}

OutlineTarget ShapeList::first_target() const {
  const auto all = shapes_of(document_.value());
  return all.empty() ? OutlineTarget{} : OutlineTarget{.ref = all.front(), .is_new = false};
}

void ShapeList::choose(const OutlineTarget& target) {
  target_ = target;
  show_case();
}

void ShapeList::show_case() {
  const auto& value = document_.value();
  const auto all = shapes_of(value);
  const bool in_wound = target_.is_new && target_.ref.kind == ShapeRef::Kind::island;
  const bool gone = (!target_.is_new && !exists(value, target_.ref)) ||
                    (in_wound && target_.ref.index >= value.current().wounds.size());
  if (gone) target_ = first_target();
  const QSignalBlocker quiet(list_);
  list_->clear();
  for (const auto& ref : all) {
    const QString indent = ref.kind == ShapeRef::Kind::island ? "    " : "";
    list_->addItem(indent + title_of(value, ref));
    if (!target_.is_new && ref == target_.ref) list_->setCurrentRow(list_->count() - 1);
  }
  if (target_.is_new) {
    list_->addItem(spoken("{1} (outline below)", {title_of(value, target_)}));
    list_->setCurrentRow(list_->count() - 1);
  }
  const int height = std::max(fontMetrics().height() + 6, least_row_px);
  for (int row = 0; row < list_->count(); ++row) list_->item(row)->setSizeHint({0, height});
  list_->setFixedHeight(rows_shown * height + 2 * list_->frameWidth());
  remove_->setEnabled(!target_.is_new);
  island_->setEnabled(!value.current().wounds.empty());
  emit target_changed(target_);
}

void ShapeList::remove_chosen() {
  const auto& value = document_.value();
  if (target_.is_new || !exists(value, target_.ref)) return;
  const ShapeRef ref = target_.ref;
  document_.edit(spoken("remove {1}", {title_of(value, ref)}), {},
                 [&](wound::Case& changed) { remove_shape(changed, ref); });
}

}  // namespace drapewright::desktop
