#include "app/desktop/window/start_page.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/desktop/document/demo_cases.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/page.h"

namespace drapewright::desktop {

StartPage::StartPage(QWidget* parent) : QWidget(parent) {
  auto* open = new QPushButton("Open a case…", this);
  open->setObjectName("start_open");
  open->setMinimumHeight(30);
  connect(open, &QPushButton::clicked, this, &StartPage::open_wanted);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(32, 32, 32, 32);
  column->addStretch(1);
  column->addWidget(heading("Nothing is drawn yet", this));
  for (const char* line :
       {"Type the wound's length and width on the left and press Enter, or choose “Corner points” "
        "there for a table of points in cm.",
        "Then go through the cautions, and set depth, inset and film border. The drawing, the "
        "figures and the materials follow as you type."}) {
    auto* text = new QLabel(line, this);
    text->setWordWrap(true);
    column->addWidget(text);
  }
  column->addSpacing(12);
  column->addWidget(open, 0, Qt::AlignLeft);
  const auto demos = demo_cases();
  if (!demos.empty()) column->addWidget(quiet_text("Or look at an invented case:", this));
  for (const auto& demo : demos) {
    auto* button = new QPushButton(demo.title, this);
    button->setObjectName("demo_" + demo.name);
    button->setMinimumHeight(26);
    connect(button, &QPushButton::clicked, this, [this, demo] { emit demo_wanted(demo.name); });
    column->addWidget(button, 0, Qt::AlignLeft);
  }
  column->addStretch(2);
}

}  // namespace drapewright::desktop
