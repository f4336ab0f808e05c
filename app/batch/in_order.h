#pragma once

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <mutex>
#include <optional>
#include <semaphore>
#include <thread>
#include <type_traits>
#include <utility>
#include <vector>

namespace drapewright::batch {

/// Jobs on several processors, whose results are taken in order. A slow one holds up the taking but
/// not the others, until `window` results wait for it.
template <typename Job>
class OrderedJobs {
 public:
  using Result = std::invoke_result_t<Job&, std::size_t>;

  OrderedJobs(std::size_t count, std::size_t jobs, Job job)
      : count_(count),
        jobs_(jobs),
        job_(job),
        slots_(results_per_job * jobs),
        free_(static_cast<std::ptrdiff_t>(slots_.size())) {
    for (std::size_t i = 0; i < jobs; ++i) workers_.emplace_back([this] { work(); });
  }
  ~OrderedJobs() {
    next_ = count_;  // after a fault there may be more to do: nobody wants it
    free_.release(static_cast<std::ptrdiff_t>(jobs_));
  }
  OrderedJobs(const OrderedJobs&) = delete;
  OrderedJobs& operator=(const OrderedJobs&) = delete;

  /// @param done  is given each result @throws whatever a job or `done` throws
  template <typename Done>
  void take(Done done) {
    for (std::size_t i = 0; i < count_; ++i) {
      done(taken(slots_[i % slots_.size()]));
      free_.release();
    }
  }

 private:
  /// The slowest plan takes some ten times as long as the usual one.
  static constexpr std::size_t results_per_job = 16;

  struct Slot {
    std::optional<Result> result;
    std::exception_ptr fault;
  };

  Result taken(Slot& slot) {
    std::unique_lock lock(mutex_);
    ready_.wait(lock, [&] { return slot.result || slot.fault; });
    Slot full = std::exchange(slot, {});
    lock.unlock();
    if (full.fault) std::rethrow_exception(full.fault);
    return std::move(*full.result);
  }

  void work() {
    for (;;) {
      free_.acquire();
      const std::size_t i = next_++;
      if (i >= count_) return;
      Slot done = done_job(i);
      {
        const std::lock_guard lock(mutex_);
        slots_[i % slots_.size()] = std::move(done);
      }
      ready_.notify_one();
    }
  }

  Slot done_job(std::size_t i) {
    try {
      return {job_(i), nullptr};
    } catch (...) {
      return {std::nullopt, std::current_exception()};
    }
  }

  std::size_t count_, jobs_;
  Job job_;
  std::vector<Slot> slots_;
  std::counting_semaphore<> free_;  ///< slots that nobody has taken for a job
  std::atomic<std::size_t> next_ = 0;
  std::mutex mutex_;  ///< of the slots
  std::condition_variable ready_;
  std::vector<std::jthread> workers_;  ///< last: they end before the rest goes
};

/// Does `job(0)` to `job(count - 1)` on several processors and hands the results to `done` in that
/// order, in the thread that called. So many results as there are places for each of `jobs` exist
/// at a time, so that memory does not grow with `count`.
template <typename Job, typename Done>
void in_order(std::size_t count, std::size_t jobs, Job job, Done done) {
  if (jobs < 2 || count < 2) {
    for (std::size_t i = 0; i < count; ++i) done(job(i));
    return;
  }
  OrderedJobs<Job>(count, std::min(jobs, count), job).take(done);
}

}  // namespace drapewright::batch
