#include "app/desktop/sheets/choice_table.h"

#include <QKeyEvent>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/report/cut_words.h"

namespace drapewright::desktop {
namespace {

constexpr int columns = 6;

QString text_of(const std::string& text) { return QString::fromStdString(text); }

QStringList titles() {
  const report::ChoiceCells all = report::choice_titles();
  QStringList words;
  for (int i = 0; i < columns; ++i) words << text_of(all[static_cast<std::size_t>(i)]);
  return words;
}

/// "largest off-cut 4.4 x 8.0 cm; best possible"; of several sizes first what is opened.
QString detail_of(const dressing::SheetChoice& choice, const report::ChoiceCells& cells) {
  QString words;
  if (choice.items.size() > 1) words = text_of(report::opened_in_words(choice)) + "; ";
  return words + text_of(report::off_cut_or_none(choice)) + "; " + text_of(cells[7]);
}

}  // namespace

ChoiceTable::ChoiceTable(QWidget* parent)
    : WrappedTable(spoken("Sheets to open"), titles(), {1, 0, 0, 0, 0, 0}, parent) {
  setObjectName("sheet_choices");
  setAlternatingRowColors(false);
  connect(this, &QTableWidget::cellClicked, this, [this](int row, int) { choose_row(row); });
}

void ChoiceTable::show_plan(const dressing::Plan* plan) {
  const int current = currentRow();
  targets_.clear();
  clearSpans();
  set_rows(0);
  if (plan != nullptr) {
    for (std::size_t i = 0; i < plan->sheet_comparison.size(); ++i) {
      const auto& comparison = plan->sheet_comparison[i];
      add_heading(comparison, i);
      for (std::size_t j = 0; j < comparison.choices.size(); ++j) {
        add_choice(comparison.choices[j], {i, static_cast<int>(j)});
      }
    }
  }
  fit();
  if (current >= 0 && current < rowCount()) setCurrentCell(current, 0);
}

int ChoiceTable::add_row(Target target, bool whole) {
  const int row = rowCount();
  set_rows(row + 1);
  set_whole(row, whole);
  targets_.push_back(target);
  return row;
}

void ChoiceTable::add_heading(const dressing::SheetComparison& comparison, std::size_t thickness) {
  const int row = add_row({thickness, -1}, true);
  QFont bold = font();
  bold.setBold(true);
  cell(row, 0).setFont(bold);
  cell(row, 0).setText(spoken(comparison.choices.empty()
                                  ? term("Sheets {1} cm thick: none in stock")
                                  : term("Sheets {1} cm thick"),
                              {format_short(comparison.thickness_cm, 2)}));
  cell(row, 0).setFlags(Qt::ItemIsEnabled);
}

void ChoiceTable::add_choice(const dressing::SheetChoice& choice, Target target) {
  const report::ChoiceCells cells = report::cells_of(choice);
  const int row = add_row(target, false);
  QFont weight = font();
  weight.setBold(choice.chosen);
  for (int column = 0; column < columns; ++column) {
    auto& item = cell(row, column);
    const QString text = text_of(cells[static_cast<std::size_t>(column)]);
    item.setText(column == 0 ? (choice.chosen ? QString("\u25cf ") : QString("\u25cb ")) + text
                             : text);
    item.setTextAlignment((column == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignBottom);
    item.setFont(weight);
    item.setToolTip(choice.chosen ? spoken("The plan is cut this way.")
                                  : spoken("Cut the plan this way."));
  }
  cell(row, 0).setData(
      Qt::AccessibleTextRole,
      spoken(choice.chosen ? term("{1}, chosen") : term("{1}, not chosen"), {cells[0]}));
  const int below = add_row(target, true);
  cell(below, 0).setText("     " + detail_of(choice, cells));
  cell(below, 0).setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
  cell(below, 0).setToolTip(cell(row, 0).toolTip());
}

void ChoiceTable::choose_row(int row) {
  if (row < 0 || row >= rowCount()) return;
  const Target target = targets_[static_cast<std::size_t>(row)];
  if (target.choice >= 0) emit chosen(target.thickness, static_cast<std::size_t>(target.choice));
}

void ChoiceTable::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space) {
    choose_row(currentRow());
    return;
  }
  WrappedTable::keyPressEvent(event);
}

}  // namespace drapewright::desktop
