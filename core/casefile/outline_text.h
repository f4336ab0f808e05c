#pragma once

#include <string>
#include <string_view>

#include "core/geometry/shape.h"

namespace drapewright::casefile {

enum class LengthUnit { cm, mm, m, inch };
/// All of them, in the order in which they are offered.
inline constexpr LengthUnit length_units[] = {LengthUnit::cm, LengthUnit::mm, LengthUnit::inch,
                                              LengthUnit::m};
double cm_in(LengthUnit unit);
/// "cm", "inch".
std::string_view name_of(LengthUnit unit);

/// An outline from pasted text: one corner point a line, x and y parted by blanks, a tab, a
/// semicolon or a comma; or one number a line, x and y below each other. A decimal comma is taken where it can be nothing else ("5,2 3,1",
/// "5,2;3,1"). The first line may be a heading. Blank lines are passed over; a last point that
/// repeats the first is left out.
/// @return points in cm
/// @throws InputError with row, column, what was found and what was expected: a word, a number
///         missing or to spare, a comma that may be either ("5,2,3,1"), rows that read a comma
///         in different ways, fewer than three points, a column with an odd count. Shapes are not checked here:
///         see wound::check_outline
geometry::Ring outline_from_text(std::string_view text, LengthUnit unit);

}  // namespace drapewright::casefile
