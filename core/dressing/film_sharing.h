#pragma once

#include "core/base/progress.h"
#include "core/dressing/finding_list.h"
#include "core/dressing/plan.h"

namespace drapewright::dressing {

/// Cuts several films of one application from one sheet where that costs less than a sheet for
/// each (at equal cost: takes fewer sheets), with the same engine as the filler, which here lays
/// rows only: films are round, few and drawn with hundreds of corners. Films in parts,
/// films under several sheets and films whose border is short keep what they have: of the last,
/// all that the sheet has to spare may be needed. Fills plan.film_layout and says in a note what is
/// shared; leaves the plan as it is where nothing is gained.
/// @throws Cancelled when `progress` was told to stop
void share_film_sheets(Plan& plan, const wound::Case& value, FindingList& findings,
                       const Progress& progress);

}  // namespace drapewright::dressing
