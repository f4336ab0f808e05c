#include "core/cutting/layout.h"

#include <cmath>

#include "core/base/error.h"
#include "core/cutting/job_check.h"
#include "core/cutting/scene.h"
#include "core/cutting/sheet_search.h"
#include "core/cutting/strip_search.h"
#include "core/cutting/verify.h"

namespace drapewright::cutting {
namespace {

/// Turns arrangements into layouts, lets only sound ones out and remembers the best.
class Outlet {
 public:
  Outlet(const Job& job, const Options& options, const Scene& scene)
      : job_(job), options_(options), scene_(scene) {}

  void set_bound(double bound) { best_.bound = bound; }
  bool offer(const Arrangement& found) {
    Layout layout;
    layout.bound = best_.bound;
    double area = 0, used = 0;
    for (std::size_t b = 0; b < found.beds.size(); ++b) {
      CutSheet sheet = sheet_of(found, static_cast<int>(b));
      if (sheet.placements.empty()) continue;
      for (const auto& placement : sheet.placements) {
        area += scene_.stand_in(placement.piece).area_cm2;
      }
      used += sheet.length_cm * sheet.width_cm;
      layout.cost += sheet.unit_cost;
      layout.sheets.push_back(std::move(sheet));
    }
    for (int i = 0; i < scene_.pieces(); ++i) {
      if (found.pose(i).bed < 0) layout.unplaced.push_back(i);
    }
    layout.density_percent = used > 0 ? 100 * area / used : 0;
    if (find_fault(job_, layout)) return false;
    best_ = std::move(layout);
    if (options_.on_better) options_.on_better(best_);
    return true;
  }
  Layout take() { return std::move(best_); }

 private:
  CutSheet sheet_of(const Arrangement& found, int bed) const {
    const Bed& rectangle = found.beds[static_cast<std::size_t>(bed)];
    CutSheet sheet{rectangle.kind, rectangle.length_cm, rectangle.width_cm, 0, {}};
    if (rectangle.kind >= 0) {
      sheet.unit_cost = job_.sheets[static_cast<std::size_t>(rectangle.kind)].unit_cost;
    } else {
      sheet.length_cm = sheet.unit_cost = found.reach_x(bed);
    }
    for (int i = 0; i < scene_.pieces(); ++i) {
      if (found.pose(i).bed == bed) {
        sheet.placements.push_back(scene_.placement(job_, i, found.pose(i)));
      }
    }
    return sheet;
  }

  const Job& job_;
  const Options& options_;
  const Scene& scene_;
  Layout best_;
};

}  // namespace

Layout lay_out(const Job& job, const Options& options, const Progress& progress) {
  check(job);
  Scene scene(job);
  Arrangement arrangement(scene);
  Budget budget(options, progress);
  Random random(options.seed);
  Outlet outlet(job, options, scene);
  if (job.strip_width_cm) {
    const double width = *job.strip_width_cm;
    const double bound = scene.pieces_area_cm2() / width;
    outlet.set_bound(bound);
    search_strip(arrangement, width, bound, budget, random,
                 [&](const Arrangement& found, double) { outlet.offer(found); });
  } else {
    const SheetLimits limits(job, scene);
    auto all = limits.everything();
    all.cost = 1e300;
    const auto first = limits.sets_before(all, 1);
    outlet.set_bound(first.empty() ? 0 : first.front().cost);
    SheetSearch(job, limits, arrangement, budget, random, [&](const Arrangement& found) {
      return outlet.offer(found);
    }).run();
  }
  return outlet.take();
}

}  // namespace drapewright::cutting
