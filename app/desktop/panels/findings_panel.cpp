#include "app/desktop/panels/findings_panel.h"

#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/panels/wrapped_table.h"
#include "app/desktop/theme/marks.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

QString text_of(const dressing::Finding& finding) {
  QString text = QString::fromStdString(finding.text);
  if (!finding.source.empty()) text += "\n" + spoken("Source: {1}", {finding.source});
  return text;
}

}  // namespace

FindingsPanel::FindingsPanel(QWidget* parent)
    : QWidget(parent),
      table_(new WrappedTable(spoken("Findings"), {spoken("Weight"), spoken("Finding")}, {0, 1},
                              this)),
      empty_(quiet_text({}, this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(heading(spoken("Findings"), this));
  column->addWidget(empty_);
  column->addWidget(table_, 1);
  column->addStretch(0);
  table_->setObjectName("findings");
  table_->horizontalHeader()->hide();
  table_->setToolTip(spoken("Select a finding to see its place in the drawing."));
  connect(table_, &QTableWidget::itemSelectionChanged, this, &FindingsPanel::tell_place);
  show_result({});
}

void FindingsPanel::show_result(const PlanResult& result) {
  const auto next = findings_of(result);
  empty_->setText(result.plan ? spoken("Nothing to point out.")
                              : spoken("Nothing is planned yet."));
  empty_->setVisible(next.empty());
  table_->setVisible(!next.empty());
  if (next == findings_ && table_->rowCount() == static_cast<int>(next.size())) return;
  findings_ = next;
  fill();
}

void FindingsPanel::fill() {
  const int size = fontMetrics().height();
  table_->setIconSize({size, size});
  table_->set_rows(static_cast<int>(findings_.size()));
  for (int row = 0; row < table_->rowCount(); ++row) {
    const auto& finding = findings_[static_cast<std::size_t>(row)];
    QTableWidgetItem& weight = table_->cell(row, 0);
    weight.setIcon(severity_mark(finding.severity, palette(), size));
    weight.setText(severity_word(finding.severity));
    weight.setForeground(severity_ink(finding.severity, palette()));
    weight.setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
    table_->cell(row, 1).setText(text_of(finding));
  }
  table_->fit();
  table_->clearSelection();
}

void FindingsPanel::tell_place() {
  const auto rows = table_->selectionModel()->selectedRows();
  const auto* finding =
      rows.isEmpty() ? nullptr : &findings_.at(static_cast<std::size_t>(rows.front().row()));
  if (finding != nullptr && finding->where_cm) {
    emit place_chosen(*finding->where_cm);
  } else {
    emit no_place_chosen();
  }
}

void FindingsPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) fill();
}

}  // namespace drapewright::desktop
