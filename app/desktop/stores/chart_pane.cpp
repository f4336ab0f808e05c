#include "app/desktop/stores/chart_pane.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QEvent>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>
#include <QtCharts/QChart>
#include <QtCharts/QChartView>

#include "app/desktop/stores/chart_files.h"
#include "app/desktop/stores/chart_view.h"
#include "app/desktop/stores/charts.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;

QPushButton* button(const QString& text, const QString& tip, QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setMinimumHeight(least_height);
  button->setToolTip(tip);
  return button;
}

QString hint() {
  return spoken(
      "Drag, wheel or + and - to look closer, 0 for the whole chart; the mouse or the "
      "arrows tell the figures.");
}

}  // namespace

ChartPane::ChartPane(const QString& name, bool by_item, Draw draw, List list, QWidget* parent)
    : QWidget(parent),
      name_(name),
      by_item_(by_item),
      draw_(std::move(draw)),
      list_(std::move(list)),
      items_(new QComboBox(this)),
      told_(new QLabel(this)),
      view_(new ChartView(this)),
      table_(new SortedTable(spoken("{1}, as numbers", {name}), this)) {
  told_->setObjectName("chart_told");
  told_->setTextFormat(Qt::PlainText);
  told_->setWordWrap(true);
  // Always the room of two lines: the chart does not jump under the mouse.
  told_->setMinimumHeight(2 * told_->fontMetrics().lineSpacing());
  told_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  view_->setAccessibleName(spoken("{1}, drawn", {name}));
  view_->setMinimumHeight(180);
  auto* split = new QSplitter(Qt::Vertical, this);
  split->addWidget(view_);
  split->addWidget(table_);
  split->setChildrenCollapsible(false);
  split->setStretchFactor(0, 3);
  split->setStretchFactor(1, 2);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 6, 6, 4);
  column->addWidget(row_of_buttons());
  column->addWidget(told_);
  column->addWidget(split, 1);
  connect(view_, &ChartView::pointed, this, &ChartPane::tell_row);
  connect(table_, &SortedTable::chosen, view_, &ChartView::point_at);
  connect(items_, &QComboBox::currentIndexChanged, this, &ChartPane::show_item);
}

QWidget* ChartPane::row_of_buttons() {
  auto* row = new QWidget(this);
  items_->setMinimumHeight(least_height);
  items_->setMinimumWidth(280);
  items_->setAccessibleName(spoken("Item"));
  items_->setVisible(by_item_);
  auto* out = button(spoken("Whole chart"), spoken("Undo the closer look."), row);
  auto* save_button = button(spoken("Save…"), spoken("As SVG or PNG, or its numbers as CSV."), row);
  auto* print_button = button(spoken("Print…"), spoken("The chart as it is seen."), row);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(items_);
  line->addStretch(1);
  for (QPushButton* each : {out, save_button, print_button}) line->addWidget(each);
  connect(out, &QPushButton::clicked, this, [this] { view_->show_all(); });
  connect(save_button, &QPushButton::clicked, this, &ChartPane::save);
  connect(print_button, &QPushButton::clicked, this, &ChartPane::print);
  return row;
}

void ChartPane::show_result(std::shared_ptr<const CaseloadResult> result) {
  result_ = std::move(result);
  fill_items();
  show_item();
}

/// The item that was looked at stays chosen where the new forecast has it.
void ChartPane::fill_items() {
  const QString before = items_->currentText();
  const QSignalBlocker quiet(items_);
  items_->clear();
  if (!result_) return;
  for (const auto& item : result_->forecast.items) {
    items_->addItem(QString::fromStdString(supplies::shown_name(item.item)));
  }
  items_->setCurrentIndex(std::max(0, items_->findText(before)));
}

const forecast::ItemForecast* ChartPane::chosen() const {
  const int index = items_->currentIndex();
  if (!result_ || index < 0) return nullptr;
  return &result_->forecast.items[static_cast<std::size_t>(index)];
}

void ChartPane::show_item() {
  told_->setText(hint());
  const auto* item = chosen();
  if (item == nullptr) {
    view_->show_chart(std::make_unique<QChart>(), 0);
    table_->show_table({});
    return;
  }
  NumberTable numbers = list_(result_->forecast, by_item_ ? item : nullptr);
  auto chart = draw_(result_->forecast, by_item_ ? item : nullptr, palette());
  const auto rows = static_cast<int>(numbers.rows.size());
  view_->show_chart(std::move(chart), by_item_ ? rows : std::min(rows, most_bars));
  table_->show_table(std::move(numbers));
}

/// The figures are the table's: the chart has none of its own.
void ChartPane::tell_row(int row) {
  QStringList figures;
  if (row >= 0) {
    const NumberTable& numbers = table_->table();
    const auto& cells = numbers.rows.at(static_cast<std::size_t>(row));
    for (qsizetype i = 0; i < numbers.titles.size(); ++i) {
      const QString figure = cells.at(static_cast<std::size_t>(i)).text();
      if (!figure.isEmpty()) figures << numbers.titles[i] + " " + figure;
    }
    if (!numbers.remark.isEmpty()) figures << numbers.remark;
    table_->choose(row);
  }
  const QString told = figures.join("   ");
  view_->setAccessibleDescription(told);
  told_->setText(row >= 0 ? told : hint());
}

/// On paper the ground is light, whatever the screen has. A view that was never shown is not laid
/// out: this one is, without being seen.
std::unique_ptr<QGraphicsView> ChartPane::light_view() const {
  auto chart = draw_(result_->forecast, by_item_ ? chosen() : nullptr, light_palette());
  auto view = std::make_unique<QChartView>(chart.release());
  view->setAttribute(Qt::WA_DontShowOnScreen);
  view->setFrameShape(QFrame::NoFrame);
  view->resize(view_->size());
  view->show();
  QCoreApplication::sendPostedEvents();
  // Its legend was laid out before the fonts were known, and would cut its words short.
  view->resize(view_->size() + QSize(1, 1));
  view->resize(view_->size());
  QCoreApplication::sendPostedEvents();
  return view;
}

void ChartPane::save() {
  const QString path = QFileDialog::getSaveFileName(
      this, spoken("Save {1}", {name_}), name_.toLower().replace(' ', '-') + ".svg",
      spoken("Drawing (*.svg);;Picture (*.png);;Numbers (*.csv)"));
  if (path.isEmpty()) return;
  const QString fault = save_to(path);
  if (!fault.isEmpty()) QMessageBox::warning(this, spoken("Not saved"), fault);
}

QString ChartPane::save_to(const QString& path) {
  if (path.endsWith(".csv", Qt::CaseInsensitive)) {
    return save_bytes(table_->table().as_csv(), path);
  }
  if (chosen() == nullptr) return spoken("There is no forecast yet.");
  const auto light = light_view();
  return save_chart(*light, path);
}

void ChartPane::print() {
  if (chosen() == nullptr) return;
  QPrinter printer(QPrinter::HighResolution);
  printer.setPageOrientation(QPageLayout::Landscape);
  QPrintDialog dialog(&printer, this);
  if (dialog.exec() != QDialog::Accepted) return;
  print_on(printer);
}

void ChartPane::print_on(QPrinter& printer) {
  const auto light = light_view();
  print_chart(*light, printer);
}

void ChartPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && result_) show_item();
}

}  // namespace drapewright::desktop
