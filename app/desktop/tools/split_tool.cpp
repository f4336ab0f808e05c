#include "app/desktop/tools/split_tool.h"

#include "app/desktop/document/case_document.h"
#include "app/desktop/document/reshape_case.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"
#include "core/tracing/loops.h"
#include "core/tracing/trace.h"

namespace drapewright::desktop {

QString SplitTool::obstacle() const {
  return desk().has_outline() ? QString() : no_outline_words();
}

void SplitTool::done(const geometry::Ring& stroke) {
  const geometry::Ring line = tracing::smoothed(stroke, tracing::Ends::open);
  if (tracing::first_crossing(line, false)) return desk().say(crossing_words());
  const ShapeRef ref = desk().target().ref;
  desk().change(spoken("split {1}", {title_of(desk().document().value(), ref)}),
                [&](wound::Case& value) { return split_shape(value, ref, line); });
}

}  // namespace drapewright::desktop
