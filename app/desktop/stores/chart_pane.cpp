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
#include <QtCharts/QAreaSeries>
#include <QtCharts/QChart>
#include <QtCharts/QChartView>
#include <QtCharts/QXYSeries>

#include "app/desktop/stores/chart_files.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;

QPushButton* button(const QString& text, const QString& tip, QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setMinimumHeight(least_height);
  button->setToolTip(tip);
  return button;
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
      view_(new QChartView(this)),
      table_(new SortedTable(spoken("{1}, as numbers", {name}), this)) {
  view_->setRenderHint(QPainter::Antialiasing);
  view_->setRubberBand(QChartView::RectangleRubberBand);
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
  column->addWidget(split, 1);
  connect(items_, &QComboBox::currentIndexChanged, this, &ChartPane::show_item);
}

QWidget* ChartPane::row_of_buttons() {
  auto* row = new QWidget(this);
  items_->setMinimumHeight(least_height);
  items_->setMinimumWidth(280);
  items_->setAccessibleName(spoken("Item"));
  items_->setVisible(by_item_);
  told_->setObjectName("chart_told");
  auto* out = button(spoken("Whole chart"), spoken("Undo the closer look."), row);
  auto* save_button = button(spoken("Save…"), spoken("As SVG or PNG, or its numbers as CSV."), row);
  auto* print_button = button(spoken("Print…"), spoken("The chart as it is seen."), row);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(items_);
  line->addWidget(told_, 1);
  for (QPushButton* each : {out, save_button, print_button}) line->addWidget(each);
  connect(out, &QPushButton::clicked, this, [this] { view_->chart()->zoomReset(); });
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
    items_->addItem(QString::fromStdString(item.item));
  }
  items_->setCurrentIndex(std::max(0, items_->findText(before)));
}

const forecast::ItemForecast* ChartPane::chosen() const {
  const int index = items_->currentIndex();
  if (!result_ || index < 0) return nullptr;
  return &result_->forecast.items[static_cast<std::size_t>(index)];
}

void ChartPane::show_item() {
  told_->clear();
  const auto* item = chosen();
  const std::unique_ptr<QChart> before(view_->chart());
  if (item == nullptr) {
    view_->setChart(new QChart);
    table_->show_table({});
    return;
  }
  auto chart = draw_(result_->forecast, by_item_ ? item : nullptr, palette());
  tell_points(*chart);
  view_->setChart(chart.release());
  table_->show_table(list_(result_->forecast, by_item_ ? item : nullptr));
}

void ChartPane::tell_points(QChart& chart) {
  for (QAbstractSeries* series : chart.series()) {
    const QString name = series->name();
    const auto tell = [this, name](const QPointF& point, bool on) {
      told_->setText(
          on ? spoken("{1}, week {2}: {3}", {name, qRound(point.x()),
                                             QString::fromStdString(format_number(point.y(), 1))})
             : QString());
    };
    if (auto* line = qobject_cast<QXYSeries*>(series)) {
      connect(line, &QXYSeries::hovered, this, tell);
    } else if (auto* area = qobject_cast<QAreaSeries*>(series)) {
      connect(area, &QAreaSeries::hovered, this, tell);
    }
  }
}

/// On paper the ground is light, whatever the screen has. A view that was never shown is not laid
/// out: this one is, without being seen.
std::unique_ptr<QChartView> ChartPane::light_view() const {
  auto chart = draw_(result_->forecast, by_item_ ? chosen() : nullptr, light_palette());
  auto view = std::make_unique<QChartView>(chart.release());
  view->setAttribute(Qt::WA_DontShowOnScreen);
  view->setFrameShape(QFrame::NoFrame);
  view->resize(view_->size());
  view->show();
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
  const auto light = light_view();
  print_chart(*light, printer);
}

void ChartPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && result_) show_item();
}

}  // namespace drapewright::desktop
