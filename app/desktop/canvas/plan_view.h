#pragma once

#include <QPointF>
#include <QWidget>
#include <memory>
#include <optional>

#include "core/dressing/plan.h"
#include "core/geometry/shape.h"
#include "core/report/layer_style.h"
#include "core/wound/case.h"

namespace drapewright::desktop {

class CanvasTool;

/// The layered plan to scale: on a cm grid with rulers that follow the zoom, with a compass rose
/// and a legend fixed in its corners. It observes a case and its plan and changes neither.
///
/// Wheel zooms at the cursor; dragging with the left or middle button pans; arrow keys pan, + and -
/// zoom, 0 fits. Colours follow the palette's lightness.
///
/// What else is done by mouse and keys is a `CanvasTool`; Tab walks through the tools' handles
/// before it leaves the view, Escape cancels a drag or lets go of a handle.
class PlanView : public QWidget {
  Q_OBJECT

 public:
  explicit PlanView(QWidget* parent = nullptr);
  ~PlanView() override;

  /// Shows a case and its plan. Without a plan (it is being worked out) the last plan of the same
  /// case stays, quietly marked as out of date, or the case alone is drawn. The zoom is kept;
  /// call `fit` when another case is opened (the first case shown is fitted by itself).
  /// A null case empties the view.
  void show_plan(std::shared_ptr<const wound::Case> value,
                 std::shared_ptr<const dressing::Plan> plan);

  std::shared_ptr<const wound::Case> shown_case() const;
  /// Nothing while it is being worked out, or cannot be.
  std::shared_ptr<const dressing::Plan> shown_plan() const;

  /// Asked for the mouse before those added earlier; painted over them.
  void add_tool(std::unique_ptr<CanvasTool> tool);
  /// The keyboard goes to this view, and to the tool that is in hand there, if one is.
  void take_up_stop();
  /// While nothing is drawn yet: whether the bare grid is shown, to draw on, or words that say what
  /// to do.
  void set_blank_sheet(bool shown);
  /// How large that sheet is, in cm; nothing: the usual one.
  void set_sheet(std::optional<geometry::Box> sheet);

  void set_layer_visible(report::LayerKind layer, bool visible);
  bool layer_visible(report::LayerKind layer) const;

  /// Marks a finding's place and scrolls there when it is out of sight; `clear_mark` removes it.
  void point_out(geometry::Point place_cm);
  void clear_mark();

  void pan(QPointF pixels);

  double pixels_per_cm() const;
  /// Where a point of the drawing lies in the widget, and back.
  QPointF to_pixels(geometry::Point p_cm) const;
  geometry::Point to_cm(QPointF pixel) const;
  report::Ground ground() const;
  double pixels_per_mm() const;  ///< of the screen

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 public slots:
  void fit();
  void zoom_in();
  void zoom_out();

 signals:
  /// The cursor's place in cm and its clock hour (0 to 12] about the nearest wound's centre; the
  /// hour is 0 when there is no wound.
  void cursor_moved(QPointF cm, double hour);
  void cursor_left();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void tabletEvent(QTabletEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  bool focusNextPrevChild(bool next) override;
  void changeEvent(QEvent* event) override;
  bool event(QEvent* event) override;

 private:
  struct Parts;
  void zoom_about(QPointF pixel, double factor);
  void moved();
  void place_legend();
  void update_legend();
  void tell_stop();
  void show_place(QPointF pixel);
  void pen_down(QPointF pixel, Qt::MouseButton button);
  void pen_moved(QPointF pixel, Qt::KeyboardModifiers held, bool down);
  void pen_up(QPointF pixel);

  std::unique_ptr<Parts> parts_;
};

}  // namespace drapewright::desktop
