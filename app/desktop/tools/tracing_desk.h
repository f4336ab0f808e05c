#pragma once

#include <QObject>
#include <QString>
#include <functional>
#include <optional>
#include <set>
#include <vector>

#include "app/desktop/document/outline_target.h"

namespace drapewright::desktop {

class CaseDocument;
class PlanView;

/// What the mouse, the pen and the keys do on the drawing.
enum class Tool {
  look,  ///< pan, and move the port and the section's ends
  trace,
  corners,
  ellipse,
  rectangle,
  points,
  whole,
  add,
  take_away,
  split,
  retrace,
  smooth,
  undermining,
  tunnel,
  measure,
  scale_length,  ///< on a photograph: two points of known distance
  scale_square,  ///< on a photograph: the corners of a known square
  edge,          ///< on a photograph: along its strongest edge
  limb_axis,     ///< on a photograph: the limb's middle line
};

/// Whether what it draws becomes an outline of its own.
bool draws_outlines(Tool tool);

/// The desk that the drawing tools work at: which of them is in hand, which outline they work on,
/// and the one way for what they make into the case. An outline that crosses itself is held here,
/// shown, and repaired or abandoned; it never gets into the case.
class TracingDesk : public QObject {
  Q_OBJECT

 public:
  TracingDesk(CaseDocument& document, PlanView& view, QObject* parent = nullptr);

  CaseDocument& document() const { return document_; }
  PlanView& view() const { return view_; }

  Tool tool() const { return tool_; }
  /// Refused, with the reason told, while an outline that crosses itself is held.
  void take_up(Tool tool);
  /// What was begun with a tool and is neither finished nor given up. It waits while another tool
  /// is in hand.
  void set_draft(Tool tool, bool begun);
  bool has_draft() const { return !drafts_.empty(); }

  /// The outline that is worked on, or that a drawing becomes.
  const OutlineTarget& target() const { return target_; }
  void set_target(const OutlineTarget& target);
  /// The target's outline as it is, until the case changes; empty for a new one.
  const geometry::Ring& outline() const;
  bool has_outline() const { return !target_.is_new && outline().size() >= 3; }

  bool snaps_to_grid() const { return snaps_to_grid_; }
  void set_snaps_to_grid(bool on) { snaps_to_grid_ = on; }

  /// A drawn outline: one step of undo when it is faultless; held when it crosses itself; refused,
  /// with the reason, for any other fault.
  /// @param what  "trace", as the Edit menu calls it
  /// @param trace  what the hand drew, for a freehand outline
  void offer(geometry::Ring outline, const QString& what, geometry::Ring trace = {});
  /// Any other change of the case by a tool, as one step. @return whether it was made
  bool change(const QString& what, const std::function<std::optional<QString>(wound::Case&)>& alter,
              const QString& field = {});

  struct Held {
    geometry::Ring outline;
    geometry::Point crossing;
    std::vector<geometry::Ring> loops;  ///< the largest first
    QString what;
  };
  const std::optional<Held>& held() const { return held_; }
  void keep_larger_loop();
  /// Both largest loops: the second becomes a wound, island or zone of its own.
  void split_in_two();
  void abandon();

  /// What stands in the way of drawing anything: asked before an outline is taken. Empty: nothing.
  void set_gate(std::function<QString()> gate) { gate_ = std::move(gate); }
  QString gate() const { return gate_ ? gate_() : QString(); }

  /// Tells the user something about what was just done.
  void say(const QString& words);

 signals:
  void tool_changed(drapewright::desktop::Tool tool);
  void target_changed();
  /// This shape is to be worked on: it was just drawn, or a tool needs one and none was chosen.
  void shape_wanted(const drapewright::desktop::ShapeRef& ref);
  void held_changed();
  void said(const QString& words);

 private:
  void put(geometry::Ring outline, const QString& what, geometry::Ring trace);
  /// The one way into the case: refused, with the reason told, where an outline would be at fault.
  bool enter(const QString& what, wound::Case next, const QString& field = {});
  void after_new(const ShapeRef& ref);

  CaseDocument& document_;
  PlanView& view_;
  Tool tool_ = Tool::look;
  std::set<Tool> drafts_;
  OutlineTarget target_;
  bool snaps_to_grid_ = false;
  std::optional<Held> held_;
  std::function<QString()> gate_;
};

}  // namespace drapewright::desktop
