#pragma once

#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/dressing/plan.h"
#include "core/wound/case.h"

/// A case for other programs, in open formats. What each holds: docs/exchange.md. Equal input gives
/// equal text, in every language of the reader but for texts that are marked so.
namespace drapewright::casefile {

/// What the wounds measured at every assessment: a list for each, in the case's order.
using MeasuresOverTime = std::vector<std::vector<dressing::WoundMeasures>>;

/// The measures of `plan` for the last assessment, and those of the earlier ones, each planned as
/// if it were the last.
/// @param plan  of this very case
/// @throws InputError when an earlier assessment cannot be planned
/// @throws Cancelled when `progress` was told to stop
MeasuresOverTime measures_over_time(const wound::Case& value, const dressing::Plan& plan,
                                    const Progress& progress = {});

/// A FHIR R4 Bundle of type collection: Observations of every assessment, coded with LOINC and
/// UCUM. No patient; the case's label is an identifier in a system of this program's own. Figures
/// to 0.01 cm, cm2, cm3.
/// @param measures  one list for each assessment of the case
/// @throws std::logic_error where the two do not belong together
std::string fhir_bundle(const wound::Case& value, const MeasuresOverTime& measures);

/// A row for each wound of each assessment, with the spreads of the tracing error. What was not
/// measured is an empty cell. Same parameters and errors.
std::string measures_csv(const wound::Case& value, const MeasuresOverTime& measures);

/// A row for each line of the plan's materials. The arithmetic in words is in the reader's
/// language.
std::string materials_csv(const dressing::Plan& plan);

/// The sheets of one application, filler and then shared film, as DXF R12 in mm: side by side along
/// x, the first one's corner at the origin. Layers SHEET, CUT and SEAM, closed polylines but for
/// the seams.
/// @throws InputError where the plan cuts no sheet
std::string cut_dxf(const dressing::Plan& plan);

}  // namespace drapewright::casefile
