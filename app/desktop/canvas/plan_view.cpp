#include "app/desktop/canvas/plan_view.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>
#include <limits>

#include "app/desktop/canvas/layer_paths.h"
#include "app/desktop/canvas/legend_box.h"
#include "app/desktop/canvas/viewport.h"
#include "app/printing/painter.h"
#include "app/printing/pens.h"
#include "core/geometry/clock.h"
#include "core/report/annotate.h"
#include "core/report/legend.h"
#include "core/report/rose.h"
#include "core/report/rulers.h"

namespace drapewright::desktop {

using geometry::Point;
using report::LayerKind;

namespace {

constexpr int band_px = 36;      ///< rulers
constexpr double text_mm = 2.9;  ///< 11 px at 96 dpi
constexpr double ruler_text_mm = 2.5;
constexpr double rose_radius_mm = 9;
constexpr double corner_gap_px = 8;
constexpr double fit_margin_mm = 13;  ///< room for dimension lines and captions
constexpr double key_step_px = 40;
constexpr double zoom_step = 1.25;
constexpr double zoom_per_wheel_unit = 1.0012;  ///< a notch of 120 units: 15 %
constexpr int drag_threshold_px = 3;

}  // namespace

struct PlanView::Parts {
  explicit Parts(PlanView* view) : view_(view), legend(new LegendBox(view)) {}

  // What is shown.
  std::shared_ptr<const wound::Case> value;
  std::shared_ptr<const dressing::Plan> plan;
  std::vector<Point> clock_centres;  ///< of the wounds
  std::vector<LayerKind> hidden;
  std::optional<Point> mark;

  // How it is seen.
  Viewport viewport;
  bool fitted = true;  ///< nobody has zoomed or panned since the last fit
  LayerPaths paths;
  std::optional<std::vector<report::DrawnLayer>> annotations;  ///< nothing: lay them out again

  // The mouse.
  std::optional<QPointF> pressed_at, last_drag, cursor;
  bool dragging = false;

  PlanView* view_;
  LegendBox* legend;

  report::Ground ground() const {
    return view_->palette().color(QPalette::Base).lightness() < 128 ? report::Ground::dark
                                                                    : report::Ground::light;
  }
  double pixels_per_mm() const { return view_->logicalDpiX() / 25.4; }
  bool empty() const { return !value || paths.sketch().layers.empty(); }
  QRectF field() const { return QRectF(view_->rect()).adjusted(band_px, band_px, -1, -1); }
  /// The field less the legend's column, where the legend leaves enough.
  QRectF room_to_fit() const;
  QRectF rose_box() const;
  /// Nothing is cut off, and nothing much smaller than it could be.
  bool comfortable() const;
  bool shown(LayerKind kind) const { return !std::ranges::count(hidden, kind); }

  void moved();
  void place_legend();
  void update_legend();
  void lay_out_annotations();
  void paint_field(QPainter& painter);
  void paint_rulers(QPainter& painter) const;
  void paint_cursor_on_rulers(QPainter& painter) const;
  void paint_mark(QPainter& painter) const;
  void paint_note(QPainter& painter, const QString& text) const;
  void paint_hint(QPainter& painter) const;
  double hour_at(Point cm) const;
  report::ScaleMap scale_map() const;
  geometry::Box field_mm() const;
};

QRectF PlanView::Parts::rose_box() const {
  const double reach = report::rose_reach_mm(rose_radius_mm, ruler_text_mm) * pixels_per_mm();
  const QRectF inside = field();
  return {inside.right() - corner_gap_px - 2 * reach, inside.top() + corner_gap_px, 2 * reach,
          2 * reach};
}

QRectF PlanView::Parts::room_to_fit() const {
  QRectF room = field();
  const double column = std::max<double>(legend->width(), rose_box().width()) + corner_gap_px;
  if (legend->isVisibleTo(view_) && legend->is_open() && room.width() > 3 * column) {
    room.setRight(room.right() - column);
  }
  const double margin = fit_margin_mm * pixels_per_mm();
  const double across = std::min(margin, room.width() / 4);
  const double up = std::min(margin, room.height() / 4);
  return room.adjusted(across, up, -across, -up);
}

bool PlanView::Parts::comfortable() const {
  const geometry::Box& extent = paths.sketch().extent;
  const QRectF seen(viewport.to_pixels(extent.low), viewport.to_pixels(extent.high));
  const QRectF normal = seen.normalized();
  return field().contains(normal) &&
         (normal.width() > 0.4 * field().width() || normal.height() > 0.4 * field().height());
}

void PlanView::Parts::moved() {
  annotations.reset();
  view_->update();
}

/// Unfolded only where it leaves the plan the greater part of the view.
void PlanView::Parts::place_legend() {
  const QSizeF unfolded = legend->unfolded_size();
  legend->suggest_open(field().width() > 3 * unfolded.width() &&
                       field().height() > rose_box().height() + unfolded.height() + 24);
  legend->adjustSize();
  legend->move(static_cast<int>(view_->width() - legend->width() - corner_gap_px),
               static_cast<int>(view_->height() - legend->height() - corner_gap_px));
  annotations.reset();
}

void PlanView::Parts::update_legend() {
  std::vector<LayerKind> rows;
  for (const LayerKind kind : report::legend_layers(paths.sketch())) {
    if (shown(kind) && shown(LayerKind::panel)) rows.push_back(kind);
  }
  QStringList notes;
  for (const std::string& note : report::legend_notes(paths.sketch())) {
    if (shown(LayerKind::filler)) notes << QString::fromStdString(note);
  }
  legend->set_rows(std::move(rows), notes);
  place_legend();
}

report::ScaleMap PlanView::Parts::scale_map() const {
  const QPointF origin = viewport.to_pixels({0, 0}) / pixels_per_mm();
  return {viewport.pixels_per_cm() / pixels_per_mm(), {origin.x(), origin.y()}};
}

geometry::Box PlanView::Parts::field_mm() const {
  const double unit = pixels_per_mm();
  const QRectF inside = field();
  return {{inside.left() / unit, inside.top() / unit},
          {inside.right() / unit, inside.bottom() / unit}};
}

void PlanView::Parts::lay_out_annotations() {
  const double unit = pixels_per_mm();
  const auto to_box = [&](const QRectF& r) {
    return geometry::Box{{r.left() / unit, r.top() / unit}, {r.right() / unit, r.bottom() / unit}};
  };
  report::AnnotationField room{report::widened(field_mm(), -1), {}, text_mm};
  if (shown(LayerKind::clock)) room.taken.push_back(to_box(rose_box()));
  if (legend->isVisibleTo(view_)) room.taken.push_back(to_box(legend->geometry()));
  const report::Sketch& sketch = paths.visible_sketch(viewport, field());
  annotations = report::annotate(sketch, scale_map(), room, hidden).layers;
}

void PlanView::Parts::paint_field(QPainter& painter) {
  const report::Ground on = ground();
  const double unit = pixels_per_mm();
  if (!annotations) lay_out_annotations();
  painter.scale(unit, unit);
  for (const report::DrawnLayer& grid : report::draw_grid(scale_map(), field_mm())) {
    if (shown(grid.kind)) printing::paint_shapes(painter, grid, on);
  }
  painter.resetTransform();
  paths.paint(painter, viewport, on, unit, hidden);
  painter.scale(unit, unit);
  for (const report::DrawnLayer& layer : *annotations) printing::paint_shapes(painter, layer, on);
  for (const report::DrawnLayer& layer : *annotations) printing::paint_words(painter, layer, on);
  if (shown(LayerKind::clock)) {
    const QRectF box = rose_box();
    const QPointF centre = box.center() / unit;
    QColor plate = printing::to_qcolor(report::ground_colour(on));
    plate.setAlphaF(0.85F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(plate);
    painter.drawEllipse(centre, box.width() / 2 / unit, box.width() / 2 / unit);
    const report::DrawnLayer rose = report::draw_rose({centre.x(), centre.y()}, rose_radius_mm,
                                                      value->head_direction_deg, ruler_text_mm);
    printing::paint_shapes(painter, rose, on);
    printing::paint_words(painter, rose, on);
  }
  painter.resetTransform();
}

void PlanView::Parts::paint_rulers(QPainter& painter) const {
  const report::Ground on = ground();
  const QColor colour = printing::to_qcolor(report::ground_colour(on));
  painter.fillRect(0, 0, view_->width(), band_px, colour);
  painter.fillRect(0, 0, band_px, view_->height(), colour);
  const double unit = pixels_per_mm();
  painter.scale(unit, unit);
  const report::DrawnLayer rulers =
      report::draw_rulers(scale_map(), field_mm(), band_px / unit, ruler_text_mm);
  printing::paint_shapes(painter, rulers, on);
  printing::paint_words(painter, rulers, on);
  painter.resetTransform();
}

void PlanView::Parts::paint_cursor_on_rulers(QPainter& painter) const {
  if (!cursor || !field().contains(*cursor)) return;
  painter.setPen(Qt::NoPen);
  painter.setBrush(
      printing::to_qcolor(report::style_of(LayerKind::finding_place).line_colour(ground())));
  const double x = cursor->x(), y = cursor->y();
  painter.drawPolygon(QPolygonF({{x - 4, band_px - 7.0}, {x + 4, band_px - 7.0}, {x, band_px}}));
  painter.drawPolygon(QPolygonF({{band_px - 7.0, y - 4}, {band_px - 7.0, y + 4}, {band_px, y}}));
}

/// A ring with four hairs, on a broader one of the ground's colour: seen on any layer.
void PlanView::Parts::paint_mark(QPainter& painter) const {
  if (!mark || !shown(LayerKind::finding_place)) return;
  const report::LayerStyle& style = report::style_of(LayerKind::finding_place);
  const QPointF at = viewport.to_pixels(*mark);
  const double width = style.line_mm * pixels_per_mm();
  const auto draw = [&](QColor colour, double pen_width) {
    painter.setPen(QPen(colour, pen_width, Qt::SolidLine, Qt::RoundCap));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at, 13, 13);
    for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
      painter.drawLine(at + 8 * way, at + 19 * way);
    }
  };
  draw(printing::to_qcolor(report::ground_colour(ground())), width + 4);
  draw(printing::to_qcolor(style.line_colour(ground())), width);
}

void PlanView::Parts::paint_note(QPainter& painter, const QString& text) const {
  const report::Ground on = ground();
  QRectF box = painter.fontMetrics().boundingRect(text);
  box.moveTopLeft(field().topLeft() + QPointF(corner_gap_px + 6, corner_gap_px + 4));
  painter.setPen(Qt::NoPen);
  painter.setBrush(printing::to_qcolor(report::ground_colour(on)));
  painter.drawRoundedRect(box.adjusted(-6, -4, 6, 4), 4, 4);
  painter.setPen(printing::to_qcolor(report::ink_colour(on)));
  painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, text);
}

void PlanView::Parts::paint_hint(QPainter& painter) const {
  painter.setPen(printing::to_qcolor(report::ink_colour(ground())));
  QFont font = view_->font();
  font.setPointSizeF(font.pointSizeF() * 1.15);
  painter.setFont(font);
  painter.drawText(field().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap,
                   tr("No outline yet.\nOpen a case, or type or paste the wound's outline: the "
                      "plan is drawn here to scale."));
}

double PlanView::Parts::hour_at(Point cm) const {
  if (clock_centres.empty()) return 0;
  const Point nearest = *std::ranges::min_element(
      clock_centres, {}, [&](Point centre) { return geometry::distance(centre, cm); });
  return geometry::clock_hour(nearest, cm, value->head_direction_deg);
}

PlanView::PlanView(QWidget* parent) : QWidget(parent), parts_(std::make_unique<Parts>(this)) {
  setObjectName("plan_view");
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::CrossCursor);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setAccessibleName(tr("Plan drawing"));
  setAccessibleDescription(tr("No outline yet."));
  parts_->legend->set_ground(parts_->ground());
  parts_->legend->hide();
  connect(parts_->legend, &LegendBox::folded, this, [this] {
    parts_->place_legend();
    if (parts_->fitted) fit();
    update();
  });
}

PlanView::~PlanView() = default;

void PlanView::show_plan(std::shared_ptr<const wound::Case> value,
                         std::shared_ptr<const dressing::Plan> plan) {
  Parts& p = *parts_;
  const bool was_empty = p.empty();
  p.value = std::move(value);
  p.plan = p.value ? std::move(plan) : nullptr;
  p.paths.set_sketch(!p.value ? report::Sketch{}
                     : p.plan ? report::sketch_plan(*p.value, *p.plan)
                              : report::sketch_case(*p.value));
  p.clock_centres.clear();
  if (p.value) {
    for (const wound::Wound& wound : p.value->current().wounds) {
      if (wound.outline_cm.size() < 3) continue;
      p.clock_centres.push_back(
          geometry::centroid(geometry::Region{{wound.outline_cm, wound.islands_cm}}));
    }
  }
  p.update_legend();
  setAccessibleDescription(
      p.value ? QString::fromStdString(report::describe_drawing(*p.value, p.plan.get()))
              : tr("No outline yet."));
  if (!p.empty() && (was_empty || (p.fitted && !p.comfortable()))) fit();
  p.moved();
}

void PlanView::set_layer_visible(LayerKind layer, bool visible) {
  Parts& p = *parts_;
  if (p.shown(layer) == visible) return;
  if (visible) {
    std::erase(p.hidden, layer);
  } else {
    p.hidden.push_back(layer);
  }
  p.update_legend();
  p.moved();
}

bool PlanView::layer_visible(LayerKind layer) const { return parts_->shown(layer); }

void PlanView::point_out(Point place_cm) {
  Parts& p = *parts_;
  p.mark = place_cm;
  const QRectF comfortable = p.field().adjusted(30, 30, -30, -30);
  const QPointF at = to_pixels(place_cm);
  const bool under_corner =
      p.rose_box().contains(at) ||
      (p.legend->isVisibleTo(this) && QRectF(p.legend->geometry()).contains(at));
  if (!comfortable.contains(at) || under_corner) {
    p.viewport.pan(p.field().center() - at);
    p.fitted = false;
  }
  p.moved();
}

void PlanView::clear_mark() {
  parts_->mark.reset();
  update();
}

double PlanView::pixels_per_cm() const { return parts_->viewport.pixels_per_cm(); }
QPointF PlanView::to_pixels(Point p_cm) const { return parts_->viewport.to_pixels(p_cm); }
Point PlanView::to_cm(QPointF pixel) const { return parts_->viewport.to_cm(pixel); }

QSize PlanView::sizeHint() const { return {760, 620}; }
QSize PlanView::minimumSizeHint() const { return {260, 220}; }

void PlanView::fit() {
  Parts& p = *parts_;
  p.fitted = true;
  if (!p.empty()) p.viewport.fit(p.paths.sketch().extent, p.room_to_fit());
  p.moved();
}

void PlanView::zoom_in() {
  parts_->viewport.zoom_about(parts_->field().center(), zoom_step);
  parts_->fitted = false;
  parts_->moved();
}

void PlanView::zoom_out() {
  parts_->viewport.zoom_about(parts_->field().center(), 1 / zoom_step);
  parts_->fitted = false;
  parts_->moved();
}

void PlanView::paintEvent(QPaintEvent*) {
  Parts& p = *parts_;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), printing::to_qcolor(report::ground_colour(p.ground())));
  if (p.empty()) {
    p.paint_hint(painter);
    return;
  }
  painter.setClipRect(p.field());
  p.paint_field(painter);
  p.paint_mark(painter);
  if (!p.plan) p.paint_note(painter, tr("Working out the plan\u2026"));
  painter.setClipping(false);
  if (p.shown(LayerKind::panel)) {
    p.paint_rulers(painter);
    p.paint_cursor_on_rulers(painter);
  }
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
}

void PlanView::resizeEvent(QResizeEvent*) {
  parts_->place_legend();
  if (parts_->fitted) fit();
  parts_->moved();
}

void PlanView::wheelEvent(QWheelEvent* event) {
  const double units = event->angleDelta().y();
  if (units == 0 || parts_->empty()) return event->ignore();
  parts_->viewport.zoom_about(event->position(), std::pow(zoom_per_wheel_unit, units));
  parts_->fitted = false;
  parts_->moved();
  event->accept();
}

void PlanView::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  parts_->pressed_at = parts_->last_drag = event->position();
}

void PlanView::mouseMoveEvent(QMouseEvent* event) {
  Parts& p = *parts_;
  p.cursor = event->position();
  if (p.last_drag) {
    const QPointF way = event->position() - *p.pressed_at;
    if (!p.dragging && way.manhattanLength() >= drag_threshold_px) {
      p.dragging = true;
      setCursor(Qt::ClosedHandCursor);
    }
    if (p.dragging) {
      p.viewport.pan(event->position() - *p.last_drag);
      p.last_drag = event->position();
      p.fitted = false;
      p.moved();
    }
  }
  const Point cm = p.viewport.to_cm(event->position());
  if (!p.empty()) emit cursor_moved({cm.x, cm.y}, p.hour_at(cm));
  update(0, 0, width(), band_px);
  update(0, 0, band_px, height());
}

void PlanView::mouseReleaseEvent(QMouseEvent*) {
  parts_->pressed_at.reset();
  parts_->last_drag.reset();
  parts_->dragging = false;
  setCursor(Qt::CrossCursor);
}

void PlanView::keyPressEvent(QKeyEvent* event) {
  Parts& p = *parts_;
  QPointF pan;
  switch (event->key()) {
    case Qt::Key_Left:
      pan = {key_step_px, 0};
      break;
    case Qt::Key_Right:
      pan = {-key_step_px, 0};
      break;
    case Qt::Key_Up:
      pan = {0, key_step_px};
      break;
    case Qt::Key_Down:
      pan = {0, -key_step_px};
      break;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom_in();
    case Qt::Key_Minus:
      return zoom_out();
    case Qt::Key_0:
      return fit();
    default:
      return QWidget::keyPressEvent(event);
  }
  p.viewport.pan(pan);
  p.fitted = false;
  p.moved();
}

void PlanView::leaveEvent(QEvent*) {
  parts_->cursor.reset();
  emit cursor_left();
  update();
}

void PlanView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) parts_->legend->set_ground(parts_->ground());
}

bool PlanView::event(QEvent* event) {
  if (event->type() == QEvent::NativeGesture) {
    const auto* gesture = static_cast<QNativeGestureEvent*>(event);
    if (gesture->gestureType() == Qt::ZoomNativeGesture && !parts_->empty()) {
      parts_->viewport.zoom_about(gesture->position(), 1 + gesture->value());
      parts_->fitted = false;
      parts_->moved();
      return true;
    }
  }
  return QWidget::event(event);
}

}  // namespace drapewright::desktop
