#include "core/report/label_placer.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr double sample_mm = 1.2;  ///< finer than text is high: no line slips between samples
constexpr double clearance_mm = 0.5;
constexpr double first_gap_mm = 1.2;
constexpr double near_mm = 10;  ///< beyond it any free place will do

bool touch(const Box& a, const Box& b) {
  return a.low.x < b.high.x + clearance_mm && b.low.x < a.high.x + clearance_mm &&
         a.low.y < b.high.y + clearance_mm && b.low.y < a.high.y + clearance_mm;
}

Box box_about(Point centre, double width, double height) {
  return {{centre.x - width / 2, centre.y - height / 2},
          {centre.x + width / 2, centre.y + height / 2}};
}

}  // namespace

void LabelPlacer::avoid(const std::vector<Point>& line) {
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (lines_.empty() || i == 0 || geometry::distance(lines_.back(), line[i]) >= sample_mm) {
      const Point from = i == 0 ? line[0] : lines_.back();
      const int steps = static_cast<int>(geometry::distance(from, line[i]) / sample_mm);
      for (int step = 1; step < steps; ++step) {
        lines_.push_back(from + (double(step) / steps) * (line[i] - from));
      }
      lines_.push_back(line[i]);
    }
  }
}

bool LabelPlacer::is_free(Box box) const {
  if (box.low.x < field_.low.x || box.low.y < field_.low.y || box.high.x > field_.high.x ||
      box.high.y > field_.high.y) {
    return false;
  }
  return std::ranges::none_of(blocked_, [&](const Box& other) { return touch(box, other); });
}

int LabelPlacer::lines_under(Box box) const {
  return static_cast<int>(std::ranges::count_if(lines_, [&](Point p) {
    return p.x > box.low.x && p.x < box.high.x && p.y > box.low.y && p.y < box.high.y;
  }));
}

/// Sixteen places around the anchor: right, above, left and below first, then between them.
std::optional<Box> LabelPlacer::best_at_distance(Point anchor, double width, double height,
                                                 double gap) const {
  std::optional<Box> best;
  int fewest = 0;
  for (int i = 0; i < 16; ++i) {
    const int turn = i < 4 ? 4 * i : i < 8 ? 4 * (i - 4) + 2 : 2 * (i - 8) + 1;
    const double angle = turn * geometry::pi / 8;
    const Point centre{anchor.x + std::cos(angle) * (width / 2 + gap),
                       anchor.y - std::sin(angle) * (height / 2 + gap)};
    const Box box = box_about(centre, width, height);
    if (!is_free(box)) continue;
    const int lines = lines_under(box);
    if (!best || lines < fewest) {
      best = box;
      fewest = lines;
    }
    if (fewest == 0) break;
  }
  return best;
}

std::optional<Box> LabelPlacer::place(Point anchor, double width, double height,
                                      Caption::Where where) {
  std::optional<Box> chosen;
  int fewest = 0;
  if (where != Caption::Where::beside) {
    const Box box = box_about(anchor, width, height);
    if (is_free(box)) {
      chosen = box;
      fewest = where == Caption::Where::on ? 0 : lines_under(box);
    }
  }
  const double farthest = field_.width() + field_.height();
  for (double gap = first_gap_mm; !(chosen && fewest == 0) && gap < farthest; gap *= 1.4) {
    const std::optional<Box> found = best_at_distance(anchor, width, height, gap);
    if (!found) continue;
    const int lines = lines_under(*found);
    // A place a little farther off is worth it only for freedom from lines.
    if (!chosen || lines < fewest) {
      chosen = found;
      fewest = lines;
    }
    if (where == Caption::Where::on || gap > near_mm) break;
  }
  if (chosen) block(*chosen);
  return chosen;
}

}  // namespace drapewright::report
