#include "core/report/paper.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace drapewright::report {

DrawingSize size_of(Paper paper) {
  return paper == Paper::a4 ? DrawingSize{210, 297} : DrawingSize{215.9, 279.4};
}

std::string_view name_of(Paper paper) { return paper == Paper::a4 ? "A4" : "letter"; }

void append(Document& all, Document more) {
  if (all.pages.empty()) {
    all = std::move(more);
  } else {
    std::ranges::move(more.pages, std::back_inserter(all.pages));
  }
}

}  // namespace drapewright::report
