#include "app/desktop/stores/what_if_form.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <array>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/practice/limits.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;
constexpr int lines_of_list = 3;
constexpr int words_role = Qt::UserRole;
/// So many columns are still read side by side.
constexpr int most_alternatives = 12;

/// What can be taken as another, in the order of the list.
struct Question {
  const char* id;     ///< as core/casefile/what_if.h knows it
  const char* title;  ///< with the value at its place
  double factor;      ///< from the setting's unit to the one that is shown
  double step;
  const char* unit;
};
constexpr std::array questions{
    Question{"change_every_h", term("Change every {1} h"), 1, 12, " h"},
    Question{"canister_ml", term("Canister of {1} mL"), 1, 100, " mL"},
    Question{"service_level_share", term("Service level {1} %"), 100, 1, " %"},
    Question{"extra_dressings_per_week", term("{1} extra dressings a week"), 1, 0.1, ""},
};
constexpr int sheet_question = questions.size();

QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

Alternative number_alternative(const Question& question, double shown) {
  return {.title = spoken(question.title, {format_short(shown, 2)}),
          .words = std::string(question.id) + "=" + plain_short(shown / question.factor, 6)};
}

Alternative sheet_alternative(const std::string& item) {
  return {.title = spoken("Only {1}", {supplies::shown_name(item)}),
          .words = "filler_items=" + item};
}

}  // namespace

WhatIfForm::WhatIfForm(QWidget* parent)
    : QWidget(parent),
      what_(new QComboBox(this)),
      values_(new QStackedWidget(this)),
      number_(new QDoubleSpinBox(this)),
      sheet_(new QComboBox(this)),
      list_(new QListWidget(this)) {
  list_->setObjectName("what_if_list");
  list_->setAccessibleName(spoken("What to compare"));
  list_->setFlow(QListView::LeftToRight);
  list_->setWrapping(true);
  list_->setResizeMode(QListView::Adjust);
  list_->setSpacing(4);
  list_->setFixedHeight(lines_of_list * (fontMetrics().height() + 12));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(row_of_fields());
  column->addWidget(list_);
  for (const double hours : {48.0, 72.0}) add(number_alternative(questions[0], hours), true);
  for (const double ml : {300.0, 500.0}) add(number_alternative(questions[1], ml), ml > 400);
  add(sheet_alternative("Filler sheet 20 x 12 x 1.5 cm"), true);
  for (const double level : {90.0, 95.0, 99.0}) {
    add(number_alternative(questions[2], level), level != 95);
  }
  list_->setCurrentItem(nullptr);
  choose_what();
  connect(what_, &QComboBox::currentIndexChanged, this, &WhatIfForm::choose_what);
  connect(list_, &QListWidget::itemChanged, this, &WhatIfForm::changed);
}

QWidget* WhatIfForm::row_of_fields() {
  auto* row = new QWidget(this);
  what_->setObjectName("what_if_what");
  number_->setObjectName("what_if_number");
  sheet_->setObjectName("what_if_sheet");
  for (const Question& question : questions) {
    what_->addItem(words(say(practice::limit(question.id).title)));
  }
  what_->addItem(spoken("Only one filler sheet"));
  for (const auto& item : supplies::built_in_catalogue()) {
    if (item.kind != supplies::Kind::filler_sheet) continue;
    sheet_->addItem(words(supplies::shown_name(item.item)), words(item.item));
  }
  sheet_->setEditable(true);
  sheet_->setToolTip(
      spoken("A sheet of the program's list, or the name of one in the cases' own "
             "lists. Layers of another thickness keep their sheets."));
  values_->addWidget(number_);
  values_->addWidget(sheet_);
  auto* add_button = new QPushButton(spoken("&Add"), row);
  auto* remove_button = new QPushButton(spoken("Re&move"), row);
  add_button->setObjectName("what_if_add");
  remove_button->setObjectName("what_if_remove");
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  for (QWidget* each : std::initializer_list<QWidget*>{what_, values_, add_button, remove_button}) {
    each->setMinimumHeight(least_height);
    line->addWidget(each);
  }
  line->addStretch(1);
  values_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  connect(add_button, &QPushButton::clicked, this, [this] { add(entered(), true); });
  connect(remove_button, &QPushButton::clicked, this, &WhatIfForm::remove);
  return row;
}

void WhatIfForm::choose_what() {
  const int index = what_->currentIndex();
  if (index == sheet_question) return values_->setCurrentWidget(sheet_);
  const Question& question = questions[static_cast<std::size_t>(index)];
  const practice::Limit& limit = practice::limit(question.id);
  values_->setCurrentWidget(number_);
  number_->setDecimals(question.step < 1 ? 2 : 1);
  number_->setSingleStep(question.step);
  number_->setSuffix(question.unit);
  // The border that a limit leaves out is one step of the field away from it.
  const double least = limit.minimum_excluded ? 1 : limit.minimum * question.factor;
  number_->setRange(least, limit.maximum * question.factor);
  number_->setToolTip(explanation_of(limit));
  number_->setValue(limit.standard * question.factor);
}

Alternative WhatIfForm::entered() const {
  const int index = what_->currentIndex();
  if (index != sheet_question) {
    return number_alternative(questions[static_cast<std::size_t>(index)], number_->value());
  }
  const int known = sheet_->findText(sheet_->currentText());
  const QString name =
      known >= 0 ? sheet_->itemData(known).toString() : sheet_->currentText().trimmed();
  return sheet_alternative(name.toStdString());
}

/// What is on the list already is ticked and chosen.
void WhatIfForm::add(const Alternative& alternative, bool ticked) {
  for (int i = 0; i < list_->count(); ++i) {
    auto* item = list_->item(i);
    if (item->data(words_role).toString().toStdString() != alternative.words) continue;
    item->setCheckState(Qt::Checked);
    return list_->setCurrentItem(item);
  }
  if (list_->count() >= most_alternatives) return;
  auto* item = new QListWidgetItem(alternative.title);
  item->setData(words_role, words(alternative.words));
  item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
  item->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
  list_->addItem(item);
  list_->setCurrentItem(item);
  emit changed();
}

void WhatIfForm::remove() {
  delete list_->currentItem();
  emit changed();
}

std::vector<Alternative> WhatIfForm::alternatives() const {
  std::vector<Alternative> ticked;
  for (int i = 0; i < list_->count(); ++i) {
    const auto* item = list_->item(i);
    if (item->checkState() != Qt::Checked) continue;
    ticked.push_back({item->text(), item->data(words_role).toString().toStdString()});
  }
  return ticked;
}

}  // namespace drapewright::desktop
