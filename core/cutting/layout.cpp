#include "core/cutting/layout.h"

#include "core/cutting/scene.h"
#include "core/cutting/strip_search.h"

namespace drapewright::cutting {

Layout lay_out(const Job& job, const Options& options, const Progress& progress) {
  Scene scene(job);
  Arrangement arrangement(scene);
  Budget budget(options, progress);
  Random random(options.seed);
  Layout best;
  const double width = job.strip_width_cm.value_or(0);
  const double bound = scene.pieces_area_cm2() / width;
  search_strip(arrangement, width, bound, budget, random,
               [&](const Arrangement& found, double length) {
                 CutSheet sheet{-1, length, width, length, {}, {}};
                 for (int i = 0; i < scene.pieces(); ++i) {
                   sheet.placements.push_back(scene.placement(job, i, found.pose(i)));
                 }
                 best.sheets = {sheet};
                 best.cost = length;
                 best.bound = bound;
                 best.density_percent = 100 * scene.pieces_area_cm2() / (length * width);
                 if (options.on_better) options.on_better(best);
               });
  best.bound = bound;
  return best;
}

}  // namespace drapewright::cutting
