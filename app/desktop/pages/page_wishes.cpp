#include "app/desktop/pages/page_wishes.h"

#include "core/report/square_page.h"
#include "core/report/template_pages.h"

namespace drapewright::desktop {

report::Document pages_for(const PageWishes& wishes, const wound::Case& value,
                           const dressing::Plan* plan, const std::string& today) {
  const report::PageOptions options{wishes.paper, today};
  report::Document all;
  if (plan != nullptr) {
    append(all, report::pages_of(wishes.kinds, value, *plan, options));
    if (wishes.templates) {
      append(all,
             report::template_pages(
                 value, *plan,
                 {.page = options, .mirror_film = wishes.mirror_film, .printer = wishes.printer}));
    }
  }
  if (wishes.squares) append(all, report::square_page(options, wishes.printer));
  return all;
}

}  // namespace drapewright::desktop
