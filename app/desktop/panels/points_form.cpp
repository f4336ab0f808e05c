#include "app/desktop/panels/points_form.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <algorithm>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int fewest_points = 3;
constexpr int table_height = 190;

}  // namespace

PointsForm::PointsForm(QWidget* parent)
    : QWidget(parent),
      model_(new PointsModel(this)),
      table_(new QTableView(this)),
      message_(quiet_text({}, this)),
      add_(button(spoken("Add"), spoken("Type the next point in the last row."),
                  &PointsForm::add_point)),
      insert_(button(spoken("Insert"), spoken("A point halfway before the chosen one."),
                     &PointsForm::insert_point)),
      remove_(button(spoken("Remove"), spoken("Take the chosen point out."),
                     &PointsForm::remove_point)) {
  build_table();
  auto* buttons = new QHBoxLayout;
  for (QPushButton* one : {add_, insert_, remove_}) buttons->addWidget(one);
  buttons->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(table_);
  column->addLayout(buttons);
  column->addWidget(message_);
  connect(model_, &PointsModel::ring_edited, this, [this](const QString& what) {
    emit ring_edited(model_->ring(), what);
    tell();
  });
  connect(model_, &PointsModel::refused, this, [this](const QString& why) {
    message_->setText(spoken("{1}; the old value was kept.", {why}));
  });
  connect(model_, &PointsModel::modelReset, this, &PointsForm::tell);
  tell();
}

void PointsForm::build_table() {
  table_->setModel(model_);
  table_->setObjectName("points");
  table_->setAccessibleName(spoken("Corner points in cm"));
  table_->setMinimumHeight(table_height);
  table_->setTabKeyNavigation(false);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table_->verticalHeader()->setDefaultSectionSize(std::max(fontMetrics().height() + 8, 24));
  table_->verticalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
  table_->setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                          QAbstractItemView::EditKeyPressed | QAbstractItemView::SelectedClicked);
  table_->installEventFilter(this);
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, &PointsForm::tell);
}

QPushButton* PointsForm::button(const QString& text, const QString& tip,
                                void (PointsForm::*act)()) {
  auto* made = new QPushButton(text, this);
  made->setToolTip(tip);
  made->setAccessibleName(spoken("{1} point", {text}));
  made->setMinimumHeight(26);
  connect(made, &QPushButton::clicked, this, act);
  return made;
}

void PointsForm::set_ring(const geometry::Ring& ring) {
  model_->set_ring(ring);
  tell();
}

int PointsForm::current_row() const {
  const int row = table_->currentIndex().row();
  return row < 0 ? model_->point_count() : row;
}

void PointsForm::select(int row) { table_->setCurrentIndex(model_->index(row, 0)); }

void PointsForm::add_point() {
  select(model_->point_count());
  table_->setFocus();
  table_->edit(table_->currentIndex());
}

void PointsForm::insert_point() {
  const int row = current_row();
  model_->insert_between(row);
  select(row);
  table_->setFocus();
}

void PointsForm::remove_point() {
  const int row = current_row();
  model_->remove(row);
  select(std::min(row, model_->point_count()));
}

void PointsForm::paste() {
  const auto points = PointsModel::points_in(QGuiApplication::clipboard()->text());
  if (!points || points->empty()) {
    message_->setText(
        spoken("Nothing was pasted: two numbers a line are expected, x and y in cm."));
    return;
  }
  model_->insert(current_row(), *points);
}

void PointsForm::tell() {
  const int count = model_->point_count();
  insert_->setEnabled(count >= 2);
  remove_->setEnabled(count > fewest_points && current_row() < count);
  if (count == 0) {
    message_->setText(
        spoken("Type x and y of each corner in order, or paste two columns (Ctrl+V)."));
  } else if (count < fewest_points) {
    message_->setText(spoken("{1} of at least 3 points.", {count}));
  } else {
    message_->setText(spoken("{1} points.", {count}));
  }
}

bool PointsForm::eventFilter(QObject* watched, QEvent* event) {
  if (watched == table_ && event->type() == QEvent::KeyPress) {
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Paste)) {
      paste();
      return true;
    }
    if (key->key() == Qt::Key_Delete && remove_->isEnabled()) {
      remove_point();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace drapewright::desktop
