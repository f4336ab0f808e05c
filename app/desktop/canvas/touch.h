#pragma once

#include <QElapsedTimer>
#include <QTouchEvent>
#include <functional>
#include <optional>

namespace drapewright::desktop {

/// Fingers on a view: one draws as the mouse does, two pan and zoom. A hand that rests on the
/// screen beside a pen (or with a broad contact) is no finger.
class TouchReader {
 public:
  struct Hands {
    std::function<void(QPointF)> down, move, up;
    std::function<void()> cancel;
    std::function<void(QPointF by)> pan;
    std::function<void(QPointF about, double factor)> zoom;
  };
  explicit TouchReader(Hands hands) : hands_(std::move(hands)) {}

  /// @return whether the event was for it
  bool read(const QTouchEvent& event);
  /// A pen was seen: for a while every touch is the hand that holds it.
  void pen_seen() { since_pen_.start(); }

 private:
  bool is_palm(const QTouchEvent& event) const;
  void two_fingers(const QList<QEventPoint>& points);

  Hands hands_;
  QElapsedTimer since_pen_;
  bool drawing_ = false;
  bool resting_ = false;  ///< a palm, or fingers left over from a pinch: until all are lifted
};

}  // namespace drapewright::desktop
