// plan_folder DIR [DEPTH_CM [RUN_IN_CM]]
//
// Plans every .json file under a folder, a case file or a bare outline ({"id": ..., "outline":
// [[x, y], ...], "islands": [...]}, in cm), and audits each plan with GEOS. Bare outlines are
// planned with the standard settings, with the depth and the run-in given. Ends with 0 only when
// every file was planned and no plan broke a promise.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/dressing/plan.h"
#include "tests/support/outline_files.h"
#include "tests/support/plan_invariants.h"

namespace drapewright {
namespace {

namespace fs = std::filesystem;

class FolderPlanner {
 public:
  FolderPlanner(double depth_cm, double run_in_cm) : depth_cm_(depth_cm), run_in_cm_(run_in_cm) {}

  void plan(const fs::path& path) try {
    const wound::Case value = support::read_case_or_outline(path, depth_cm_, run_in_cm_);
    const auto start = std::chrono::steady_clock::now();
    const dressing::Plan plan = dressing::plan_dressing(value);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    times_ms_.push_back(took.count());
    for (const dressing::Finding& finding : plan.findings) {
      if (finding.code.ends_with("-not-verified")) report(path, "in doubt", finding.text, doubts_);
    }
    const auto broken = support::broken_promises(value, plan);
    for (const std::string& sentence : broken) report(path, "broken", sentence, promises_);
    if (!broken.empty()) ++broken_plans_;
  } catch (const InputError& error) {
    report(path, "refused", error.what(), refused_);
  } catch (const std::exception& error) {
    report(path, "failed", error.what(), failed_);
  }

  /// @returns whether everything was planned and kept its promises
  bool sum_up() {
    std::ranges::sort(times_ms_);
    double total_ms = 0;
    for (const double ms : times_ms_) total_ms += ms;
    std::printf("%zu planned, %d with a broken promise, %d in doubt, %d refused, %d failed\n",
                times_ms_.size(), broken_plans_, doubts_, refused_, failed_);
    if (times_ms_.empty()) return false;
    std::printf("planning took %.1f ms in all: median %.2f ms, longest %.2f ms\n", total_ms,
                times_ms_[times_ms_.size() / 2], times_ms_.back());
    return promises_ + doubts_ + refused_ + failed_ == 0;
  }

 private:
  static void report(const fs::path& path, const char* what, const std::string& why, int& count) {
    std::printf("%s: %s: %s\n", path.filename().c_str(), what, why.c_str());
    ++count;
  }

  double depth_cm_, run_in_cm_;
  std::vector<double> times_ms_;
  int broken_plans_ = 0, promises_ = 0, doubts_ = 0, refused_ = 0, failed_ = 0;
};

int run(int count, char** arguments) {
  if (count < 2 || !fs::is_directory(arguments[1])) {
    std::fputs("usage: plan_folder DIR [DEPTH_CM [RUN_IN_CM]]\n", stderr);
    return 2;
  }
  const double depth_cm = count > 2 ? std::stod(arguments[2]) : 0;
  const double run_in_cm = count > 3 ? std::stod(arguments[3]) : 0;
  FolderPlanner planner(depth_cm, run_in_cm);
  for (const std::string& file : support::json_files(arguments[1])) planner.plan(file);
  return planner.sum_up() ? 0 : 1;
}

}  // namespace
}  // namespace drapewright

int main(int count, char** arguments) { return drapewright::run(count, arguments); }
