#include "app/desktop/tools/tracing_desk.h"

#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/document/clock_hours.h"
#include "app/wording/spoken.h"
#include "core/base/error.h"
#include "core/geometry/measures.h"
#include "core/tracing/loops.h"

namespace drapewright::desktop {
namespace {

constexpr double least_area_cm2 = 0.05;  // about 2 mm x 3 mm: less is a slip of the hand
constexpr std::size_t most_corners_to_repair = 5000;

using geometry::Ring;

/// What the file format refuses in any outline of the assessment, and what is too small to be one.
std::optional<QString> outline_fault(const wound::Assessment& seen) {
  QString shape;
  try {
    for (const wound::Wound& wound : seen.wounds) {
      shape = spoken("Wound {1}", {wound.id});
      wound::check_outline(wound.outline_cm, wound.islands_cm, {});
      if (geometry::area(wound.outline_cm) < least_area_cm2) {
        return spoken("Too small to be an outline: nothing was drawn.");
      }
    }
    for (const wound::SkinZone& zone : seen.skin_zones) {
      shape = spoken("Skin zone");
      wound::check_outline(zone.outline_cm, {}, {});
    }
  } catch (const InputError& error) {
    return spoken("{1}: {2}; expected {3}. It was left as it was.",
                  {shape, error.problem(), error.expected()});
  }
  return std::nullopt;
}

}  // namespace

bool draws_outlines(Tool tool) {
  return tool == Tool::trace || tool == Tool::corners || tool == Tool::ellipse ||
         tool == Tool::rectangle || tool == Tool::edge;
}

TracingDesk::TracingDesk(CaseDocument& document, PlanView& view, QObject* parent)
    : QObject(parent), document_(document), view_(view) {
  connect(&document, &CaseDocument::case_replaced, this, &TracingDesk::abandon);
}

void TracingDesk::take_up(Tool tool) {
  if (tool == tool_) return;
  if (held_) {
    say(spoken("The outline crosses itself: repair it or abandon it first."));
    emit tool_changed(tool_);  // whoever showed the other as taken up shows this one again
    return;
  }
  const bool leaves_draft = drafts_.contains(tool_);
  tool_ = tool;
  const auto shapes = shapes_of(document_.value());
  const bool changes = tool != Tool::look && tool < Tool::measure && !draws_outlines(tool);
  if (changes && target_.is_new && !shapes.empty()) emit shape_wanted(shapes.front());
  emit tool_changed(tool);
  if (leaves_draft) say(spoken("What you began waits: take its tool up again to go on with it."));
}

void TracingDesk::set_draft(Tool tool, bool begun) {
  if (begun) {
    drafts_.insert(tool);
  } else {
    drafts_.erase(tool);
  }
}

void TracingDesk::set_target(const OutlineTarget& target) {
  if (target == target_) return;
  target_ = target;
  abandon();
  emit target_changed();
}

const Ring& TracingDesk::outline() const {
  static const Ring none;
  const auto& value = document_.value();
  if (target_.is_new || !exists(value, target_.ref)) return none;
  return outline_of(value, target_.ref);
}

bool TracingDesk::enter(const QString& what, wound::Case next, const QString& field) {
  if (const QString barred = gate(); !barred.isEmpty()) {
    say(barred);
    return false;
  }
  if (const auto fault = outline_fault(next.current())) {
    say(*fault);
    return false;
  }
  const QString doubt = hours_in_doubt(document_.value(), next);
  document_.change(what, std::move(next), field);
  if (!doubt.isEmpty()) say(doubt);
  return true;
}

void TracingDesk::offer(Ring outline, const QString& what, Ring trace) {
  abandon();
  if (outline.size() >= 3 && outline.size() <= most_corners_to_repair) {
    if (const auto crossing = tracing::first_crossing(outline, true)) {
      auto loops = tracing::loops_at_crossings(outline);
      std::erase_if(loops, [](const Ring& loop) { return geometry::area(loop) < least_area_cm2; });
      held_ = Held{std::move(outline), *crossing, std::move(loops), what};
      emit held_changed();
      view_.update();
      return;
    }
  }
  put(std::move(outline), what, std::move(trace));
}

void TracingDesk::put(Ring outline, const QString& what, Ring trace) {
  const auto& value = document_.value();
  const bool was_new = target_.is_new;
  const QString text = spoken("{1}: {2}", {title_of(value, target_), what});
  wound::Case next = value;
  const ShapeRef ref = enter_outline(next, target_, std::move(outline));
  if (ref.kind == ShapeRef::Kind::wound) {
    next.current().wounds[ref.index].trace_cm = std::move(trace);
  }
  if (enter(text, std::move(next)) && was_new) after_new(ref);
}

void TracingDesk::after_new(const ShapeRef& ref) {
  emit shape_wanted(ref);
  // What was just drawn is looked at, and its corners are moved: not drawn again by the next touch.
  if (draws_outlines(tool_)) take_up(Tool::points);
}

bool TracingDesk::change(const QString& what,
                         const std::function<std::optional<QString>(wound::Case&)>& alter,
                         const QString& field) {
  wound::Case next = document_.value();
  if (const auto refusal = alter(next)) {
    say(*refusal);
    return false;
  }
  return enter(what, std::move(next), field);
}

void TracingDesk::keep_larger_loop() {
  if (!held_ || held_->loops.empty()) return abandon();
  const Held held = *std::exchange(held_, std::nullopt);
  emit held_changed();
  put(held.loops.front(), spoken("{1}, larger loop kept", {held.what}), {});
}

void TracingDesk::split_in_two() {
  if (!held_ || held_->loops.size() < 2) return keep_larger_loop();
  const Held held = *std::exchange(held_, std::nullopt);
  emit held_changed();
  const OutlineTarget first = target_;
  OutlineTarget second = first;
  if (!first.is_new) {
    second.is_new = true;
    if (first.ref.kind == ShapeRef::Kind::zone) {
      second.zone_kind = document_.value().current().skin_zones.at(first.ref.index).kind;
    }
  }
  wound::Case next = document_.value();
  const ShapeRef ref = enter_outline(next, first, held.loops[0]);
  enter_outline(next, second, held.loops[1]);
  if (enter(spoken("{1}, split in two", {held.what}), std::move(next)) && first.is_new)
    after_new(ref);
}

void TracingDesk::abandon() {
  if (!std::exchange(held_, std::nullopt)) return;
  emit held_changed();
  view_.update();
}

void TracingDesk::say(const QString& words) { emit said(words); }

}  // namespace drapewright::desktop
