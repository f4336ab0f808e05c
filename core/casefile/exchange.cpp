#include "core/casefile/exchange.h"

namespace drapewright::casefile {

MeasuresOverTime measures_over_time(const wound::Case& value, const dressing::Plan& plan,
                                    const Progress& progress) {
  MeasuresOverTime measures;
  wound::Case earlier = value;
  const auto earlier_count = static_cast<std::ptrdiff_t>(value.assessments.size()) - 1;
  for (std::ptrdiff_t i = 0; i < earlier_count; ++i) {
    progress.at(static_cast<double>(i) / static_cast<double>(earlier_count));
    earlier.assessments.assign(value.assessments.begin(), value.assessments.begin() + i + 1);
    measures.push_back(dressing::plan_dressing(earlier).wounds);
  }
  measures.push_back(plan.wounds);
  return measures;
}

}  // namespace drapewright::casefile
