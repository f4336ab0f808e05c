#pragma once

#include "core/dressing/section.h"
#include "core/report/paper.h"
#include "core/wound/case.h"

namespace drapewright::report {

/// The plan to be handed over, on one page where it can be: the drawing to scale, the section,
/// measures, filler, film, port, consumables, findings with their sources, cautions, and room to
/// sign. Deterministic.
/// @param plan     of that case
/// @param section  of that plan
Document plan_pages(const wound::Case& value, const dressing::Plan& plan,
                    const dressing::Section& section, const PageOptions& options = {});

}  // namespace drapewright::report
