#include "app/desktop/canvas/plan_view.h"

#include <QFontInfo>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QTabletEvent>
#include <QTouchEvent>
#include <QWheelEvent>
#include <cmath>

#include "app/desktop/canvas/legend_box.h"
#include "app/desktop/canvas/pan_tool.h"
#include "app/desktop/canvas/plan_scene.h"
#include "app/desktop/canvas/scene_painter.h"
#include "app/desktop/canvas/tool_box.h"
#include "app/desktop/canvas/touch.h"
#include "app/wording/spoken.h"
#include "core/report/legend.h"

namespace drapewright::desktop {

using geometry::Point;
using report::LayerKind;

namespace {

constexpr double key_step_px = 40;
constexpr double zoom_step = 1.25;
constexpr double zoom_per_wheel_unit = 1.0012;  ///< a notch of 120 units: 15 %

QPointF way_of(int key) {
  switch (key) {
    case Qt::Key_Left:
      return {key_step_px, 0};
    case Qt::Key_Right:
      return {-key_step_px, 0};
    case Qt::Key_Up:
      return {0, key_step_px};
    case Qt::Key_Down:
      return {0, -key_step_px};
    default:
      return {};
  }
}

}  // namespace

struct PlanView::Parts {
  explicit Parts(PlanView* view) : view_(view), legend(new LegendBox(view)), touch(fingers()) {}

  PlanScene scene;
  ToolBox tools;
  bool fitted = true;                                          ///< since then, nobody moved it
  std::optional<std::vector<report::DrawnLayer>> annotations;  ///< nothing: lay them out again
  std::optional<QPointF> cursor;

  bool blank_sheet = false;

  PlanView* view_;
  LegendBox* legend;
  TouchReader touch;

  TouchReader::Hands fingers() {
    return {.down = [this](QPointF at) { view_->pen_down(at, Qt::LeftButton); },
            .move = [this](QPointF at) { view_->pen_moved(at, {}, true); },
            .up = [this](QPointF at) { view_->pen_up(at); },
            .cancel = [this] { tools.cancel(); },
            .pan = [this](QPointF by) { view_->pan(by); },
            .zoom = [this](QPointF at, double by) { view_->zoom_about(at, by); }};
  }

  /// A little smaller than the program's text, and as large as that is made.
  double text_mm() const {
    return 0.92 * QFontInfo(view_->font()).pixelSize() / view_->pixels_per_mm();
  }
  bool legend_shown() const { return legend->isVisibleTo(view_); }
  Surface surface() const {
    return {view_->rect(), view_->pixels_per_mm(), view_->ground(),
            legend_shown() ? QRectF(legend->geometry()) : QRectF(), text_mm()};
  }
};

PlanView::PlanView(QWidget* parent) : QWidget(parent), parts_(std::make_unique<Parts>(this)) {
  setObjectName("plan_view");
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::CrossCursor);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setAttribute(Qt::WA_AcceptTouchEvents);
  setAccessibleName(spoken("Plan drawing"));
  setAccessibleDescription(spoken("No outline yet."));
  parts_->tools.add(std::make_unique<PanTool>(*this));
  parts_->legend->set_ground(ground());
  parts_->legend->hide();
  connect(parts_->legend, &LegendBox::folded, this, [this] {
    place_legend();
    if (parts_->fitted) fit();
    update();
  });
}

PlanView::~PlanView() = default;

void PlanView::show_plan(std::shared_ptr<const wound::Case> value,
                         std::shared_ptr<const dressing::Plan> plan) {
  Parts& p = *parts_;
  const bool was_empty = p.scene.empty();
  p.scene.show(std::move(value), std::move(plan));
  update_legend();
  setAccessibleDescription(p.scene.value ? QString::fromStdString(report::describe_drawing(
                                               *p.scene.value, p.scene.plan.get()))
                                         : spoken("No outline yet."));
  p.tools.plan_shown();
  const bool awkward = p.fitted && !p.scene.comfortable(p.surface());
  if (!p.scene.empty() && (was_empty || awkward)) fit();
  moved();
}

std::shared_ptr<const wound::Case> PlanView::shown_case() const { return parts_->scene.value; }
std::shared_ptr<const dressing::Plan> PlanView::shown_plan() const { return parts_->scene.plan; }

void PlanView::add_tool(std::unique_ptr<CanvasTool> tool) {
  tool->plan_shown();
  parts_->tools.add(std::move(tool));
  update();
}

void PlanView::take_up_stop() {
  setFocus(Qt::OtherFocusReason);
  parts_->tools.give_stop_to_hand();
  tell_stop();
}

void PlanView::set_blank_sheet(bool shown) {
  if (std::exchange(parts_->blank_sheet, shown) == shown) return;
  if (parts_->scene.empty()) fit();
  update();
}

void PlanView::set_sheet(std::optional<geometry::Box> sheet) {
  parts_->scene.sheet = sheet.value_or(PlanScene::usual_sheet);
  if (parts_->scene.empty()) fit();
}

void PlanView::set_layer_visible(LayerKind layer, bool visible) {
  if (layer_visible(layer) == visible) return;
  parts_->scene.set_shown(layer, visible);
  update_legend();
  moved();
}

bool PlanView::layer_visible(LayerKind layer) const { return parts_->scene.shown(layer); }

void PlanView::point_out(Point place_cm) {
  Parts& p = *parts_;
  p.scene.mark = place_cm;
  const Surface surface = p.surface();
  const QPointF at = to_pixels(place_cm);
  const bool in_sight = surface.field().adjusted(30, 30, -30, -30).contains(at);
  if (!in_sight || surface.rose_box().contains(at) || surface.legend.contains(at)) {
    pan(surface.field().center() - at);
  }
  moved();
}

void PlanView::clear_mark() {
  parts_->scene.mark.reset();
  update();
}

void PlanView::pan(QPointF pixels) {
  parts_->scene.viewport.pan(pixels);
  parts_->fitted = false;
  moved();
}

double PlanView::pixels_per_cm() const { return parts_->scene.viewport.pixels_per_cm(); }
QPointF PlanView::to_pixels(Point p_cm) const { return parts_->scene.viewport.to_pixels(p_cm); }
Point PlanView::to_cm(QPointF pixel) const { return parts_->scene.viewport.to_cm(pixel); }
double PlanView::pixels_per_mm() const { return logicalDpiX() / 25.4; }

report::Ground PlanView::ground() const {
  return palette().color(QPalette::Base).lightness() < 128 ? report::Ground::dark
                                                           : report::Ground::light;
}

QSize PlanView::sizeHint() const { return {760, 620}; }
QSize PlanView::minimumSizeHint() const { return {260, 220}; }

void PlanView::fit() {
  Parts& p = *parts_;
  p.fitted = true;
  p.scene.fit(p.surface(), p.legend_shown() && p.legend->is_open());
  moved();
}

void PlanView::zoom_about(QPointF pixel, double factor) {
  parts_->scene.viewport.zoom_about(pixel, factor);
  parts_->fitted = false;
  moved();
}

void PlanView::zoom_in() { zoom_about(parts_->surface().field().center(), zoom_step); }
void PlanView::zoom_out() { zoom_about(parts_->surface().field().center(), 1 / zoom_step); }

void PlanView::moved() {
  parts_->annotations.reset();
  update();
}

/// Unfolded only where it leaves the plan the greater part of the view.
void PlanView::place_legend() {
  LegendBox& legend = *parts_->legend;
  const Surface surface = parts_->surface();
  const QSizeF unfolded = legend.unfolded_size();
  legend.suggest_open(surface.field().width() > 3 * unfolded.width() &&
                      surface.field().height() >
                          surface.rose_box().height() + unfolded.height() + 24);
  legend.adjustSize();
  legend.move(static_cast<int>(width() - legend.width() - Surface::corner_gap_px),
              static_cast<int>(height() - legend.height() - Surface::corner_gap_px));
  parts_->annotations.reset();
}

void PlanView::update_legend() {
  const report::Sketch& sketch = parts_->scene.paths.sketch();
  std::vector<LayerKind> rows;
  for (const LayerKind kind : report::legend_layers(sketch)) {
    if (layer_visible(kind) && layer_visible(LayerKind::panel)) rows.push_back(kind);
  }
  QStringList notes;
  for (const std::string& note : report::legend_notes(sketch)) {
    if (layer_visible(LayerKind::filler)) notes << QString::fromStdString(note);
  }
  parts_->legend->set_rows(std::move(rows), notes);
  place_legend();
}

void PlanView::paintEvent(QPaintEvent*) {
  Parts& p = *parts_;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Surface surface = p.surface();
  if (!p.scene.empty() && !p.annotations) p.annotations = lay_out_annotations(p.scene, surface);
  ScenePainter scene(painter, p.scene, surface);
  scene.paint_ground();
  if (p.scene.empty() && !p.blank_sheet) {
    return scene.paint_hint(
        spoken("No outline yet.\nOpen a case, or type or paste the wound's outline: "
               "the plan is drawn here to scale."),
        font());
  }
  painter.setClipRect(surface.field());
  p.tools.paint_under(painter);
  scene.paint_plan(p.annotations.value_or(std::vector<report::DrawnLayer>{}));
  scene.paint_mark();
  p.tools.paint(painter, hasFocus());
  if (!p.scene.plan && !p.scene.empty()) scene.paint_note(spoken("Working out the plan\u2026"));
  painter.setClipping(false);
  if (layer_visible(LayerKind::panel)) scene.paint_rulers(p.cursor);
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
}

void PlanView::resizeEvent(QResizeEvent*) {
  place_legend();
  if (parts_->fitted) fit();
  moved();
}

void PlanView::wheelEvent(QWheelEvent* event) {
  const double units = event->angleDelta().y();
  if (units == 0) return event->ignore();
  zoom_about(event->position(), std::pow(zoom_per_wheel_unit, units));
  event->accept();
}

void PlanView::pen_down(QPointF pixel, Qt::MouseButton button) {
  parts_->tools.press(pixel, button);
  setCursor(parts_->tools.cursor_at(pixel));
  tell_stop();
}

void PlanView::pen_moved(QPointF pixel, Qt::KeyboardModifiers held, bool down) {
  if (down) {
    parts_->tools.drag(pixel, held);
  } else {
    parts_->tools.hover(pixel, held);
  }
  setCursor(parts_->tools.cursor_at(pixel));
  show_place(pixel);
}

void PlanView::pen_up(QPointF pixel) {
  parts_->tools.release();
  setCursor(parts_->tools.cursor_at(pixel));
}

void PlanView::show_place(QPointF pixel) {
  Parts& p = *parts_;
  p.cursor = pixel;
  const Point cm = to_cm(pixel);
  if (!p.scene.empty()) emit cursor_moved({cm.x, cm.y}, p.scene.hour_at(cm));
  const int band = static_cast<int>(std::ceil(p.surface().band_px()));
  update(0, 0, width(), band);
  update(0, 0, band, height());
}

void PlanView::mousePressEvent(QMouseEvent* event) { pen_down(event->position(), event->button()); }

void PlanView::mouseMoveEvent(QMouseEvent* event) {
  pen_moved(event->position(), event->modifiers(), event->buttons() != Qt::NoButton);
}

void PlanView::mouseReleaseEvent(QMouseEvent* event) {
  if (event->buttons() != Qt::NoButton) return;  // of two buttons, the last one ends the drag
  pen_up(event->position());
}

void PlanView::mouseDoubleClickEvent(QMouseEvent* event) {
  parts_->tools.double_click(event->position(), event->button());
  tell_stop();
}

/// A pen draws as the mouse does, however hard it is pressed; the hand that holds it does not.
void PlanView::tabletEvent(QTabletEvent* event) {
  parts_->touch.pen_seen();
  event->accept();
  switch (event->type()) {
    case QEvent::TabletPress:
      return pen_down(event->position(), event->button());
    case QEvent::TabletMove:
      return pen_moved(event->position(), event->modifiers(), event->buttons() != Qt::NoButton);
    case QEvent::TabletRelease:
      return pen_up(event->position());
    default:
      return event->ignore();
  }
}

void PlanView::keyPressEvent(QKeyEvent* event) {
  ToolBox& tools = parts_->tools;
  if (tools.key(*event)) return tell_stop();
  if (event->key() == Qt::Key_Escape && tools.cancel()) return tell_stop();
  switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom_in();
    case Qt::Key_Minus:
      return zoom_out();
    case Qt::Key_0:
      return fit();
    default:
      break;
  }
  const QPointF way = way_of(event->key());
  if (way.isNull()) return QWidget::keyPressEvent(event);
  pan(way);
}

void PlanView::tell_stop() {
  const QString stop = parts_->tools.stop_name();
  setAccessibleName(stop.isEmpty() ? spoken("Plan drawing") : spoken("Plan drawing") + ": " + stop);
  update();
}

void PlanView::focusInEvent(QFocusEvent* event) {
  if (event->reason() == Qt::TabFocusReason) parts_->tools.leave_stop();
  tell_stop();
  QWidget::focusInEvent(event);
}

bool PlanView::focusNextPrevChild(bool next) {
  const bool stays = hasFocus() && parts_->tools.step(next);
  tell_stop();
  return stays || QWidget::focusNextPrevChild(next);
}

void PlanView::leaveEvent(QEvent*) {
  parts_->cursor.reset();
  emit cursor_left();
  update();
}

void PlanView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) parts_->legend->set_ground(ground());
  if (event->type() == QEvent::FontChange) {
    place_legend();
    if (parts_->fitted) fit();
    moved();
  }
}

bool PlanView::event(QEvent* event) {
  if (event->type() == QEvent::NativeGesture) {
    const auto* gesture = static_cast<QNativeGestureEvent*>(event);
    if (gesture->gestureType() == Qt::ZoomNativeGesture) {
      zoom_about(gesture->position(), 1 + gesture->value());
      return true;
    }
  }
  switch (event->type()) {
    case QEvent::TouchBegin:
    case QEvent::TouchUpdate:
    case QEvent::TouchEnd:
    case QEvent::TouchCancel:
      if (parts_->touch.read(*static_cast<QTouchEvent*>(event))) {
        event->accept();
        return true;
      }
      break;
    default:
      break;
  }
  return QWidget::event(event);
}

}  // namespace drapewright::desktop
