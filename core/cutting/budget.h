#pragma once

#include <cstddef>
#include <cstdint>

#include "core/cutting/layout.h"

namespace drapewright::cutting {

/// Counts the steps of a search and the work in them, and says when it has to end.
class Budget {
 public:
  Budget(const Options& options, const Progress& progress)
      : options_(options), progress_(progress) {}

  /// @throws Cancelled when a stop was asked for
  bool step() {
    ++steps_;
    return spend(0);
  }
  /// @param work in sides of cells looked at; a step can take any number of them
  /// @throws Cancelled when a stop was asked for
  bool spend(std::size_t work) {
    if (progress_.stop_requested()) throw Cancelled();
    work_ += static_cast<std::int64_t>(work);
    if (steps_ >= options_.max_steps || work_ >= options_.max_work ||
        (options_.out_of_time && options_.out_of_time())) {
      over_ = true;
    }
    return !over_;
  }
  bool over() const { return over_; }
  bool cheapest_will_do() const { return options_.cheapest_will_do; }
  std::int64_t steps() const { return steps_; }

 private:
  const Options& options_;
  const Progress& progress_;
  std::int64_t steps_ = 0;
  std::int64_t work_ = 0;
  bool over_ = false;
};

}  // namespace drapewright::cutting
