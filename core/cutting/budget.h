#pragma once

#include <cstdint>

#include "core/cutting/layout.h"

namespace drapewright::cutting {

/// Counts the steps of a search and says when it has to end.
class Budget {
 public:
  Budget(const Options& options, const Progress& progress)
      : options_(options), progress_(progress) {}

  /// @throws Cancelled when a stop was asked for
  bool step() {
    if (progress_.stop_requested()) throw Cancelled();
    ++steps_;
    if (steps_ >= options_.max_steps || (options_.out_of_time && options_.out_of_time())) {
      over_ = true;
    }
    return !over_;
  }
  bool over() const { return over_; }
  std::int64_t steps() const { return steps_; }

 private:
  const Options& options_;
  const Progress& progress_;
  std::int64_t steps_ = 0;
  bool over_ = false;
};

}  // namespace drapewright::cutting
