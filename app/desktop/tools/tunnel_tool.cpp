#include "app/desktop/tools/tunnel_tool.h"

#include "app/desktop/document/case_document.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr double most_extent_cm = 50;  // the file format's

}  // namespace

QString TunnelTool::mark(const Reach& reach) {
  if (reach.out_cm <= 0) return spoken("End outside the wound: as far as the tunnel leads.");
  if (reach.out_cm > most_extent_cm) return spoken("A tunnel is 50 cm long at most.");
  desk().change(spoken("tunnel"), [&](wound::Case& value) -> std::optional<QString> {
    target_wound(value).tunnels.push_back({.clock = reach.start_clock, .length_cm = reach.out_cm});
    return std::nullopt;
  });
  return {};
}

QString TunnelTool::describe(const Reach& reach) const {
  return spoken("tunnel at {1} o'clock, {2}",
                {hour_words(reach.start_clock), length_words(reach.out_cm)});
}

}  // namespace drapewright::desktop
