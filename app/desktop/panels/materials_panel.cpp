#include "app/desktop/panels/materials_panel.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/panels/wrapped_table.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

/// The counts of one line, and below them how they are worked out.
void fill_line(WrappedTable& table, int first_row, const MaterialRow& line) {
  const QStringList texts{line.item, line.per_application, line.per_course};
  table.set_whole(first_row, false);
  table.set_whole(first_row + 1, true);
  for (int column = 0; column < texts.size(); ++column) {
    table.cell(first_row, column).setText(texts[column]);
    table.cell(first_row, column)
        .setTextAlignment((column == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop);
    QFont bold = table.font();
    bold.setBold(true);
    table.cell(first_row, column).setFont(bold);
  }
  table.cell(first_row + 1, 0).setText(line.basis);
  table.cell(first_row + 1, 0).setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
}

QStringList titles() {
  const MaterialRow all = material_titles();
  return {all.item, all.per_application, all.per_course};
}

QPushButton* button(const QString& text, const QString& tip, QWidget* parent) {
  auto* made = new QPushButton(text, parent);
  made->setToolTip(tip);
  made->setMinimumHeight(26);
  return made;
}

}  // namespace

MaterialsPanel::MaterialsPanel(QWidget* parent)
    : QWidget(parent),
      table_(new WrappedTable(spoken("Materials"), titles(), {1, 0, 0}, this)),
      empty_(quiet_text(spoken("No list yet."), this)),
      copy_(
          button(spoken("Copy"), spoken("Copy the list, tab separated, for a spreadsheet."), this)),
      save_(button(spoken("Save CSV…"), spoken("Save the list as comma-separated values."), this)) {
  auto* top = new QHBoxLayout;
  top->addWidget(heading(spoken("Materials"), this), 1);
  top->addWidget(copy_);
  top->addWidget(save_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(top);
  column->addWidget(empty_);
  column->addWidget(table_, 1);
  column->addStretch(0);
  table_->setObjectName("materials");
  table_->setAlternatingRowColors(false);
  connect(copy_, &QPushButton::clicked, this, &MaterialsPanel::copy);
  connect(save_, &QPushButton::clicked, this, &MaterialsPanel::save_wanted);
  show_result({});
}

void MaterialsPanel::show_result(const PlanResult& result) {
  rows_ = result.plan ? material_rows(*result.plan) : std::vector<MaterialRow>{};
  empty_->setVisible(rows_.empty());
  table_->setVisible(!rows_.empty());
  copy_->setEnabled(!rows_.empty());
  save_->setEnabled(!rows_.empty());
  table_->set_rows(2 * static_cast<int>(rows_.size()));
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    fill_line(*table_, 2 * static_cast<int>(i), rows_[i]);
  }
  table_->fit();
}

void MaterialsPanel::copy() const {
  QGuiApplication::clipboard()->setText(as_tab_separated(rows_));
}

}  // namespace drapewright::desktop
