#include "app/desktop/tools/port_tool.h"

#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/tools/arrow_keys.h"
#include "app/desktop/tools/port_words.h"
#include "app/desktop/tools/word_plate.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

using geometry::Point;

namespace {

constexpr double drag_threshold_px = 3;

/// To a tenth of a millimetre: what a hand can place, and a file can show.
Point rounded(Point p) { return {std::round(p.x * 100) / 100, std::round(p.y * 100) / 100}; }

bool differ_in_ports_alone(const wound::Case& a, const wound::Case& b) {
  wound::Case c = a;
  c.dressing.port_places_cm = b.dressing.port_places_cm;
  return c == b;
}

}  // namespace

PortTool::PortTool(PlanView& view, CaseDocument& document) : view_(view), document_(document) {}

PortTool::~PortTool() = default;

void PortTool::plan_shown() {
  const auto value = view_.shown_case();
  const auto plan = view_.shown_plan();
  if (plan != nullptr) {
    case_ = value;
    plan_ = plan;
    ground_.reset();
    awaited_.reset();
  } else if (value == nullptr || case_ == nullptr || !differ_in_ports_alone(*value, *case_)) {
    case_.reset();
    plan_.reset();
    ground_.reset();
    awaited_.reset();
  }
  if (drag_ && !has_port(drag_->film)) drag_.reset();
  put_back_.reset();
}

bool PortTool::has_port(std::size_t film) const {
  return plan_ != nullptr && film < plan_->drapes.size() &&
         plan_->drapes[film].port.centre_cm.has_value();
}

std::optional<Point> PortTool::place_of(std::size_t film) const {
  if (drag_ && drag_->film == film && drag_->to_cm) return drag_->to_cm;
  if (awaited_ && awaited_->film == film) return awaited_->to_cm;
  return has_port(film) ? plan_->drapes[film].port.centre_cm : std::nullopt;
}

const dressing::PortGround& PortTool::ground_of(std::size_t film) const {
  if (!ground_ || ground_film_ != film) {
    ground_ = std::make_unique<dressing::PortGround>(*case_, *plan_, film);
    ground_film_ = film;
  }
  return *ground_;
}

std::optional<int> PortTool::stop_at(QPointF pixel) const {
  for (int i = 0; i < stops(); ++i) {
    const auto place = place_of(static_cast<std::size_t>(i));
    if (!place) continue;
    const double reach_cm = plan_->drapes[static_cast<std::size_t>(i)].port.base_diameter_cm / 2;
    if (geometry::distance(*place, view_.to_cm(pixel)) <= reach_cm) return i;
  }
  return std::nullopt;
}

std::optional<Qt::CursorShape> PortTool::cursor_at(QPointF pixel) const {
  if (drag_) return Qt::ClosedHandCursor;
  return stop_at(pixel) ? std::optional(Qt::OpenHandCursor) : std::nullopt;
}

bool PortTool::press(QPointF pixel, Qt::MouseButton button) {
  put_back_.reset();
  const auto film = stop_at(pixel);
  if (button != Qt::LeftButton || !film) return false;
  const auto index = static_cast<std::size_t>(*film);
  drag_ = {index, pixel, view_.to_cm(pixel) - *place_of(index), std::nullopt};
  view_.update();
  return true;
}

void PortTool::drag(QPointF pixel, Qt::KeyboardModifiers) {
  if (!drag_) return;
  if (!drag_->to_cm && (pixel - drag_->pressed_at).manhattanLength() < drag_threshold_px) return;
  drag_->to_cm = rounded(view_.to_cm(pixel) - drag_->grasped_cm);
  view_.update();
}

void PortTool::release() {
  const auto done = std::exchange(drag_, std::nullopt);
  view_.update();
  if (!done || !done->to_cm) return;
  if (ground_of(done->film).at(*done->to_cm).in_reach) {
    put(done->film, *done->to_cm, {});
  } else {
    put_back_ = done->film;
  }
}

void PortTool::cancel() {
  drag_.reset();
  view_.update();
}

void PortTool::put(std::size_t film, Point place, const QString& field) {
  awaited_ = {film, place};
  const auto places = ground_of(film).places_with(document_.value().dressing.port_places_cm, place);
  document_.edit(spoken("port's place"), field,
                 [&](wound::Case& value) { value.dressing.port_places_cm = places; });
}

void PortTool::take_back(std::size_t film) {
  const auto places = ground_of(film).places_without(document_.value().dressing.port_places_cm);
  document_.edit(spoken("automatic port place"), {},
                 [&](wound::Case& value) { value.dressing.port_places_cm = places; });
}

int PortTool::stops() const {
  return plan_ != nullptr ? static_cast<int>(plan_->drapes.size()) : 0;
}

QString PortTool::stop_name(int stop) const {
  const auto film = static_cast<std::size_t>(stop);
  if (!has_port(film)) return spoken("No port: no filler to sit on");
  QStringList wounds;
  for (const auto& id : plan_->drapes[film].wounds) wounds << QString::fromStdString(id);
  return spoken(
      "Port of {1}. {2} Arrow keys move it 1 mm, with Shift 1 cm; Delete gives it its "
      "automatic place.",
      {wounds.join(", "), words_of(film).join(" ")});
}

bool PortTool::key(int stop, const QKeyEvent& event) {
  const auto film = static_cast<std::size_t>(stop);
  if (!has_port(film)) return false;
  if (drag_) return event.key() != Qt::Key_Escape;  // the mouse has it
  if (event.key() == Qt::Key_Delete || event.key() == Qt::Key_Backspace) {
    take_back(film);
    return true;
  }
  const auto step = arrow_step_cm(event);
  if (!step) return false;
  const Point place = rounded(*place_of(film) + *step);
  if (ground_of(film).at(place).in_reach) {
    put(film, place, spoken("port {1}", {stop}));
  } else {
    put_back_ = film;
  }
  view_.update();
  return true;
}

QStringList PortTool::words_of(std::size_t film) const {
  const auto place = place_of(film);
  if (!place) return {};
  const auto& ground = ground_of(film);
  const bool moving = drag_ || awaited_;
  const auto& port = plan_->drapes[film].port;
  if (put_back_ == film) return {out_of_reach_words(ground), spoken("It stays where it was.")};
  // A bridge's pad is no place on the wound's own filler; it is judged once the port leaves it.
  if (port.on_bridge && !moving) return {spoken("On a bridge beside the wound.")};
  return words_for(ground.at(*place), ground);
}

QStringList PortTool::words() const {
  if (drag_) return words_of(drag_->film);
  if (put_back_) return words_of(*put_back_);
  return {};
}

void PortTool::paint(QPainter& painter, std::optional<int> focused) const {
  if (drag_) {
    paint_port(painter, drag_->film);
  } else if (focused) {
    paint_port(painter, static_cast<std::size_t>(*focused));
  } else if (put_back_) {
    paint_port(painter, *put_back_);
  }
}

void PortTool::paint_port(QPainter& painter, std::size_t film) const {
  const auto place = place_of(film);
  if (!place) return;
  const auto& port = plan_->drapes[film].port;
  const bool on_pad = port.on_bridge && !drag_ && !awaited_;
  const auto severity = put_back_ == film ? dressing::Severity::stop
                        : on_pad          ? dressing::Severity::note
                                          : severity_of(ground_of(film).at(*place));
  const QPointF centre = view_.to_pixels(*place);
  const QColor ink = severity_ink(severity, view_.palette());
  const QColor halo = printing::to_qcolor(report::ground_colour(view_.ground()));
  const double aperture = port.aperture_diameter_cm / 2 * view_.pixels_per_cm();
  const double base = port.base_diameter_cm / 2 * view_.pixels_per_cm();
  painter.setBrush(Qt::NoBrush);
  for (const auto& [colour, width] : {std::pair(halo, 6.0), std::pair(ink, 2.5)}) {
    painter.setPen(QPen(colour, width));
    painter.drawEllipse(centre, aperture, aperture);
    painter.setPen(QPen(colour, width, colour == ink ? Qt::DashLine : Qt::SolidLine));
    painter.drawEllipse(centre, base, base);
  }
  paint_words(painter, view_, words_of(film), severity,
              QRectF(centre, QSizeF()).adjusted(-base, -base, base, base));
}

}  // namespace drapewright::desktop
