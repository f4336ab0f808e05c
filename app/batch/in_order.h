#pragma once

#include <cstddef>
#include <deque>
#include <future>

namespace drapewright::batch {

/// Does `job(0)` to `job(count - 1)` on several processors and hands the results to `done` in that
/// order, in the thread that called. No more than twice `jobs` results exist at a time, so that
/// memory does not grow with `count`.
template <typename Job, typename Done>
void in_order(std::size_t count, std::size_t jobs, Job job, Done done) {
  if (jobs < 2 || count < 2) {
    for (std::size_t i = 0; i < count; ++i) done(job(i));
    return;
  }
  std::deque<decltype(std::async(job, std::size_t{}))> running;
  for (std::size_t i = 0; i < count; ++i) {
    if (running.size() == 2 * jobs) {
      done(running.front().get());
      running.pop_front();
    }
    running.push_back(std::async(std::launch::async, job, i));
  }
  for (auto& result : running) done(result.get());
}

}  // namespace drapewright::batch
