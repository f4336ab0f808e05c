#include "app/desktop/tools/undermining_tool.h"

#include "app/desktop/document/case_document.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr double most_extent_cm = 30;  // the file format's

}  // namespace

QString UnderminingTool::mark(const Reach& reach) {
  if (reach.out_cm <= 0) return spoken("End outside the wound: as far out as the pocket reaches.");
  if (reach.from_clock == reach.to_clock)
    return spoken("Drag along the edge as well: a range of hours.");
  if (reach.out_cm > most_extent_cm) return spoken("Undermining reaches 30 cm at most.");
  desk().change(spoken("undermining"), [&](wound::Case& value) -> std::optional<QString> {
    target_wound(value).undermining.push_back(
        {.from_clock = reach.from_clock, .to_clock = reach.to_clock, .extent_cm = reach.out_cm});
    return std::nullopt;
  });
  return {};
}

QString UnderminingTool::describe(const Reach& reach) const {
  return spoken(
      "undermined {1} to {2} o'clock, {3}",
      {hour_words(reach.from_clock), hour_words(reach.to_clock), length_words(reach.out_cm)});
}

}  // namespace drapewright::desktop
