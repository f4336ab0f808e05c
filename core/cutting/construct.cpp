#include "core/cutting/construct.h"

#include <limits>

namespace drapewright::cutting {
namespace {

/// How far along the bed a piece reaches; lower down breaks ties.
double reach(const Oriented& as, Point at, const Bed& bed) {
  return at.x + as.box.high.x + 1e-3 * (at.y + as.box.low.y) * bed.length_cm / bed.width_cm;
}

}  // namespace

bool construct(Arrangement& arrangement, const std::vector<int>& order, Budget& budget) {
  auto& scene = arrangement.scene();
  for (const int piece : order) arrangement.put(piece, {});
  Field field;
  std::vector<Point> spots;
  bool all = true;
  for (const int piece : order) {
    Pose best;
    double least = std::numeric_limits<double>::infinity();
    for (int bed = 0; bed < static_cast<int>(arrangement.beds.size()) && best.bed < 0; ++bed) {
      for (const int number : scene.orientations(piece)) {
        const auto& as = scene.orientation(number);
        arrangement.look(piece, as, bed, nullptr, field);
        field.touching_spots(spots);
        for (const Point spot : spots) {
          const double score = reach(as, spot, arrangement.beds[static_cast<std::size_t>(bed)]);
          if (score < least) {
            least = score;
            best = {bed, number, as.angle_deg, spot};
          }
        }
      }
    }
    arrangement.put(piece, best);
    all = all && best.bed >= 0;
    budget.step();
  }
  return all;
}

}  // namespace drapewright::cutting
