#pragma once

#include <QString>
#include <vector>

#include "core/dressing/plan.h"

namespace drapewright::desktop {

/// One line of the measures: shown to 0.1 as the trade records it, with more digits at hand.
struct MeasureRow {
  QString name;
  QString value;   ///< with its unit; empty in a row that starts a group
  QString spread;  ///< "± 0.3" or empty
  QString detail;  ///< more digits and what it means
};

/// The figures of a plan, in the order of the work: each wound, filler, film, port, course.
std::vector<MeasureRow> measure_rows(const dressing::Plan& plan);

}  // namespace drapewright::desktop
