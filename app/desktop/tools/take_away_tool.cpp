#include "app/desktop/tools/take_away_tool.h"

#include "app/desktop/document/case_document.h"
#include "app/desktop/document/reshape_case.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"
#include "core/tracing/loops.h"

namespace drapewright::desktop {

QString TakeAwayTool::obstacle() const {
  return desk().has_outline() ? QString() : no_outline_words();
}

void TakeAwayTool::done(const geometry::Ring& stroke) {
  const geometry::Ring area = area_in(stroke);
  if (area.size() < 3) return desk().say(spoken("Nothing was gone round."));
  if (tracing::first_crossing(area, true)) return desk().say(crossing_words());
  const ShapeRef ref = desk().target().ref;
  desk().change(spoken("take from {1}", {title_of(desk().document().value(), ref)}),
                [&](wound::Case& value) { return take_area(value, ref, area); });
}

}  // namespace drapewright::desktop
