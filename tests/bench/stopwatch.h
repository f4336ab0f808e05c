#pragma once

#include <algorithm>
#include <ctime>
#include <limits>
#include <vector>

namespace drapewright::bench {

/// Processor time of this thread in microseconds: what else the machine does blurs it less than it
/// would a clock on the wall.
inline double now_us() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return 1e6 * static_cast<double>(now.tv_sec) + 1e-3 * static_cast<double>(now.tv_nsec);
}

inline double time_us(const auto& work) {
  const double start = now_us();
  work();
  return now_us() - start;
}

struct Pair {
  double ours_us = std::numeric_limits<double>::infinity();
  double theirs_us = ours_us;
  double ratio() const { return ours_us / theirs_us; }
};

/// The least time of each, taken in turn, so that a slow spell of the machine meets both.
inline Pair best_of(int repeats, const auto& ours, const auto& theirs) {
  Pair best;
  for (int i = 0; i < repeats; ++i) {
    best.ours_us = std::min(best.ours_us, time_us(ours));
    best.theirs_us = std::min(best.theirs_us, time_us(theirs));
  }
  return best;
}

/// @pre values is not empty
inline double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  return *middle;
}

}  // namespace drapewright::bench
