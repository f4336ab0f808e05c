#include "app/desktop/canvas/touch.h"

#include <algorithm>
#include <cmath>

namespace drapewright::desktop {
namespace {

constexpr int pen_is_near_ms = 1000;
constexpr double palm_px = 110;  ///< about 3 cm: broader than any fingertip

double span(QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

}  // namespace

bool TouchReader::is_palm(const QTouchEvent& event) const {
  if (since_pen_.isValid() && since_pen_.elapsed() < pen_is_near_ms) return true;
  return std::ranges::any_of(event.points(), [](const QEventPoint& point) {
    return std::max(point.ellipseDiameters().width(), point.ellipseDiameters().height()) > palm_px;
  });
}

bool TouchReader::read(const QTouchEvent& event) {
  const auto& points = event.points();
  if (points.isEmpty()) return false;
  const bool over = event.type() == QEvent::TouchEnd || event.type() == QEvent::TouchCancel;
  if (!over && is_palm(event)) {
    if (std::exchange(drawing_, false)) hands_.cancel();
    resting_ = true;
  } else if (event.type() == QEvent::TouchCancel) {
    if (std::exchange(drawing_, false)) hands_.cancel();
  } else if (points.size() >= 2 && !over) {
    two_fingers(points);
  } else if (resting_) {
    // Left over from a pinch, or the palm itself.
  } else if (event.type() == QEvent::TouchBegin) {
    drawing_ = true;
    hands_.down(points.front().position());
  } else if (drawing_) {
    hands_.move(points.front().position());
    if (over) {
      drawing_ = false;
      hands_.up(points.front().position());
    }
  }
  if (over) resting_ = false;
  return true;
}

void TouchReader::two_fingers(const QList<QEventPoint>& points) {
  if (std::exchange(drawing_, false)) hands_.cancel();
  resting_ = true;
  const auto &a = points[0], &b = points[1];
  const QPointF middle = (a.position() + b.position()) / 2;
  const QPointF before = (a.lastPosition() + b.lastPosition()) / 2;
  const double now = span(a.position(), b.position());
  const double was = span(a.lastPosition(), b.lastPosition());
  hands_.pan(middle - before);
  if (was > 1 && now > 1) hands_.zoom(middle, now / was);
}

}  // namespace drapewright::desktop
