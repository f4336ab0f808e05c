#include "app/desktop/sheets/sheets_page.h"

#include <QDate>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSettings>
#include <QSpinBox>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>
#include <set>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/sheets/choice_table.h"
#include "app/desktop/sheets/cut_view.h"
#include "app/wording/spoken.h"
#include "core/report/cut_words.h"

namespace drapewright::desktop {
namespace {

constexpr int usual_seconds = 2, most_seconds = 600;
constexpr auto seconds_key = "cut_seconds";

/// The names of all filler sheets in stock as thick as that.
std::set<std::string> items_of_thickness(const wound::Case& value, double thickness_cm) {
  std::set<std::string> items;
  for (const auto& item : wound::stock_of(value)) {
    if (item.kind == supplies::Kind::filler_sheet && item.thickness_cm == thickness_cm) {
      items.insert(item.item);
    }
  }
  return items;
}

}  // namespace

SheetsPage::SheetsPage(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      scroll_(new QScrollArea(this)),
      view_(new CutView(this)),
      table_(new ChoiceTable(this)),
      advice_(
          quiet_text(spoken(report::off_cut_advice) + " " + spoken(report::cost_advice), this)) {
  scroll_->setWidget(view_);
  scroll_->setWidgetResizable(true);
  scroll_->setAccessibleName(spoken("Sheets with the pieces cut from them"));
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->viewport()->installEventFilter(this);
  auto* split = new QSplitter(Qt::Vertical, this);
  split->addWidget(scroll_);
  split->addWidget(table_);
  split->setChildrenCollapsible(false);
  split->setStretchFactor(0, 1);
  split->setSizes({360, 210});
  scroll_->setMinimumHeight(160);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 6, 6, 4);
  column->addWidget(split, 1);
  column->addWidget(advice_);
  column->addWidget(search_row());
  connect(table_, &ChoiceTable::chosen, this, &SheetsPage::choose);
  connect(&job_, &ImproveJob::found, this, &SheetsPage::take);
  connect(&job_, &ImproveJob::busy_changed, this, [this](bool busy) {
    if (!busy) searched_ = true;
    show_search();
  });
  show_plan();
}

QWidget* SheetsPage::search_row() {
  auto* row = new QWidget(this);
  state_ = new QLabel(row);
  state_->setObjectName("cut_state");
  stop_ = new QPushButton(spoken("Stop looking"), row);
  stop_->setObjectName("cut_stop");
  stop_->setMinimumHeight(26);
  stop_->setToolTip(spoken("Keep the best way to cut that was found so far."));
  seconds_ = new QSpinBox(row);
  seconds_->setObjectName("cut_seconds");
  seconds_->setMinimumHeight(26);
  seconds_->setRange(0, most_seconds);
  seconds_->setSuffix(" s");
  seconds_->setValue(QSettings().value(seconds_key, usual_seconds).toInt());
  seconds_->setAccessibleName(spoken("Seconds to look for a better way to cut"));
  auto* name = new QLabel(spoken("&Search for"), row);
  name->setBuddy(seconds_);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(state_, 1);
  line->addWidget(stop_);
  line->addWidget(name);
  line->addWidget(seconds_);
  connect(stop_, &QPushButton::clicked, &job_, &ImproveJob::stop);
  connect(seconds_, &QSpinBox::editingFinished, this, [this] {
    if (QSettings().value(seconds_key, usual_seconds).toInt() == seconds_->value()) return;
    QSettings().setValue(seconds_key, seconds_->value());
    searched_ = false;
    search();
  });
  return row;
}

void SheetsPage::show_result(const PlanResult& result) {
  job_.cancel();
  searched_ = false;
  result_ = result;
  show_plan();
  search();
}

void SheetsPage::forget() {
  job_.cancel();
  searched_ = true;  // until the new plan is there
  state_->setText(spoken("Planning."));
}

void SheetsPage::search() {
  if (!isVisible() || !result_.plan || searched_) return;
  job_.request(result_.planned, QDate::currentDate().toString(Qt::ISODate).toStdString(),
               seconds_->value());
  show_search();
}

void SheetsPage::take(const PlanResult& result) {
  result_ = result;
  show_plan();
  emit improved(result);
}

void SheetsPage::show_plan() {
  view_->show_plan(result_.plan);
  table_->show_plan(result_.plan.get());
  show_search();
}

void SheetsPage::show_search() {
  const bool busy = job_.is_busy();
  stop_->setEnabled(busy);
  state_->setText(!result_.plan ? spoken("No plan yet.")
                  : busy      ? spoken("Looking for a better way to cut; the best so far is shown.")
                  : searched_ ? spoken("The best way found.")
                              : spoken("A first way to cut."));
}

/// A row is the sheets that may be opened of its thickness; those of other thicknesses stay as
/// they were chosen.
void SheetsPage::choose(std::size_t thickness, std::size_t choice) {
  if (!result_.plan || thickness >= result_.plan->sheet_comparison.size()) return;
  const auto& comparison = result_.plan->sheet_comparison[thickness];
  const auto& wanted = comparison.choices.at(choice).items;
  const auto all = items_of_thickness(document_.value(), comparison.thickness_cm);
  document_.edit(spoken("sheets to open"), {}, [&](wound::Case& value) {
    auto& items = value.dressing.filler_items;
    std::erase_if(items, [&](const std::string& item) { return all.contains(item); });
    if (choice > 0) items.insert(items.end(), wanted.begin(), wanted.end());
  });
}

void SheetsPage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  search();
}

void SheetsPage::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  job_.stop();
}

bool SheetsPage::eventFilter(QObject* watched, QEvent* event) {
  if (watched == scroll_->viewport() && event->type() == QEvent::Resize) {
    view_->set_room(scroll_->viewport()->size());
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace drapewright::desktop
