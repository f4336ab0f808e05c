#include "core/report/what_to_do.h"

#include "core/base/say.h"
#include "core/practice/events.h"
#include "core/report/column_flow.h"

namespace drapewright::report {

namespace {

constexpr const char* whose_word = term(
    "How the device shows an alarm, and how it is answered, stands in the device's instructions: "
    "keep them beside this page. Local policy and the prescriber's orders come before it.");

constexpr double line_mm = 8;
constexpr int telephones = 3;

/// Lines to write on, side by side.
void add_telephones(ColumnFlow& flow) {
  flow.across(line_mm + 6, [&](Page& page, geometry::Point at) {
    page.text({at.x, at.y + 4}, say("To be called, with telephone:"), {.bold = true});
    const double each = flow.page_width() / telephones, y = at.y + line_mm + 5;
    for (int i = 0; i < telephones; ++i) {
      page.line({{at.x + i * each, y}, {at.x + (i + 1) * each - 5, y}});
    }
  });
}

}  // namespace

Document what_to_do_page(const std::string& plan_label, const std::string& assessed,
                         const PageOptions& options) {
  Document document{.title = say("What to do when: {1}", {plan_label}), .date = options.today};
  ColumnFlow flow(document, options.paper,
                  {say("What to do when"), case_line(plan_label, assessed, options.today)}, 1);
  flow.paragraph(say(whose_word));
  flow.keep();
  for (const practice::Event& event : practice::events()) {
    flow.heading(say(event.title));
    flow.paragraph(say(event.signs));
    int number = 0;
    for (const std::string_view step : event.steps) {
      flow.numbered(++number, say(step));
    }
    flow.paragraph("[" + practice::describe(event.source) + "]", {}, 6);
    flow.keep();
  }
  add_telephones(flow);
  flow.finish();
  number_pages(document);
  return document;
}

}  // namespace drapewright::report
