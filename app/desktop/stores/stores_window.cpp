#include "app/desktop/stores/stores_window.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStatusBar>
#include <QTabWidget>
#include <QVBoxLayout>
#include <QtCharts/QChart>
#include <algorithm>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/stores/chart_files.h"
#include "app/desktop/stores/chart_pane.h"
#include "app/desktop/stores/charts.h"
#include "app/desktop/stores/correction_box.h"
#include "app/desktop/stores/forecast_form.h"
#include "app/desktop/stores/kept_rate.h"
#include "app/desktop/stores/shelf_page.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/stores/tables.h"
#include "app/desktop/stores/what_if_page.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/stock_csv.h"
#include "core/casefile/text_file.h"

namespace drapewright::desktop {
namespace {

constexpr int pause_before_forecast_ms = 400;
constexpr int side_width = 270;

QString words(const std::string& text) { return QString::fromStdString(text); }

QPushButton* wide_button(const QString& text, QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setMinimumHeight(28);
  return button;
}

}  // namespace

StoresWindow::StoresWindow(int first_day, QWidget* parent)
    : QMainWindow(parent), first_day_(first_day) {
  setWindowTitle(spoken("Stores - Drapewright"));
  later_.setSingleShot(true);
  later_.setInterval(pause_before_forecast_ms);
  form_ = new ForecastForm(this);
  if (const auto rate = kept_rate()) form_->set_extra_dressings(rate->per_week);
  build_pages();
  auto* split = new QSplitter(this);
  split->addWidget(build_side());
  split->addWidget(pages_);
  split->setStretchFactor(1, 1);
  split->setChildrenCollapsible(false);
  setCentralWidget(split);
  build_menu();
  statusBar()->addWidget(
      new QLabel(
          spoken("For the stores, not for the bedside: what a patient needs, the prescriber, local "
                 "policy and the device's instructions decide."),
          this),
      1);
  connect(form_, &ForecastForm::changed, &later_, qOverload<>(&QTimer::start));
  connect(&later_, &QTimer::timeout, this, &StoresWindow::forecast);
  connect(&job_, &CaseloadJob::finished, this, &StoresWindow::take);
  connect(&job_, &CaseloadJob::progressed, this,
          [this](double part) { progress_->setValue(static_cast<int>(100 * part)); });
  connect(&job_, &CaseloadJob::busy_changed, this, [this](bool busy) {
    progress_->setVisible(busy);
    cancel_->setVisible(busy);
  });
  show_totals();
  resize(1366, 720);
  shelf_page_->open();
}

QWidget* StoresWindow::build_side() {
  auto* side = new QWidget(this);
  auto* open = wide_button(spoken("&Open a folder of cases…"), side);
  auto* stock = wide_button(spoken("Read a &stock list…"), side);
  totals_ = new QLabel(side);
  totals_->setObjectName("stores_totals");
  totals_->setWordWrap(true);
  correction_ = new CorrectionBox(side);
  progress_ = new QProgressBar(side);
  progress_->setObjectName("stores_progress");
  progress_->setFormat(spoken("Reading cases, %p %"));
  progress_->hide();
  cancel_ = wide_button(spoken("&Cancel"), side);
  cancel_->setObjectName("stores_cancel");
  cancel_->hide();
  auto* scroll = new QScrollArea(side);
  scroll->setWidget(form_);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* column = new QVBoxLayout(side);
  for (QWidget* each :
       std::initializer_list<QWidget*>{open, stock, progress_, cancel_, totals_, correction_}) {
    column->addWidget(each);
  }
  column->addWidget(scroll, 1);
  side->setMinimumWidth(side_width);
  side->setMaximumWidth(side_width + 60);
  connect(open, &QPushButton::clicked, this, &StoresWindow::ask_folder);
  connect(stock, &QPushButton::clicked, this, &StoresWindow::ask_stock);
  connect(cancel_, &QPushButton::clicked, &job_, &CaseloadJob::cancel);
  connect(correction_, &CorrectionBox::rate_chosen, form_, &ForecastForm::set_extra_dressings);
  return side;
}

void StoresWindow::build_pages() {
  pages_ = new QTabWidget(this);
  pages_->setDocumentMode(true);
  pages_->setAccessibleName(spoken("The forecast"));
  const auto table = [&](const QString& title) {
    auto* page = new SortedTable(title, this);
    pages_->addTab(page, title);
    return page;
  };
  using forecast::Forecast;
  using forecast::ItemForecast;
  patients_ = table(spoken("Patients"));
  items_ = table(spoken("Items"));
  use_ = new ChartPane(
      spoken("Use by week"), true,
      [](const Forecast& f, const ItemForecast* item, const QPalette& p) {
        return draw_use(f, *item, p);
      },
      [](const Forecast& f, const ItemForecast* item) { return use_table(f, *item); }, this);
  pages_->addTab(use_, spoken("Use"));
  shelf_ = new ChartPane(
      spoken("Stock over time"), true,
      [](const Forecast& f, const ItemForecast* item, const QPalette& p) {
        return draw_stock(f, *item, p);
      },
      [](const Forecast& f, const ItemForecast* item) { return stock_table(f, *item); }, this);
  pages_->addTab(shelf_, spoken("Stock"));
  cost_ = new ChartPane(
      spoken("Cost by item"), false,
      [](const Forecast& f, const ItemForecast*, const QPalette& p) { return draw_cost(f, p); },
      [](const Forecast& f, const ItemForecast*) { return cost_table(f); }, this);
  pages_->addTab(cost_, spoken("Cost"));
  orders_ = table(spoken("Orders"));
  picks_ = table(spoken("Pick list"));
  recorded_ = table(spoken("Recorded"));
  findings_ = table(spoken("Findings"));
  shelf_page_ = new ShelfPage(first_day_, this);
  what_if_ = new WhatIfPage(
      [this] {
        return WhatIfPage::Basis{folder_, form_->settings(first_day_), stock()};
      },
      this);
  pages_->addTab(what_if_, spoken("What if"));
  pages_->addTab(shelf_page_, spoken("Shelf"));
  connect(shelf_page_, &ShelfPage::changed, this, &StoresWindow::use_shelf);
}

void StoresWindow::build_menu() {
  QMenu* menu = menuBar()->addMenu(spoken("&File"));
  menu->addAction(spoken("&Open a folder of cases…"), QKeySequence::Open, this,
                  &StoresWindow::ask_folder);
  menu->addAction(spoken("Read a &stock list…"), this, &StoresWindow::ask_stock);
  menu->addAction(spoken("Save a stock list to &fill in…"), this, &StoresWindow::save_template);
  menu->addAction(spoken("Save this &table…"), QKeySequence::Save, this, &StoresWindow::save_shown);
  menu->addSeparator();
  menu->addAction(spoken("&Close"), QKeySequence::Close, this, &QWidget::close);
}

/// A chart and its numbers, or the page's table.
void StoresWindow::save_shown() {
  QWidget* page = pages_->currentWidget();
  if (auto* pane = qobject_cast<ChartPane*>(page)) return pane->save();
  auto* table = qobject_cast<SortedTable*>(page);
  if (table == nullptr) table = page->findChild<SortedTable*>();
  const QString path =
      QFileDialog::getSaveFileName(this, spoken("Save table"), {}, spoken("Numbers (*.csv)"));
  if (path.isEmpty()) return;
  const QString fault = save_bytes(table->table().as_csv(), path);
  if (!fault.isEmpty()) QMessageBox::warning(this, spoken("Not saved"), fault);
}

void StoresWindow::ask_folder() {
  const QString folder =
      QFileDialog::getExistingDirectory(this, spoken("Folder of cases"), folder_);
  if (!folder.isEmpty()) open_folder(folder);
}

void StoresWindow::set_today(int first_day) {
  if (first_day == first_day_) return;
  first_day_ = first_day;
  shelf_page_->set_today(first_day);
  forecast();
}

void StoresWindow::open_folder(const QString& folder) {
  folder_ = folder;
  forecast();
}

void StoresWindow::ask_stock() {
  const QString file =
      QFileDialog::getOpenFileName(this, spoken("Stock list"), {}, spoken("Stock list (*.csv)"));
  if (file.isEmpty()) return;
  const QString fault = open_stock(file);
  if (!fault.isEmpty()) QMessageBox::warning(this, spoken("Stock list not read"), fault);
}

QString StoresWindow::open_stock(const QString& file) {
  try {
    list_ = casefile::shelf_from_csv(
        casefile::read_text(file.toStdString(), casefile::largest_file_bytes),
        QFileInfo(file).fileName().toStdString());
  } catch (const InputError& error) {
    return QString::fromUtf8(error.what());
  }
  stock_file_ = file;
  const QSignalBlocker quiet(shelf_page_);
  shelf_page_->set_forecast_from(false);
  forecast();
  return {};
}

const forecast::Shelf& StoresWindow::stock() const {
  static const forecast::Shelf none;
  if (!stock_file_.isEmpty()) return list_;
  return shelf_page_->is_forecast_from() ? shelf_page_->shelf() : none;
}

/// The shelf in the database was booked on, or chosen to forecast with in the place of a list.
void StoresWindow::use_shelf() {
  if (shelf_page_->is_forecast_from()) stock_file_.clear();
  later_.start();
}

QString StoresWindow::stock_in_words() const {
  if (!stock_file_.isEmpty()) return spoken("Stock: {1}", {QFileInfo(stock_file_).fileName()});
  return stock().empty() ? spoken("No stock list: use and cost only.")
                         : spoken("Stock: the shelf in the database");
}

void StoresWindow::save_template() {
  const QString path = QFileDialog::getSaveFileName(this, spoken("Stock list to fill in"),
                                                    "stock.csv", spoken("Stock list (*.csv)"));
  if (path.isEmpty()) return;
  const auto text = casefile::shelf_to_csv(forecast::stock_template());
  const QString fault = save_bytes(QByteArray::fromStdString(text), path);
  if (!fault.isEmpty()) QMessageBox::warning(this, spoken("Not saved"), fault);
}

void StoresWindow::forecast() {
  what_if_->show_stale();
  if (folder_.isEmpty()) return show_totals();
  progress_->setValue(0);
  job_.request(folder_, form_->settings(first_day_), stock());
}

void StoresWindow::take(const std::shared_ptr<const CaseloadResult>& result) {
  result_ = result;
  const auto& forecast = result->forecast;
  patients_->show_table(patients_table(*result));
  items_->show_table(items_table(forecast));
  orders_->show_table(orders_table(forecast));
  picks_->show_table(pick_table(forecast));
  recorded_->show_table(recorded_table(forecast));
  findings_->show_table(findings_table(*result));
  for (ChartPane* pane : {use_, shelf_, cost_}) pane->show_result(result);
  show_totals();
  emit shown_result();
}

void StoresWindow::show_totals() {
  const QString stock = stock_in_words();
  if (!result_ || !result_->problem.isEmpty()) {
    correction_->show_recorded({}, form_->extra_dressings());
    totals_->setText((result_ ? result_->problem
                              : spoken("Open a folder of cases to see what "
                                       "they will use.")) +
                     QString("<br>") + stock);
    return;
  }
  const auto& forecast = result_->forecast;
  const auto cases = static_cast<int>(result_->patients.size());
  QString text = spoken("<b>{1}</b>, {2} under way or to start",
                        {words(count_of(cases, "case", "cases")),
                         words(count_of(forecast.patients, "course", "courses"))});
  if (!result_->faults.empty()) {
    text += spoken("; <b>{1} not read</b>, see Findings", {result_->faults.size()});
  }
  text += "<br>" + spoken("Expected cost <b>{1}</b>, {2} a patient",
                          {words(format_number(forecast.cost, 2)),
                           words(format_number(forecast.cost_per_patient, 2))});
  const auto unknown = static_cast<int>(std::ranges::count_if(
      forecast.items, [](const auto& item) { return item.total.mean > 0 && !item.cost; }));
  if (unknown > 0) {
    text += "<br>" +
            spoken("No unit cost is known for {1}.", {words(count_of(unknown, "item", "items"))});
  }
  if (!this->stock().empty()) {
    text += "<br>" + spoken("Orders <b>{1}</b>", {words(format_number(forecast.order_cost, 2))});
  }
  totals_->setText(text + QString("<br>") + stock);
  correction_->show_recorded(forecast.recorded, form_->extra_dressings());
}

}  // namespace drapewright::desktop
