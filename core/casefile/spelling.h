#pragma once

#include <span>
#include <string>
#include <string_view>

namespace drapewright::casefile {

/// The least number of letters to insert, drop, exchange or swap with a neighbour to turn one word
/// into the other (optimal string alignment; Damerau, Commun ACM 1964;7(3):171, from memory).
int edit_distance(std::string_view a, std::string_view b);

/// True when `word` is so like `known` that it is taken for a slip of the pen: one edit apart, two
/// for names of six letters and more, capitals, dashes and underscores not counted; or the same
/// name with another unit or none ("depth", "depth_mm" for "depth_cm"). A name that begins with
/// "x_" is never one: it is for data of the user's own.
bool looks_like(std::string_view word, std::string_view known);

/// The name of `known` that `word` looks like most, or nothing.
std::string_view nearest_name(std::string_view word, std::span<const std::string_view> known);

}  // namespace drapewright::casefile
