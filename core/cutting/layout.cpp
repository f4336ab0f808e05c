#include "core/cutting/layout.h"

#include <algorithm>
#include <tuple>

#include "core/base/error.h"
#include "core/cutting/job_check.h"
#include "core/cutting/off_cut.h"
#include "core/cutting/scene.h"
#include "core/cutting/sheet_search.h"
#include "core/cutting/strip_search.h"
#include "core/cutting/verify.h"

namespace drapewright::cutting {
namespace {

/// The order of layouts: the lower, the better. Off-cuts take long to measure and come last.
auto rank_without_off_cut(const Layout& layout) {
  return std::tuple(layout.unplaced.size(), layout.cost, layout.sheets.size());
}
auto rank(const Layout& layout) {
  return std::tuple(rank_without_off_cut(layout), -layout.off_cut_cm2);
}

/// Turns arrangements into layouts, lets only sound and better ones out and remembers the best.
class Outlet {
 public:
  Outlet(const Job& job, const Options& options, const Scene& scene)
      : job_(job), options_(options), scene_(scene) {}

  void set_bound(double bound) { best_.bound = bound; }
  bool offer(const Arrangement& found) {
    Layout layout = layout_of(found);
    if (told_ && rank_without_off_cut(layout) > rank_without_off_cut(best_)) return false;
    measure_off_cuts(layout);
    if (told_ && !(rank(layout) < rank(best_))) return false;
    if (find_fault(job_, layout)) return false;
    told_ = true;
    best_ = std::move(layout);
    if (options_.on_better) options_.on_better(best_);
    return true;
  }
  const Layout& best() const { return best_; }

 private:
  Layout layout_of(const Arrangement& found) const {
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
    return layout;
  }
  /// What is left of a sheet, if it is wide enough to be of use. Measured beside what covers the
  /// pieces: time grows by the square of the corners.
  geometry::Box off_cut_of(const CutSheet& sheet) const {
    std::vector<geometry::Polygon> covers;
    for (const auto& placement : sheet.placements) covers.push_back(scene_.cover(placement));
    const auto box = largest_off_cut(sheet.length_cm, sheet.width_cm, covers, job_.gap_cm);
    return std::min(box.width(), box.height()) < job_.least_off_cut_cm ? geometry::Box{} : box;
  }
  void measure_off_cuts(Layout& layout) const {
    if (job_.strip_width_cm) return;
    for (CutSheet& sheet : layout.sheets) {
      sheet.off_cut_cm = off_cut_of(sheet);
      layout.off_cut_cm2 =
          std::max(layout.off_cut_cm2, sheet.off_cut_cm.width() * sheet.off_cut_cm.height());
    }
  }
  CutSheet sheet_of(const Arrangement& found, int bed) const {
    CutSheet sheet;
    sheet.kind = found.beds[static_cast<std::size_t>(bed)].kind;
    for (int i = 0; i < scene_.pieces(); ++i) {
      if (found.pose(i).bed == bed) {
        sheet.placements.push_back(scene_.placement(job_, i, found.pose(i)));
      }
    }
    if (sheet.placements.empty()) return sheet;
    if (sheet.kind < 0) {
      sheet.length_cm = sheet.unit_cost = found.reach_x(bed);
      sheet.width_cm = *job_.strip_width_cm;
    } else {
      const auto& kind = job_.sheets[static_cast<std::size_t>(sheet.kind)];
      sheet.length_cm = kind.length_cm;
      sheet.width_cm = kind.width_cm;
      sheet.unit_cost = kind.unit_cost;
    }
    return sheet;
  }

  const Job& job_;
  const Options& options_;
  const Scene& scene_;
  Layout best_;
  bool told_ = false;
};

/// @returns whether rows of hulls do: nothing can cost less, and that is all that is asked for
bool search_sheets(const Job& job, Scene& scene, Budget& budget, Random& random, Outlet& outlet,
                   bool rows_only) {
  Arrangement arrangement(scene);
  const SheetLimits limits(job, scene);
  auto all = limits.everything();
  all.cost = 1e300;
  const auto first = limits.sets_before(all, 1);
  outlet.set_bound(first.empty() ? 0 : first.front().cost);
  const auto offer = [&](const Arrangement& found) { return outlet.offer(found); };
  const auto off_cut = [&] { return outlet.best().off_cut_cm2; };
  SheetSearch search(job, limits, arrangement, budget, random, offer, off_cut);
  if (rows_only) return search.rows_will_do();
  search.run();
  return false;
}

}  // namespace

Layout lay_out(const Job& job, const Options& options, const Progress& progress) {
  check(job);
  Budget budget(options, progress);
  Random random(options.seed);
  if (!job.strip_width_cm && (options.cheapest_will_do || options.rows_only)) {
    Scene hulls(job, Scene::Detail::hulls);
    Outlet outlet(job, options, hulls);
    const bool will_do = search_sheets(job, hulls, budget, random, outlet, true);
    if (will_do || options.rows_only) return outlet.best();
  }
  Scene scene(job);
  Outlet outlet(job, options, scene);
  if (job.strip_width_cm) {
    Arrangement arrangement(scene);
    const double width = *job.strip_width_cm;
    const double bound = scene.pieces_area_cm2() / width;
    outlet.set_bound(bound);
    search_strip(arrangement, width, bound, budget, random,
                 [&](const Arrangement& found, double) { outlet.offer(found); });
  } else {
    search_sheets(job, scene, budget, random, outlet, false);
  }
  return outlet.best();
}

}  // namespace drapewright::cutting
