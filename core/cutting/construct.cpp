#include "core/cutting/construct.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace drapewright::cutting {
namespace {

/// How far along the bed a piece reaches; lower down breaks ties.
double reach(const Oriented& as, Point at, const Bed& bed) {
  return at.x + as.box.high.x + 1e-3 * (at.y + as.box.low.y) * bed.length_cm / bed.width_cm;
}

}  // namespace

std::vector<int> by_falling_area(const Scene& scene) {
  std::vector<int> order(static_cast<std::size_t>(scene.pieces()));
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return scene.stand_in(a).area_cm2 > scene.stand_in(b).area_cm2;
  });
  return order;
}

bool Constructor::place(int piece) {
  const auto& scene = arrangement_.scene();
  arrangement_.put(piece, {});
  if (budget_.over()) return false;
  Pose best;
  double least = std::numeric_limits<double>::infinity();
  for (int bed = 0; bed < static_cast<int>(arrangement_.beds.size()) && best.bed < 0; ++bed) {
    for (const int number : scene.orientations(piece)) {
      const auto& as = scene.orientation(number);
      arrangement_.look(piece, as, bed, nullptr, field_);
      if (!budget_.spend(field_.sides_to_look_at())) return false;
      field_.touching_spots(spots_);
      for (const Point spot : spots_) {
        const double score = reach(as, spot, arrangement_.beds[static_cast<std::size_t>(bed)]);
        if (score < least) {
          least = score;
          best = {bed, number, as.angle_deg, spot};
        }
      }
    }
  }
  arrangement_.put(piece, best);
  budget_.step();
  return best.bed >= 0;
}

bool Constructor::place_all(const std::vector<int>& order) {
  for (const int piece : order) arrangement_.put(piece, {});
  bool all = true;
  for (const int piece : order) all = place(piece) && all;
  return all;
}

bool drop(Arrangement& arrangement, int piece, Random& random) {
  const auto& scene = arrangement.scene();
  const auto& numbers = scene.orientations(piece);
  const int beds = static_cast<int>(arrangement.beds.size());
  const int count = static_cast<int>(numbers.size());
  const int first = random.below(beds * count);
  for (int k = 0; k < beds * count; ++k) {
    const int choice = (first + k) % (beds * count);
    const int bed = choice / count;
    const auto& as = scene.orientation(numbers[static_cast<std::size_t>(choice % count)]);
    const Box box = scene.domain(as, arrangement.beds[static_cast<std::size_t>(bed)]);
    if (box.low.x > box.high.x || box.low.y > box.high.y) continue;
    arrangement.put(
        piece, {bed,
                as.id,
                as.angle_deg,
                {random.between(box.low.x, box.high.x), random.between(box.low.y, box.high.y)}});
    return true;
  }
  return false;
}

}  // namespace drapewright::cutting
