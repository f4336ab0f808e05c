#include "app/desktop/stores/shelf_page.h"

#include <QCheckBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/stores/booking_form.h"
#include "app/desktop/stores/chart_files.h"
#include "app/desktop/stores/shelf_place_form.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"
#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "core/casefile/stock_csv.h"
#include "core/casefile/text_file.h"
#include "core/forecast/forecast.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;
constexpr int booking_width = 316;

QPushButton* button(const QString& text, const char* name, QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setObjectName(name);
  button->setMinimumHeight(least_height);
  return button;
}

}  // namespace

ShelfPage::ShelfPage(int today, QWidget* parent)
    : QWidget(parent),
      today_(today),
      where_(quiet_text({}, this)),
      told_(new QLabel(this)),
      forecast_(new QCheckBox(spoken("For&ecast with this shelf"), this)),
      buttons_(row_of_buttons()),
      empty_(new QWidget(this)),
      place_form_(new ShelfPlaceForm(this)),
      booking_(new BookingForm(today, this)) {
  told_->setObjectName("shelf_told");
  told_->setWordWrap(true);
  told_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  where_->setObjectName("shelf_where");
  forecast_->setObjectName("shelf_forecast");
  forecast_->setChecked(true);
  build_empty_hint();
  place_form_->hide();
  tell({}, false);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 6, 6, 4);
  for (QWidget* each :
       {buttons_, static_cast<QWidget*>(place_form_), static_cast<QWidget*>(told_), empty_}) {
    column->addWidget(each);
  }
  column->addWidget(build_tables(), 1);
  connect(&job_, &ShelfJob::finished, this, &ShelfPage::take);
  connect(&job_, &ShelfJob::busy_changed, this, &ShelfPage::set_busy);
  connect(place_form_, &ShelfPlaceForm::chosen, this, &ShelfPage::open_at);
  connect(booking_, &BookingForm::booked, this, &ShelfPage::request);
  connect(forecast_, &QCheckBox::toggled, this, &ShelfPage::changed);
}

QWidget* ShelfPage::row_of_buttons() {
  auto* row = new QWidget(this);
  auto* place = button(spoken("&Where it is kept"), "shelf_place", row);
  place->setCheckable(true);
  auto* from_list = button(spoken("&Import a stock list…"), "shelf_import", row);
  auto* to_list = button(spoken("Sa&ve as a stock list…"), "shelf_export", row);
  auto* again = button(spoken("&Look again"), "shelf_refresh", row);
  again->setToolTip(spoken("What others have booked in the meantime."));
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(where_, 1);
  line->addWidget(forecast_);
  for (QPushButton* each : {place, from_list, to_list, again}) line->addWidget(each);
  connect(place, &QPushButton::toggled, this, [this](bool on) { place_form_->setVisible(on); });
  connect(from_list, &QPushButton::clicked, this, &ShelfPage::ask_import);
  connect(to_list, &QPushButton::clicked, this, &ShelfPage::ask_export);
  connect(again, &QPushButton::clicked, this, [this] { request({}, {}); });
  return row;
}

void ShelfPage::build_empty_hint() {
  empty_->setObjectName("shelf_empty");
  auto* start = button(spoken("Start with the pro&gram's own list"), "shelf_start", empty_);
  auto* line = new QHBoxLayout(empty_);
  line->setContentsMargins(0, 0, 0, 0);
  auto* hint = new QLabel(spoken("The shelf is empty. Import a stock list, or take the program's "
                                 "list with none of anything and receive what you have."),
                          empty_);
  hint->setWordWrap(true);
  line->addWidget(hint, 1);
  line->addWidget(start);
  empty_->hide();
  connect(start, &QPushButton::clicked, this, [this] {
    replace(forecast::stock_template(), spoken("list of the program"),
            spoken("The list is there; now receive what you have."));
  });
}

QWidget* ShelfPage::build_tables() {
  lots_ = new SortedTable(spoken("On the shelf and on order"), this);
  lots_->setObjectName("shelf_lots");
  log_ = new SortedTable(spoken("Log of the shelf"), this);
  log_->setObjectName("shelf_log");
  auto* upper = new QWidget(this);
  auto* line = new QHBoxLayout(upper);
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(lots_, 1);
  line->addWidget(booking_);
  booking_->setFixedWidth(booking_width);
  auto* lower = new QWidget(this);
  auto* below = new QVBoxLayout(lower);
  below->setContentsMargins(0, 0, 0, 0);
  below->setSpacing(2);
  below->addWidget(quiet_text(spoken("Log, the latest first"), lower));
  below->addWidget(log_, 1);
  auto* split = new QSplitter(Qt::Vertical, this);
  split->addWidget(upper);
  split->addWidget(lower);
  split->setChildrenCollapsible(false);
  split->setStretchFactor(0, 3);
  split->setStretchFactor(1, 2);
  connect(lots_, &SortedTable::chosen, this,
          [this](int row) { booking_->show_row(rows_.at(static_cast<std::size_t>(row))); });
  return split;
}

void ShelfPage::set_today(int today) {
  if (today == today_) return;
  today_ = today;
  booking_->set_today(today);
  if (view_->is_open) request({}, {});
}

void ShelfPage::open() {
  try {
    place_ = kept_shelf_place();
  } catch (const InputError& error) {
    tell(QString::fromUtf8(error.what()), true);
    return;
  }
  place_form_->show_place(place_);
  request({}, {});
}

void ShelfPage::open_at(const ShelfPlace& place) {
  place_ = place;
  keep_shelf_place(place);
  request({}, spoken("The shelf is open."));
}

void ShelfPage::request(const ShelfJob::Action& action, const QString& done) {
  if (job_.is_busy()) return;
  done_ = done;
  job_.request(place_, booking_->who(), action);
}

void ShelfPage::take(const std::shared_ptr<const ShelfView>& view) {
  const bool other = view->shelf != view_->shelf;
  view_ = view;
  ShelfRows rows = shelf_rows(view->shelf, today_);
  rows_ = std::move(rows.rows);
  lots_->show_table(std::move(rows.table));
  log_->show_table(log_table(view->log));
  booking_->show_shelf(view->shelf);
  booking_->setEnabled(view->is_open);
  empty_->setVisible(view->is_open && view->shelf.empty());
  where_->setText(place_.is_server()
                      ? spoken("Shared shelf: {1} at {2}", {place_.database, place_.host})
                      : spoken("Shelf on this computer"));
  where_->setToolTip(address_of(place_));
  tell(view->problem.isEmpty() ? done_ : view->problem, !view->problem.isEmpty());
  if (!view->is_open && place_.is_server()) {
    findChild<QPushButton*>("shelf_place")->setChecked(true);
    place_form_->ask_for_password();
  }
  if (other) emit changed();
  emit shown_view();
}

void ShelfPage::tell(const QString& text, bool warn) {
  QPalette ink = palette();
  if (warn) ink.setColor(QPalette::WindowText, inks(palette()).stop);
  told_->setPalette(ink);
  told_->setText(warn ? spoken("Not done: {1}", {text}) : text);
  told_->setVisible(!text.isEmpty());
}

void ShelfPage::set_busy(bool busy) {
  buttons_->setEnabled(!busy);
  place_form_->setEnabled(!busy);
  empty_->setEnabled(!busy);
  booking_->setEnabled(!busy && view_->is_open);
  if (busy) tell(spoken("The shelf's database is asked…"), false);
}

bool ShelfPage::is_forecast_from() const { return forecast_->isChecked(); }

void ShelfPage::set_forecast_from(bool on) { forecast_->setChecked(on); }

void ShelfPage::replace(const forecast::Shelf& shelf, const QString& reason, const QString& done) {
  request([shelf, reason](ShelfStore& store) { store.replace(shelf, reason); }, done);
}

QString ShelfPage::import_list(const QString& file) {
  const QString name = QFileInfo(file).fileName();
  try {
    const auto shelf = casefile::shelf_from_csv(
        casefile::read_text(file.toStdString(), casefile::largest_file_bytes), name.toStdString());
    replace(shelf, spoken("counted: {1}", {name}),
            spoken("{1} is on the shelf: {2}.",
                   {name, count_of(static_cast<int>(shelf.size()), "item", "items")}));
  } catch (const InputError& error) {
    return QString::fromUtf8(error.what());
  }
  return {};
}

void ShelfPage::ask_import() {
  const QString file =
      QFileDialog::getOpenFileName(this, spoken("Stock list"), {}, spoken("Stock list (*.csv)"));
  if (file.isEmpty()) return;
  if (!view_->shelf.empty() &&
      QMessageBox::question(this, spoken("Count anew"),
                            spoken("What is on the shelf now is replaced by the list, for all who "
                                   "share it. The log keeps both. Go on?")) != QMessageBox::Yes) {
    return;
  }
  const QString fault = import_list(file);
  if (!fault.isEmpty()) tell(fault, true);
}

void ShelfPage::ask_export() {
  const QString path = QFileDialog::getSaveFileName(this, spoken("Save as a stock list"),
                                                    "stock.csv", spoken("Stock list (*.csv)"));
  if (path.isEmpty()) return;
  const QString fault =
      save_bytes(QByteArray::fromStdString(casefile::shelf_to_csv(view_->shelf)), path);
  tell(fault.isEmpty() ? spoken("Saved: {1}.", {path}) : fault, !fault.isEmpty());
}

}  // namespace drapewright::desktop
