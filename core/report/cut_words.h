#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/base/say.h"
#include "core/dressing/plan.h"

namespace drapewright::report {

/// How a piece is called on its sheet: as in the drawing of the plan ("1.2", "B 1.2"), "Strip 1",
/// "Bridge 2",
/// "Film 1", "Film under bridge 1"; a part of a strip or a bridge "Strip 1, part 2".
std::string placement_name(const dressing::Placement& placement, bool several_wounds);

/// All of a sheet's pieces by name, parted by commas.
std::string pieces_in_words(const dressing::CutSheet& sheet, bool several_wounds);

/// What may be opened: the name of the one size, or that it is any of several.
std::string offer_in_words(const dressing::SheetChoice& choice);

/// "2 x Filler sheet 10 x 8 x 1.5 cm"; "none" where nothing could be cut.
std::string opened_in_words(const dressing::SheetChoice& choice);

/// How far the layout can be from the best: "best possible", "at most 1 sheet fewer".
std::string bound_in_words(const dressing::SheetChoice& choice);

/// "12.3 x 8.0 cm", rounded down: an off-cut must not be promised larger than it is.
std::string off_cut_in_words(const geometry::Box& off_cut);

/// "largest off-cut 12.3 x 8.0 cm", or that there is none worth the name.
std::string off_cut_or_none(const dressing::SheetChoice& choice);

/// Below an off-cut wherever it is shown.
inline constexpr std::string_view off_cut_advice = term(
    "Whether an off-cut may be kept is for local policy. A sterile sheet is for single use: what "
    "is left of it is thrown away.");

/// Beside costs wherever they are shown.
inline constexpr std::string_view cost_advice = term(
    "Costs are the stock list's; those of the built-in list are invented, and only rank one size "
    "above another.");

/// One way to cut in a row: what may be opened, sheets, cost, used, pieces, seams, off-cut, bound.
using ChoiceCells = std::array<std::string, 8>;
ChoiceCells choice_titles();
ChoiceCells cells_of(const dressing::SheetChoice& choice);

}  // namespace drapewright::report
