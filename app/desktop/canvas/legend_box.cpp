#include "app/desktop/canvas/legend_box.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/printing/painter.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"
#include "core/report/legend.h"

namespace drapewright::desktop {

namespace {

constexpr QSize swatch_size{34, 16};

QPixmap swatch(report::LayerKind kind, report::Ground ground, const QWidget& on) {
  const double ratio = on.devicePixelRatioF();
  QPixmap pixmap(swatch_size * ratio);
  pixmap.setDevicePixelRatio(ratio);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  const double pixels_per_mm = on.logicalDpiX() / 25.4;
  painter.scale(pixels_per_mm, pixels_per_mm);
  const double inset = 0.5;
  printing::paint_shapes(
      painter,
      report::draw_swatch(kind, {{inset, inset},
                                 {swatch_size.width() / pixels_per_mm - inset,
                                  swatch_size.height() / pixels_per_mm - inset}}),
      ground);
  return pixmap;
}

}  // namespace

LegendBox::LegendBox(QWidget* parent) : QFrame(parent) {
  setObjectName("legend");
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  setCursor(Qt::ArrowCursor);
  heading_ = new QToolButton(this);
  heading_->setText(spoken("Legend"));
  heading_->setAutoRaise(true);
  heading_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  heading_->setArrowType(Qt::DownArrow);
  heading_->setMinimumHeight(24);
  heading_->setToolTip(spoken("Fold or unfold the legend"));
  heading_->setAccessibleName(spoken("Legend"));
  rows_ = new QWidget(this);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(6, 2, 6, 4);
  layout->setSpacing(2);
  layout->addWidget(heading_);
  layout->addWidget(rows_);
  connect(heading_, &QToolButton::clicked, this, [this] {
    user_chose_ = true;
    set_open(!open_);
    emit folded();
  });
  set_ground(report::Ground::light);
}

void LegendBox::set_open(bool open) {
  open_ = open;
  rows_->setVisible(open);
  heading_->setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
  heading_->setAccessibleDescription(open ? tr("unfolded") : tr("folded"));
  adjustSize();
}

void LegendBox::suggest_open(bool open) {
  if (!user_chose_ && open != open_) set_open(open);
}

QSize LegendBox::unfolded_size() const {
  const QMargins margins = layout()->contentsMargins();
  const QSize rows = rows_->sizeHint();
  return {rows.width() + margins.left() + margins.right(),
          rows.height() + heading_->sizeHint().height() + margins.top() + margins.bottom()};
}

void LegendBox::set_rows(std::vector<report::LayerKind> layers, QStringList notes) {
  if (layers == layers_ && notes == notes_) return;
  layers_ = std::move(layers);
  notes_ = std::move(notes);
  rebuild();
}

void LegendBox::set_ground(report::Ground ground) {
  ground_ = ground;
  QPalette colours = palette();
  QColor plate = printing::to_qcolor(report::ground_colour(ground));
  plate.setAlphaF(0.92F);
  const QColor ink = printing::to_qcolor(report::ink_colour(ground));
  colours.setColor(QPalette::Window, plate);
  for (const auto role : {QPalette::WindowText, QPalette::ButtonText, QPalette::Text}) {
    colours.setColor(role, ink);
  }
  setPalette(colours);
  rebuild();
}

void LegendBox::rebuild() {
  auto* fresh = new QWidget(this);
  auto* grid = new QGridLayout(fresh);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(3);
  grid->setColumnStretch(1, 1);
  int row = 0;
  for (const report::LayerKind kind : layers_) {
    auto* picture = new QLabel(fresh);
    picture->setPixmap(swatch(kind, ground_, *this));
    grid->addWidget(picture, row, 0);
    grid->addWidget(new QLabel(spoken(report::style_of(kind).title), fresh), row++, 1);
  }
  for (const QString& note : notes_) grid->addWidget(new QLabel(note, fresh), row++, 0, 1, 2);
  fresh->setVisible(is_open());
  layout()->replaceWidget(rows_, fresh);
  delete rows_;
  rows_ = fresh;
  setVisible(!layers_.empty());
  adjustSize();
}

}  // namespace drapewright::desktop
