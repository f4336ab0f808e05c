#pragma once

#include <vector>

namespace drapewright::forecast {

/// The chances of the sum of two independent counts: result[n] = sum of a[k] b[n - k].
/// Long ones are multiplied as spectra. What that leaves below its rounding error is set to 0, so
/// that no chance is below 0 and nothing but the sum's own tail is lost.
/// @pre neither is empty; nothing below 0
std::vector<double> convolved(const std::vector<double>& a, const std::vector<double>& b);

/// The same, term by term. For short ones, and as a judge of the other.
std::vector<double> convolved_by_terms(const std::vector<double>& a, const std::vector<double>& b);

}  // namespace drapewright::forecast
