#include "core/cutting/strip_search.h"

#include <algorithm>
#include <numeric>

#include "core/cutting/construct.h"
#include "core/cutting/near_misses.h"
#include "core/cutting/rows.h"
#include "core/cutting/separate.h"

namespace drapewright::cutting {
namespace {

/// How much shorter the next strip is to be: at first, and at least. Halved when it will not go.
constexpr double first_step = 0.015;
constexpr double least_step = 0.001;
/// Attempts, each from another arrangement that nearly worked, before a smaller step is tried.
constexpr int attempts_per_step = 15;
constexpr int patience = 50;
constexpr std::size_t pool_size = 10;

double longest_needed(const Scene& scene) {
  double sum = 0;
  for (int i = 0; i < scene.pieces(); ++i) sum += 2 * scene.stand_in(i).reach_cm + 1;
  return sum;
}

}  // namespace

void search_strip(Arrangement& arrangement, double width_cm, double bound, Budget& budget,
                  Random& random, const std::function<void(const Arrangement&, double)>& better) {
  auto& scene = arrangement.scene();
  arrangement.beds = {{-1, longest_needed(scene), width_cm}};
  Rows rows(arrangement, Rows::Stacked::along_length, scene.no_fits().gap_cm());
  for (const int piece : by_falling_height(scene)) rows.place(piece);
  double best_length = arrangement.reach_x(0);
  auto best = arrangement.poses();
  better(arrangement, best_length);
  if (!Constructor(arrangement, budget).place_all(by_falling_area(scene))) return;
  if (arrangement.reach_x(0) < best_length) {
    best_length = arrangement.reach_x(0);
    best = arrangement.poses();
    better(arrangement, best_length);
  }
  NearMisses pool(pool_size);
  double step = first_step;
  while (!budget.over() && best_length > bound * (1 + 1e-9)) {
    arrangement.restore(best);
    arrangement.beds[0].length_cm = std::max(bound, best_length * (1 - step));
    if (!arrangement.pull_in()) {
      if (step < least_step / 100) return;  // some piece is as long as the strip
      step /= 2;
      continue;
    }
    pool.clear();
    Separator separator(arrangement, budget, random);
    bool done = separator.run(patience);
    for (int k = 0; !done && (k < attempts_per_step || step <= least_step) && !budget.over(); ++k) {
      pool.add(separator.overlap(), arrangement.poses());
      arrangement.restore(pool.pick(random));
      separator.shake();
      done = separator.run(patience);
    }
    if (done) {
      best_length = arrangement.reach_x(0);
      best = arrangement.poses();
      better(arrangement, best_length);
    } else {
      step = std::max(step / 2, least_step);
    }
  }
}

}  // namespace drapewright::cutting
