#include "app/desktop/window/start_page.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "app/desktop/document/demo_cases.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/page.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

namespace {

constexpr int large_button_px = 40;

QPushButton* large_button(const QString& text, const QString& name, QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setObjectName(name);
  button->setMinimumHeight(large_button_px);
  button->setMinimumWidth(220);
  return button;
}

QLabel* wrapped(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setWordWrap(true);
  return label;
}

}  // namespace

StartPage::StartPage(QWidget* parent) : QWidget(parent) {
  auto* inner = new QWidget(this);
  column_ = new QVBoxLayout(inner);
  column_->setContentsMargins(32, 16, 32, 16);
  column_->addStretch(1);
  column_->addWidget(heading(spoken("How does the wound's outline get in?"), this));
  add_way(spoken("Trace it here"), "start_trace",
          spoken("Freehand over the grid, with mouse, finger or pen."),
          [this] { emit tool_wanted(Tool::trace); });
  add_way(spoken("Corner by corner"), "start_corners",
          spoken("Click point after point, for example off a sheet of acetate on a cm grid."),
          [this] { emit tool_wanted(Tool::corners); });
  add_way(spoken("From a photograph\u2026"), "start_photo",
          spoken("PNG or JPEG with a ruler or a square in it; or drop one here."),
          [this] { emit photo_wanted(); });
  add_way(spoken("Length and width"), "start_size",
          spoken("Two numbers from a ruler make an ellipse."), [this] { emit size_wanted(); });
  add_way(spoken("Open a case\u2026"), "start_open", spoken("A case that was saved before."),
          [this] { emit open_wanted(); });
  column_->addWidget(
      wrapped(spoken("Then go through the cautions, and set depth, inset and film border. "
                     "The drawing, the figures and the materials follow; every step can be "
                     "undone."),
              this));
  add_demos();
  column_->addStretch(2);
  auto* scroll = new QScrollArea(this);
  scroll->setWidget(inner);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setAccessibleName(spoken("What to do first"));
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scroll);
}

void StartPage::add_way(const QString& text, const QString& name, const QString& says,
                        std::function<void()> go) {
  auto* row = new QHBoxLayout;
  auto* button = large_button(text, name, this);
  button->setAccessibleDescription(says);
  connect(button, &QPushButton::clicked, this, std::move(go));
  row->addWidget(button);
  row->addWidget(wrapped(says, this), 1);
  column_->addLayout(row);
}

void StartPage::add_demos() {
  const auto demos = demo_cases();
  if (demos.empty()) return;
  column_->addSpacing(8);
  column_->addWidget(quiet_text(spoken("Or look at an invented case:"), this));
  auto* grid = new QGridLayout;
  int cell = 0;
  for (const auto& demo : demos) {
    auto* button = new QPushButton(demo.title, this);
    button->setObjectName("demo_" + demo.name);
    button->setMinimumHeight(26);
    connect(button, &QPushButton::clicked, this, [this, demo] { emit demo_wanted(demo.name); });
    grid->addWidget(button, cell / 2, cell % 2);
    ++cell;
  }
  column_->addLayout(grid);
}

}  // namespace drapewright::desktop
