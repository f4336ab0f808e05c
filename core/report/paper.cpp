#include "core/report/paper.h"

namespace drapewright::report {

DrawingSize size_of(Paper paper) {
  return paper == Paper::a4 ? DrawingSize{210, 297} : DrawingSize{215.9, 279.4};
}

std::string_view name_of(Paper paper) { return paper == Paper::a4 ? "A4" : "letter"; }

}  // namespace drapewright::report
