#include "app/desktop/panels/record_page.h"

#include <QDateEdit>
#include <QFormLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/number_field.h"
#include "app/desktop/fields/text_field.h"
#include "app/desktop/fields/wrapped_label.h"
#include "app/desktop/panels/wrapped_table.h"
#include "app/desktop/theme/marks.h"
#include "app/wording/spoken.h"
#include "core/report/plan_words.h"
#include "core/report/record_pages.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;
constexpr double most_pieces = 999;
const QString day_format = "yyyy-MM-dd";

std::optional<int> count_in(const NumberField& field) {
  const auto number = field.number();
  return number ? std::optional<int>(static_cast<int>(*number)) : std::nullopt;
}

}  // namespace

RecordPage::RecordPage(CaseDocument& document, const std::string& today, QWidget* parent)
    : Page(spoken("Record"), parent), document_(document), today_(today) {
  add_heading(spoken("Write a dressing down"));
  add(change_rows());
  advice_ = new WrappedLabel(this);
  advice_->setObjectName("record_advice");
  add(advice_);
  add(change_buttons());
  add_heading(spoken("Due"));
  due_ = new QLabel(this);
  due_->setObjectName("record_due");
  due_->setWordWrap(true);
  add(due_);
  add_heading(spoken("Dressings so far"));
  table_ = new WrappedTable(
      spoken("Dressings so far"),
      {spoken("No."), spoken("date"), spoken("in"), spoken("out"), spoken("count")},
      {0, 0, 0, 0, 1}, this);
  table_->setObjectName("record_table");
  table_->setMinimumHeight(8 * fontMetrics().height());
  add(table_);
  add(quiet_text(spoken("A step that was written down wrongly is taken back with Undo."), this));
  add_stretch();
  connect(&document, &CaseDocument::case_changed, this, &RecordPage::show_case);
  show_case();
}

NumberField* RecordPage::count_field(const QString& name, const QString& when_empty) {
  auto* field = new NumberField({.minimum = 0,
                                 .maximum = most_pieces,
                                 .decimals = 0,
                                 .step = 1,
                                 .optional = true,
                                 .when_empty = when_empty},
                                this);
  field->setObjectName(name);
  field->setMinimumHeight(least_height);
  connect(field, &NumberField::entered, this, &RecordPage::compare);
  connect(field, &NumberField::refused, this, [this](const QString& why) {
    if (!why.isEmpty()) advise(why, false);
  });
  return field;
}

QWidget* RecordPage::change_rows() {
  auto* rows = new QWidget(this);
  auto* form = new QFormLayout(rows);
  form->setContentsMargins(0, 0, 0, 0);
  day_ = new QDateEdit(QDate::fromString(QString::fromStdString(today_), Qt::ISODate), rows);
  day_->setObjectName("record_day");
  day_->setDisplayFormat(day_format);
  day_->setCalendarPopup(true);
  day_->setMinimumHeight(least_height);
  out_ = count_field("record_out", spoken("not counted"));
  in_ = count_field("record_in", spoken("none"));
  note_ = new TextField(spoken("What was seen or done otherwise"), rows);
  note_->setObjectName("record_note");
  form->addRow(spoken("Day"), day_);
  form->addRow(spoken("Pieces that came out"), out_);
  form->addRow(spoken("Pieces that went in"), in_);
  form->addRow(spoken("Note"), note_);
  return rows;
}

QWidget* RecordPage::change_buttons() {
  auto* row = new QWidget(this);
  auto* line = new QVBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  put_on_ = new QPushButton(spoken("A dressing was put on"), row);
  put_on_->setObjectName("record_put_on");
  taken_off_ = new QPushButton(spoken("Taken off, none follows"), row);
  taken_off_->setObjectName("record_taken_off");
  for (QPushButton* button : {put_on_, taken_off_}) {
    button->setMinimumHeight(least_height);
    line->addWidget(button);
  }
  connect(put_on_, &QPushButton::clicked, this, [this] { write_down(true); });
  connect(taken_off_, &QPushButton::clicked, this, [this] { write_down(false); });
  return row;
}

void RecordPage::set_today(const std::string& today) {
  if (today == today_) return;
  const bool is_untouched = day_->date().toString(Qt::ISODate).toStdString() == today_;
  today_ = today;
  if (is_untouched) day_->setDate(QDate::fromString(QString::fromStdString(today), Qt::ISODate));
  show_case();
}

void RecordPage::show_result(const PlanResult& result) {
  const std::optional<int> before = planned_;
  stops_ = result.plan && !report::stops_in_words(*result.plan).empty();
  planned_ = result.plan ? std::optional<int>(result.plan->fill.piece_count) : std::nullopt;
  const bool is_untouched = count_in(*in_) == before || !count_in(*in_);
  if (planned_ != before && is_untouched) in_->show_number(planned_);
  compare();
}

void RecordPage::show_case() {
  log_ = dressing::course_log(document_.value(), today_);
  const bool is_on = log_.on() != nullptr;
  out_->setEnabled(is_on);
  taken_off_->setEnabled(is_on);
  if (!is_on) out_->show_number(std::nullopt);
  show_table();
  show_due();
  compare();
}

void RecordPage::show_table() {
  table_->set_rows(static_cast<int>(log_.dressings.size()));
  int row = 0;
  for (const auto& done : log_.dressings) {
    std::string words = report::in_words(done.count);
    if (!done.note.empty()) words += ". " + done.note;
    const QStringList texts{QString::number(done.number), QString::fromStdString(done.date),
                            QString::number(done.placed),
                            done.removed ? QString::number(*done.removed) : "-",
                            QString::fromStdString(words)};
    for (int column = 0; column < texts.size(); ++column) {
      auto& cell = table_->cell(row, column);
      cell.setText(texts[column]);
      cell.setForeground(done.count == dressing::PieceCount::differs
                             ? severity_ink(dressing::Severity::stop, palette())
                             : palette().color(QPalette::Text));
    }
    ++row;
  }
  table_->fit();
}

void RecordPage::show_due() {
  if (log_.dressings.empty()) {
    due_->setText(spoken("No dressing is written down yet; {1} planned.",
                         {count_of(log_.planned, "dressing", "dressings")}));
    return;
  }
  const QString change = spoken("Next change: {1}", {report::next_change_in_words(log_)});
  const QString end = spoken("Course ends: {1}", {report::course_end_in_words(log_)});
  const QString so_far =
      spoken("Put on: {1} of {2} planned", {static_cast<int>(log_.dressings.size()), log_.planned});
  due_->setText(change + "\n" + end + "\n" + so_far);
}

/// What is about to be written down, held against what went in and what is planned.
void RecordPage::compare() {
  const auto out = count_in(*out_), in = count_in(*in_);
  put_on_->setEnabled(in.value_or(0) > 0);
  taken_off_->setEnabled(out_->isEnabled() && out.has_value());
  QString words = spoken("Count the pieces out against the number on the dressing, and in.");
  const dressing::LoggedDressing* on = log_.on();
  const bool differs = on != nullptr && out && *out != on->placed;
  if (differs) {
    words = spoken(
        "STOP. {1} went in and {2} came out. Find the difference before the next "
        "dressing.",
        {count_of(on->placed, "piece", "pieces"), *out});
  } else if (in && planned_ && *in != *planned_) {
    words = spoken("The plan has {1}. Write down what really went in.",
                   {count_of(*planned_, "piece", "pieces")});
  }
  advise(words, differs);
}

void RecordPage::advise(const QString& words, bool is_stop) {
  QFont look = font();
  look.setBold(is_stop);
  advice_->setFont(look);
  QPalette ink = palette();
  if (is_stop) {
    ink.setColor(QPalette::WindowText, severity_ink(dressing::Severity::stop, palette()));
  }
  advice_->setPalette(ink);
  advice_->show_text(words);
}

/// What should not be written down in passing is asked about.
bool RecordPage::is_meant(const dressing::Change& change) {
  QStringList doubts;
  const dressing::LoggedDressing* on = log_.on();
  if (on != nullptr && change.removed && *change.removed != on->placed) {
    doubts << spoken(
        "{1} went in and {2} came out. The difference is to be found before the next "
        "dressing.",
        {count_of(on->placed, "piece", "pieces"), *change.removed});
  }
  if (on != nullptr && !change.removed) {
    doubts << spoken("What came out of the dressing of {1} was not counted.", {on->date});
  }
  if (change.placed && stops_) doubts << spoken("The plan says STOP: see its findings.");
  if (doubts.isEmpty()) return true;
  QMessageBox box(QMessageBox::Warning, spoken("Record"), doubts.join("\n\n"), {}, this);
  box.setObjectName("record_doubt");
  box.setInformativeText(spoken("Write it down all the same?"));
  QPushButton* yes = box.addButton(spoken("Write it down"), QMessageBox::AcceptRole);
  box.setDefaultButton(box.addButton(QMessageBox::Cancel));
  box.exec();
  return box.clickedButton() == yes;
}

void RecordPage::write_down(bool another_follows) {
  const dressing::Change change{.date = day_->date().toString(Qt::ISODate).toStdString(),
                                .removed = log_.on() ? count_in(*out_) : std::nullopt,
                                .placed = another_follows ? count_in(*in_) : std::nullopt,
                                .note = note_->text().trimmed().toStdString()};
  wound::Case next = document_.value();
  try {
    dressing::record_change(next, change);
    if (!is_meant(change)) return;
  } catch (const InputError& error) {
    advise(QString::fromStdString(error.what()), true);
    return;
  }
  out_->show_number(std::nullopt);
  note_->clear();
  document_.change(another_follows ? spoken("dressing put on") : spoken("dressing taken off"),
                   std::move(next));
}

}  // namespace drapewright::desktop
