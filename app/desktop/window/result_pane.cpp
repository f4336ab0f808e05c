#include "app/desktop/window/result_pane.h"

#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "app/desktop/panels/count_banner.h"
#include "app/desktop/panels/findings_panel.h"
#include "app/desktop/panels/materials_panel.h"
#include "app/desktop/panels/measures_panel.h"

namespace drapewright::desktop {
ResultPane::ResultPane(QWidget* parent)
    : QWidget(parent),
      banner_(new CountBanner(this)),
      findings_(new FindingsPanel(this)),
      measures_(new MeasuresPanel(this)),
      materials_(new MaterialsPanel(this)) {
  auto* split = new QSplitter(Qt::Vertical, this);
  for (QWidget* part : {static_cast<QWidget*>(findings_), static_cast<QWidget*>(measures_),
                        static_cast<QWidget*>(materials_)}) {
    split->addWidget(part);
  }
  split->setChildrenCollapsible(false);
  split->setHandleWidth(8);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 6, 6, 0);
  column->addWidget(banner_);
  column->addWidget(split, 1);
}

QSize ResultPane::sizeHint() const {
  return {width_of(56), 600};  // a line of text that reads well
}

QSize ResultPane::minimumSizeHint() const { return {width_of(42), 300}; }

int ResultPane::width_of(int characters) const {
  return std::min(characters * fontMetrics().averageCharWidth(), most_width_);
}

void ResultPane::set_most_width(int px) {
  most_width_ = px;
  updateGeometry();
}

void ResultPane::show_result(const PlanResult& result) {
  banner_->show_result(result);
  findings_->show_result(result);
  measures_->show_result(result);
  materials_->show_result(result);
}

}  // namespace drapewright::desktop
