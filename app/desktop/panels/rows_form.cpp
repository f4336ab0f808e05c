#include "app/desktop/panels/rows_form.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <algorithm>
#include <utility>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int most_rows_shown = 5;
constexpr int least_row_px = 24;

}  // namespace

RowsForm::RowsForm(const Words& words, std::vector<NumberColumn> columns, QWidget* parent)
    : QWidget(parent),
      words_(words),
      model_(new NumberRows(words.what, std::move(columns), this)),
      table_(new QTableView(this)),
      message_(quiet_text({}, this)),
      add_(button(spoken("Add"), "add_", spoken("Type another one in the last row."),
                  &RowsForm::add_row)),
      remove_(button(spoken("Remove"), "remove_", spoken("Take the chosen one out (Delete)."),
                     &RowsForm::remove_row)) {
  build_table(words);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(heading(words.title, this), 1);
  buttons->addWidget(add_);
  buttons->addWidget(remove_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(3);
  column->addLayout(buttons);
  column->addWidget(table_);
  column->addWidget(message_);
  connect_model();
  fit_height();
  tell();
}

void RowsForm::build_table(const Words& words) {
  table_->setModel(model_);
  table_->setObjectName(words.name);
  table_->setAccessibleName(words.title);
  table_->setTabKeyNavigation(false);  // Tab leaves the table; arrow keys move in it
  table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table_->horizontalHeader()->setMinimumSectionSize(24);
  table_->verticalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
  table_->setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                          QAbstractItemView::EditKeyPressed | QAbstractItemView::SelectedClicked);
  table_->installEventFilter(this);
}

void RowsForm::connect_model() {
  connect(model_, &NumberRows::number_typed, this, &RowsForm::number_typed);
  connect(model_, &NumberRows::row_typed, this, &RowsForm::row_typed);
  connect(model_, &NumberRows::refused, this, &RowsForm::tell_refusal);
  connect(model_, &NumberRows::next_changed, this, &RowsForm::tell);
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
    tell();
    emit row_chosen(chosen_row());
  });
}

QPushButton* RowsForm::button(const QString& text, const QString& name, const QString& tip,
                              void (RowsForm::*act)()) {
  auto* made = new QPushButton(text, this);
  made->setObjectName(name + words_.name);
  made->setToolTip(tip);
  made->setAccessibleName(text + " " + words_.what);
  made->setAccessibleDescription(tip);
  made->setMinimumHeight(26);
  connect(made, &QPushButton::clicked, this, act);
  return made;
}

void RowsForm::show_rows(std::vector<NumberRows::Row> rows, QStringList remarks) {
  const bool changed = rows != model_->rows() || remarks != remarks_;
  remarks_ = std::move(remarks);
  model_->set_rows(std::move(rows));
  if (!changed) return;
  fit_height();
  tell();
  emit row_chosen(chosen_row());
}

void RowsForm::start_over() {
  model_->clear_next();
  table_->setCurrentIndex({});
}

int RowsForm::chosen_row() const {
  const int row = table_->currentIndex().row();
  return row < model_->typed_count() ? row : -1;
}

void RowsForm::add_row() {
  table_->setFocus();
  table_->setCurrentIndex(model_->index(model_->typed_count(), 0));
  table_->edit(table_->currentIndex());
}

void RowsForm::remove_row() {
  if (const int row = chosen_row(); row >= 0) emit row_removed(row);
}

QString RowsForm::message() const {
  const auto& next = model_->next();
  QStringList missing;
  bool begun = false;
  for (int i = 0; i < model_->columnCount(); ++i) {
    if (model_->column(i).is_tick) continue;
    const bool there = next[static_cast<std::size_t>(i)].has_value();
    begun = begun || there;
    if (!there) missing << model_->column(i).title;
  }
  if (begun)
    return spoken("The new row counts once it is complete. Missing: {1}.", {missing.join(", ")});
  if (const int row = chosen_row(); row >= 0 && row < remarks_.size()) return remarks_[row];
  return model_->typed_count() == 0 ? words_.empty : remarks_.join(" ");
}

void RowsForm::tell() {
  remove_->setEnabled(chosen_row() >= 0);
  message_->setText(message());
  message_->setPalette({});
}

void RowsForm::tell_refusal(const QString& why) {
  QPalette own = palette();
  own.setColor(QPalette::PlaceholderText, inks(own).warning);
  message_->setPalette(own);
  message_->setText(why.left(1).toUpper() + why.mid(1));
}

void RowsForm::fit_height() {
  const int row = std::max(fontMetrics().height() + 8, least_row_px);
  table_->verticalHeader()->setDefaultSectionSize(row);
  const int rows = std::min(model_->rowCount(), most_rows_shown);
  table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + rows * row +
                         2 * table_->frameWidth());
}

bool RowsForm::eventFilter(QObject* watched, QEvent* event) {
  if (watched == table_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete && remove_->isEnabled()) {
    remove_row();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

void RowsForm::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit_height();
  if (event->type() == QEvent::PaletteChange) tell();
}

}  // namespace drapewright::desktop
