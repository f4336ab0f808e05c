#pragma once

#include <string>

namespace drapewright::bench {

/// Whole plans of invented cases beside GEOS's inset and two outsets of the same outlines: by the
/// number of points and how that grows, a staircase traced from pixels, and many wounds. Says how
/// long planning went without asking whether it is still wanted.
void bench_whole_plans(int repeats);

/// The same for every outline or case file in a folder: the median of the ratios, and the ratio of
/// the medians.
/// @returns false when the folder holds no outline
bool bench_folder(const std::string& folder, int repeats);

}  // namespace drapewright::bench
