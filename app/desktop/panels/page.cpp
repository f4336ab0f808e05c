#include "app/desktop/panels/page.h"

#include <QEvent>
#include <QLabel>
#include <QScrollBar>
#include <QVBoxLayout>
#include <algorithm>

namespace drapewright::desktop {
QLabel* heading(const QString& title, QWidget* parent) {
  auto* label = new QLabel(title, parent);
  QFont font = label->font();
  font.setBold(true);
  label->setFont(font);
  return label;
}

Page::Page(const QString& name, QWidget* parent) : QScrollArea(parent) {
  auto* content = new QWidget(this);
  column_ = new QVBoxLayout(content);
  column_->setSpacing(6);
  setWidget(content);
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setAccessibleName(name);
  setFocusPolicy(Qt::NoFocus);
  content->installEventFilter(this);
}

void Page::add_heading(const QString& title) {
  if (column_->count() > 0) column_->addSpacing(8);
  column_->addWidget(heading(title, widget()));
}

void Page::add(QWidget* widget) { column_->addWidget(widget); }

void Page::set_most_width(int px) {
  most_width_ = px;
  setHorizontalScrollBarPolicy(px == QWIDGETSIZE_MAX ? Qt::ScrollBarAlwaysOff
                                                     : Qt::ScrollBarAsNeeded);
  updateGeometry();
}

void Page::add_stretch() { column_->addStretch(1); }

QSize Page::minimumSizeHint() const {
  // As wide as what it holds, so that nothing is cut off at the side, unless that is too wide.
  const int width = widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width();
  return {std::min(width, most_width_), 120};
}

bool Page::eventFilter(QObject* watched, QEvent* event) {
  if (watched == widget() && event->type() == QEvent::LayoutRequest) updateGeometry();
  return QScrollArea::eventFilter(watched, event);
}

}  // namespace drapewright::desktop
