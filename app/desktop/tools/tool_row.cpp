#include "app/desktop/tools/tool_row.h"

#include <QAction>
#include <QActionGroup>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QSignalBlocker>
#include <QToolButton>
#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

struct ToolWords {
  Tool tool;
  const char* title;
  const char* key;
  const char* tip;
};

// Letters are free while the drawing has the keyboard; typing into a field never meets them.
constexpr ToolWords words_of_tools[] = {
    {Tool::look, term("Look"), "L", term("Move the drawing, the port and the section's ends.")},
    {Tool::trace, term("Trace"), "T",
     term("Freehand with mouse, finger or pen: go round the wound's edge in one stroke.")},
    {Tool::corners, term("Corners"), "C",
     term("Click corner after corner. Close with a click on the first one, a double click or "
          "Enter.")},
    {Tool::ellipse, term("Ellipse"), "E", term("Drag the length, then click at the width.")},
    {Tool::rectangle, term("Rectangle"), "R", term("Drag the length, then click at the width.")},
    {Tool::points, term("Points"), "P",
     term("Drag a corner of the chosen outline; press on its edge for a new one; right click or "
          "Delete "
          "takes one out.")},
    {Tool::whole, term("Whole"), "W",
     term("Drag inside the chosen outline to move it; the round handle turns it, a corner scales "
          "it.")},
    {Tool::add, term("Add"), "A",
     term("Go round what is to be added to the chosen outline. Drawn over two wounds it joins "
          "them.")},
    {Tool::take_away, term("Take away"), "D",
     term("Go round what is to be taken from the chosen outline.")},
    {Tool::split, term("Split"), "X",
     term("Draw a line right across the chosen outline: two parts.")},
    {Tool::retrace, term("Retrace"), "G",
     term("From the edge to the edge: the stretch between is drawn anew.")},
    {Tool::smooth, term("Smooth"), "S",
     term("Along a stretch of the edge: its bumps are smoothed.")},
    {Tool::undermining, term("Undermining"), "U",
     term("From the edge outwards, and round to where it ends: a range of hours, and how far.")},
    {Tool::tunnel, term("Tunnel"), "N",
     term("From its mouth on the edge to where the probe ended.")},
    {Tool::measure, term("Measure"), "M",
     term("Two points: a distance. Three: an angle and an area. Nothing is changed.")},
    {Tool::scale_length, term("Length"), "1",
     term("Two points on the ruler in the photograph, then its length.")},
    {Tool::scale_square, term("Square"), "4",
     term("The four corners of a flat square in the photograph, then its side: takes out the "
          "tilt.")},
    {Tool::edge, term("Edge"), "F",
     term("Click along the wound's edge: the line follows the strongest contrast between two "
          "clicks. "
          "Check every stretch.")},
    {Tool::limb_axis, term("Limb line"), "2",
     term("Two points on the limb's middle line in the photograph.")},
};

const ToolWords& words_of(Tool tool) {
  return *std::ranges::find(words_of_tools, tool, &ToolWords::tool);
}

constexpr int button_px = 28, touch_px = 44;

}  // namespace

ToolRow::ToolRow(TracingDesk& desk, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      all_(new QActionGroup(this)),
      becomes_(new QComboBox(this)),
      words_(quiet_text({}, this)),
      repair_(repair_row()) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 0, 6, 0);
  column->setSpacing(4);
  column->addWidget(top_row());
  words_->setObjectName("tool_words");
  column->addWidget(repair_);
  connect(&desk, &TracingDesk::tool_changed, this, &ToolRow::follow);
  connect(&desk, &TracingDesk::target_changed, this, &ToolRow::fill_targets);
  connect(&desk, &TracingDesk::held_changed, this, &ToolRow::follow);
  connect(&desk, &TracingDesk::said, this, &ToolRow::show_words);
  connect(&desk.document(), &CaseDocument::case_changed, this, &ToolRow::fill_targets);
  fill_targets();
  follow();
}

QWidget* ToolRow::top_row() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  add_group(spoken("Look"), {Tool::look});
  add_group(spoken("Draw"), {Tool::trace, Tool::corners, Tool::ellipse, Tool::rectangle});
  add_group(spoken("Change"), {Tool::points, Tool::whole, Tool::add, Tool::take_away, Tool::split,
                               Tool::retrace, Tool::smooth});
  add_group(spoken("Mark"), {Tool::undermining, Tool::tunnel});
  add_group(spoken("Measure"), {Tool::measure});
  add_group(spoken("Photograph"),
            {Tool::scale_length, Tool::scale_square, Tool::edge, Tool::limb_axis});
  photo_ = groups_.back().button;
  for (const Group& group : groups_) line->addWidget(group.button);
  show_photo_tools(false);
  grid_ = new QAction(spoken("Snap to &grid"), this);
  grid_->setCheckable(true);
  grid_->setToolTip(
      spoken("Points that are put go to the nearest half centimetre. Alt held: never."));
  connect(grid_, &QAction::toggled, this, [this](bool on) { desk_.set_snaps_to_grid(on); });
  becomes_->setObjectName("drawing_becomes");
  becomes_->setAccessibleName(spoken("What a drawing becomes"));
  becomes_->setToolTip(spoken("What the next drawing becomes."));
  becomes_->setMinimumHeight(button_px);
  connect(becomes_, &QComboBox::activated, this, [this](int index) {
    emit target_wanted(becomes_->itemData(index).value<OutlineTarget>());
  });
  line->addStretch(1);
  line->addWidget(becomes_);
  return row;
}

QAction* ToolRow::action_for(Tool tool) {
  const ToolWords& words = words_of(tool);
  auto* action = new QAction(spoken(words.title), all_);
  action->setObjectName(QString("tool_%1").arg(words.title).toLower().replace(' ', '_'));
  action->setCheckable(true);
  action->setShortcut(QKeySequence(words.key));
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  action->setToolTip(spoken("{1} ({2})", {spoken(words.tip), words.key}));
  desk_.view().addAction(action);
  connect(action, &QAction::triggered, this, [this, tool] { desk_.take_up(tool); });
  actions_[tool] = action;
  return action;
}

void ToolRow::add_group(const QString& title, const std::vector<Tool>& tools) {
  auto* button = new QToolButton(this);
  button->setToolButtonStyle(Qt::ToolButtonTextOnly);
  button->setFocusPolicy(Qt::StrongFocus);
  button->setMinimumSize(button_px, button_px);
  button->setObjectName("tools_" + title.toLower());
  Group group{button, {}};
  for (const Tool tool : tools) group.actions.push_back(action_for(tool));
  button->setDefaultAction(group.actions.front());
  if (tools.size() > 1) {
    auto* menu = new QMenu(title, button);
    menu->setToolTipsVisible(true);
    for (QAction* action : group.actions) menu->addAction(action);
    button->setMenu(menu);
    button->setPopupMode(QToolButton::MenuButtonPopup);
  }
  button->setAccessibleName(title);
  groups_.push_back(std::move(group));
}

QWidget* ToolRow::repair_row() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  keep_ = new QPushButton(spoken("Keep the larger loop"), row);
  keep_->setObjectName("keep_larger_loop");
  split_ = new QPushButton(spoken("Split in two"), row);
  split_->setObjectName("split_in_two");
  auto* abandon = new QPushButton(spoken("Abandon"), row);
  abandon->setObjectName("abandon_outline");
  connect(keep_, &QPushButton::clicked, &desk_, &TracingDesk::keep_larger_loop);
  connect(split_, &QPushButton::clicked, &desk_, &TracingDesk::split_in_two);
  connect(abandon, &QPushButton::clicked, &desk_, &TracingDesk::abandon);
  for (QPushButton* button : {keep_, split_, abandon}) {
    button->setMinimumHeight(button_px);
    line->addWidget(button);
  }
  line->addStretch(1);
  row->hide();
  return row;
}

void ToolRow::add_to(QMenu& menu) const {
  menu.setToolTipsVisible(true);
  for (const Group& group : groups_) {
    for (QAction* action : group.actions) menu.addAction(action);
    menu.addSeparator();
  }
  menu.addAction(grid_);
}

void ToolRow::show_photo_tools(bool shown) {
  photo_->setVisible(shown);
  for (QAction* action : groups_.back().actions) action->setVisible(shown);
}

void ToolRow::set_touch_sizes(bool large) {
  const int size = large ? touch_px : button_px;
  for (const Group& group : groups_) group.button->setMinimumSize(size, size);
  for (QPushButton* button : repair_->findChildren<QPushButton*>()) {
    button->setMinimumHeight(size);
  }
  becomes_->setMinimumHeight(size);
}

void ToolRow::follow() {
  QAction* chosen = actions_.at(desk_.tool());
  chosen->setChecked(true);
  for (const Group& group : groups_) {
    if (std::ranges::find(group.actions, chosen) != group.actions.end()) {
      group.button->setDefaultAction(chosen);
    }
  }
  becomes_->setVisible(draws_outlines(desk_.tool()));
  const auto& held = desk_.held();
  repair_->setVisible(held.has_value());
  if (!held) return show_words(spoken(words_of(desk_.tool()).tip));
  keep_->setEnabled(!held->loops.empty());
  split_->setEnabled(held->loops.size() >= 2);
  show_words(spoken("The outline crosses itself and was not taken. Draw it again, or choose:"));
  if (keep_->isEnabled()) keep_->setFocus();
}

void ToolRow::fill_targets() {
  const QSignalBlocker quiet(becomes_);
  const auto& value = desk_.document().value();
  becomes_->clear();
  const auto add = [&](const OutlineTarget& target, const QString& text) {
    becomes_->addItem(text, QVariant::fromValue(target));
    if (target == desk_.target()) becomes_->setCurrentIndex(becomes_->count() - 1);
  };
  using Kind = ShapeRef::Kind;
  const bool exists_still = !desk_.target().is_new && exists(value, desk_.target().ref);
  if (exists_still) add(desk_.target(), spoken("{1} anew", {title_of(value, desk_.target())}));
  add({.ref = {Kind::wound}}, spoken("New wound"));
  if (!value.current().wounds.empty()) {
    const auto& ref = desk_.target().ref;
    const std::size_t wound =
        ref.kind != Kind::zone && ref.index < value.current().wounds.size() ? ref.index : 0;
    const OutlineTarget island{.ref = {Kind::island, wound, 0}};
    add(desk_.target().is_new && desk_.target().ref.kind == Kind::island ? desk_.target() : island,
        spoken("New island of intact skin"));
    add({.ref = {Kind::zone}, .zone_kind = wound::ZoneKind::no_film}, spoken("New no-film zone"));
    add({.ref = {Kind::zone}, .zone_kind = wound::ZoneKind::no_port}, spoken("New no-port zone"));
  }
}

void ToolRow::show_words(const QString& words) { words_->setText(words); }

}  // namespace drapewright::desktop
