// cancel_bench DIR
//
// How long the cutting engine goes on after it was told to stop: every layout job of a folder,
// stopped at several moments of its search.

#include <chrono>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <stop_token>
#include <string>
#include <thread>

#include "core/casefile/layout_json.h"
#include "core/cutting/layout.h"
#include "tests/support/outline_files.h"

namespace drapewright {
namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

double milliseconds_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

/// @return how long after the stop the engine came back, in milliseconds; below 0 where it had
/// finished before
double time_to_stop(const cutting::Job& job, milliseconds after) {
  std::stop_source stop;
  const auto start = Clock::now();
  std::jthread stopper([&] {
    std::this_thread::sleep_until(start + after);
    stop.request_stop();
  });
  try {
    cutting::lay_out(job, {.out_of_time = [] { return false; }}, Progress(stop.get_token()));
    return -1;
  } catch (const Cancelled&) {
    return milliseconds_since(start + after);
  }
}

cutting::Job read_job(const std::string& file) {
  std::ifstream in(file);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  return casefile::layout_job_from_json(text, file);
}

int run(const std::string& folder) {
  double longest = 0;
  for (const std::string& file : support::json_files(folder)) {
    const cutting::Job job = read_job(file);
    std::printf("%s\n ", file.substr(file.rfind('/') + 1).c_str());
    for (const int after : {2, 5, 20, 50, 200, 500, 1000, 2000}) {
      const double took = time_to_stop(job, milliseconds(after));
      if (took < 0) {
        std::printf("  %d: done", after);
        continue;
      }
      longest = std::max(longest, took);
      std::printf("  %d: %.1f", after, took);
      std::fflush(stdout);
    }
    std::puts("");
  }
  std::printf("longest %.1f ms from the stop to the return\n", longest);
  return longest < 50 ? 0 : 1;
}

}  // namespace
}  // namespace drapewright

int main(int count, char** arguments) {
  if (count != 2) {
    std::fputs("usage: cancel_bench DIR\n", stderr);
    return 2;
  }
  return drapewright::run(arguments[1]);
}
