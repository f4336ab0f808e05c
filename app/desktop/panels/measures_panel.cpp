#include "app/desktop/panels/measures_panel.h"

#include <QLabel>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/measure_rows.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/panels/wrapped_table.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

void fill_row(WrappedTable& table, int index, const MeasureRow& row) {
  const bool starts_group = row.value.isEmpty();
  QFont font = table.font();
  font.setBold(starts_group);
  table.set_whole(index, starts_group);
  const QStringList texts{row.name, row.value, row.spread};
  for (int column = 0; column < 3; ++column) {
    QTableWidgetItem& cell = table.cell(index, column);
    cell.setText(texts[column]);
    cell.setFont(font);
    cell.setToolTip(row.detail);
    cell.setTextAlignment((column == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
  }
}

}  // namespace

MeasuresPanel::MeasuresPanel(QWidget* parent)
    : QWidget(parent),
      table_(new WrappedTable(spoken("Measures"),
                              {spoken("Measure"), spoken("Value"), spoken("Spread")}, {1, 1, 0},
                              this)),
      empty_(quiet_text({}, this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(heading(spoken("Measures"), this));
  column->addWidget(empty_);
  column->addWidget(table_, 1);
  column->addStretch(0);
  table_->setObjectName("measures");
  show_result({});
}

void MeasuresPanel::show_result(const PlanResult& result) {
  const auto rows = result.plan ? measure_rows(*result.plan) : std::vector<MeasureRow>{};
  empty_->setText(result.planned ? spoken("No figures: see the findings.")
                                 : spoken("Nothing is measured yet: type an outline on the left."));
  empty_->setVisible(rows.empty());
  table_->setVisible(!rows.empty());
  table_->set_rows(static_cast<int>(rows.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) fill_row(*table_, static_cast<int>(i), rows[i]);
  table_->fit();
}

}  // namespace drapewright::desktop
