#pragma once

#include <functional>
#include <memory>
#include <optional>

#include "app/desktop/canvas/canvas_tool.h"
#include "core/dressing/plan.h"
#include "core/dressing/port_ground.h"
#include "core/wound/case.h"

namespace drapewright::desktop {

class CaseDocument;
class PlanView;

/// Moving the port of a film, by mouse or keys, with what it would find there told beside it while
/// it moves: the room on filler, whether the aperture fits, whether its base lies where it may.
/// Dropped, it becomes a chosen place of the case, as one step of undo; out of its film's reach it
/// goes back. Arrow keys move it 1 mm, with Shift 1 cm; Delete takes the choice back.
class PortTool : public CanvasTool {
 public:
  PortTool(PlanView& view, CaseDocument& document);
  ~PortTool() override;

  /// What is told beside the port now; empty while none is moved or chosen.
  QStringList words() const;

  void paint(QPainter& painter, std::optional<int> focused) const override;
  void plan_shown() override;
  std::optional<Qt::CursorShape> cursor_at(QPointF pixel) const override;
  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override;
  void cancel() override;
  int stops() const override;
  QString stop_name(int stop) const override;
  std::optional<int> stop_at(QPointF pixel) const override;
  bool key(int stop, const QKeyEvent& event) override;

 private:
  /// A port where it is being moved to, or was put while its plan is still worked out.
  struct Moved {
    std::size_t film = 0;
    geometry::Point to_cm;
  };
  struct Drag {
    std::size_t film = 0;
    QPointF pressed_at;
    geometry::Point grasped_cm;            ///< from the port's middle to where it was grasped
    std::optional<geometry::Point> to_cm;  ///< nothing until it was moved
  };

  bool has_port(std::size_t film) const;
  std::optional<geometry::Point> place_of(std::size_t film) const;
  const dressing::PortGround& ground_of(std::size_t film) const;
  void put(std::size_t film, geometry::Point place, const QString& field);
  void take_back(std::size_t film);
  QStringList words_of(std::size_t film) const;
  void paint_port(QPainter& painter, std::size_t film) const;

  PlanView& view_;
  CaseDocument& document_;
  // What the ports belong to; kept while the plan of a case that differs in its ports alone is
  // late.
  std::shared_ptr<const wound::Case> case_;
  std::shared_ptr<const dressing::Plan> plan_;
  mutable std::unique_ptr<dressing::PortGround> ground_;  ///< set up when first asked
  mutable std::size_t ground_film_ = 0;
  std::optional<Drag> drag_;
  std::optional<Moved> awaited_;
  std::optional<std::size_t> put_back_;  ///< the film whose port was dropped out of reach
};

}  // namespace drapewright::desktop
