#include "app/desktop/panels/materials_panel.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/panels/wrapped_table.h"

namespace drapewright::desktop {
namespace {

QStringList cells_of(const MaterialRow& row) {
  return {row.item, row.per_application, row.per_course, row.basis};
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
      table_(new WrappedTable("Materials", cells_of(material_titles()), {3, 0, 0, 4}, this)),
      empty_(quiet_text("No list yet.", this)),
      copy_(button("Copy", "Copy the list, tab separated, for a spreadsheet.", this)),
      save_(button("Save CSV…", "Save the list as comma-separated values.", this)) {
  auto* top = new QHBoxLayout;
  top->addWidget(heading("Materials", this), 1);
  top->addWidget(copy_);
  top->addWidget(save_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(top);
  column->addWidget(empty_);
  column->addWidget(table_, 1);
  column->addStretch(0);
  table_->setObjectName("materials");
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
  table_->set_rows(static_cast<int>(rows_.size()));
  for (int row = 0; row < table_->rowCount(); ++row) {
    const QStringList texts = cells_of(rows_[static_cast<std::size_t>(row)]);
    for (int column = 0; column < texts.size(); ++column) {
      const bool is_count = column == 1 || column == 2;
      table_->cell(row, column).setText(texts[column]);
      table_->cell(row, column)
          .setTextAlignment((is_count ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignTop);
    }
  }
  table_->fit();
}

void MaterialsPanel::copy() const {
  QGuiApplication::clipboard()->setText(as_tab_separated(rows_));
}

}  // namespace drapewright::desktop
