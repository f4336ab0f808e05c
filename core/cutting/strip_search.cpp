#include "core/cutting/strip_search.h"

#include <algorithm>
#include <numeric>
#include <cstdlib>

#include "core/cutting/construct.h"
#include "core/cutting/separate.h"

namespace drapewright::cutting {
namespace {
int env(const char* n,int d){const char*v=getenv(n);return v?atoi(v):d;}
double envd(const char* n,double d){const char*v=getenv(n);return v?atof(v):d;}
const int P_FAILS=env("P_FAILS",30); const double P_MIN=envd("P_MIN",1e-3); const int P_PAT=env("P_PAT",50),P_STR=env("P_STR",1);const double P_STEP=envd("P_STEP",0.03),P_SHK=envd("P_SHK",0.7),P_SF=envd("P_SF",0.7);

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
  if (!Constructor(arrangement).place_all(by_falling_area(scene), budget)) return;
  double best_length = arrangement.reach_x(0);
  auto best = arrangement.poses();
  better(arrangement, best_length);
  Separator separator(arrangement, budget, random);
  struct Try { double overlap; std::vector<Pose> poses; };
  double step = P_STEP;
  while (!budget.over() && best_length > bound * (1 + 1e-9)) {
    arrangement.restore(best);
    arrangement.beds[0].length_cm = std::max(bound, best_length * (1 - step));
    if (!arrangement.pull_in()) {
      step /= 2;
      arrangement.restore(best);
      if (step < 1e-5) return;
      continue;
    }
    std::vector<Try> pool;
    bool done = separator.run(P_PAT, P_STR);
    for (int fails = 0; !done && fails < P_FAILS && !budget.over(); ++fails) {
      pool.push_back({separator.overlap(), arrangement.poses()});
      std::stable_sort(pool.begin(), pool.end(), [](const Try& x, const Try& y) { return x.overlap < y.overlap; });
      if (pool.size() > 10) pool.pop_back();
      const double u = random.unit();
      const auto& from = pool[static_cast<std::size_t>(u * u * u * static_cast<double>(pool.size()))];
      arrangement.restore(from.poses);
      separator.shake();
      done = separator.run(P_PAT, P_STR);
    }
    if (done) {
      best_length = arrangement.reach_x(0);
      best = arrangement.poses();
      better(arrangement, best_length);
    } else {
      step = std::max(step * P_SF, P_MIN);
    }
  }
}

}  // namespace drapewright::cutting
