#include "core/report/page_kinds.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "core/base/say.h"
#include "core/dressing/course_log.h"
#include "core/dressing/section.h"
#include "core/report/plan_page.h"
#include "core/report/record_pages.h"
#include "core/report/teaching_pages.h"
#include "core/report/what_to_do.h"

namespace drapewright::report {
namespace {

struct Row {
  PageKind kind;
  std::string_view name;
  const char* title;
};

constexpr std::array table{
    Row{PageKind::plan, "plan", term("Plan sheet")},
    Row{PageKind::record, "record", term("Application record")},
    Row{PageKind::labels, "labels", term("Labels for the dressing")},
    Row{PageKind::what_to_do, "what-to-do", term("What to do when")},
    Row{PageKind::teaching, "teaching", term("Teaching sheet")},
    Row{PageKind::solution, "solution", term("Teaching sheet: solution")},
};

const Row& row_of(PageKind kind) { return *std::ranges::find(table, kind, &Row::kind); }

Document plan_sheet(const wound::Case& value, const dressing::Plan& plan,
                    const PageOptions& options) {
  const dressing::SectionCutter cutter(value, plan);
  return plan_pages(value, plan, cutter.cut(cutter.usual_line()), options);
}

}  // namespace

std::span<const PageKind> page_kinds() {
  static const auto all = [] {
    std::array<PageKind, table.size()> kinds{};
    std::ranges::transform(table, kinds.begin(), &Row::kind);
    return kinds;
  }();
  return all;
}

std::string_view name_of(PageKind kind) { return row_of(kind).name; }

std::string title_of(PageKind kind) { return say(row_of(kind).title); }

Document pages_of(PageKind kind, const wound::Case& value, const dressing::Plan& plan,
                  const PageOptions& options) {
  const auto log = [&] { return dressing::course_log(value, options.today); };
  switch (kind) {
    case PageKind::plan:
      return plan_sheet(value, plan, options);
    case PageKind::record:
      return record_pages(value, plan, log(), options);
    case PageKind::labels:
      return label_page(plan, log(), options);
    case PageKind::what_to_do:
      return what_to_do_page(plan.label, plan.date, options);
    case PageKind::teaching:
      return teaching_pages(value, plan, false, options);
    case PageKind::solution:
      return teaching_pages(value, plan, true, options);
  }
  throw std::logic_error("a kind of page without pages");
}

Document pages_of(std::span<const PageKind> kinds, const wound::Case& value,
                  const dressing::Plan& plan, const PageOptions& options) {
  Document all;
  for (const PageKind kind : kinds) append(all, pages_of(kind, value, plan, options));
  return all;
}

}  // namespace drapewright::report
