#include "core/geometry/band.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"

namespace drapewright::geometry {
namespace {

/// Rounder is not asked for: a band is no smaller than some tenths of a millimetre.
constexpr int least_chords = 4;  // to a half circle
constexpr int most_chords = 2000;

void require_positive(double value, const char* what) {
  if (!(std::isfinite(value) && value > 0)) throw std::invalid_argument(what);
}

/// The half circle about `centre` that begins square to `along` on its right.
class HalfCircle {
 public:
  HalfCircle(double reach_cm, Chords chords, double max_error_cm) : chords_(chords) {
    const double ratio = chords == Chords::outside ? reach_cm / (reach_cm + max_error_cm)
                                                   : 1 - max_error_cm / reach_cm;
    const double half_step = std::acos(std::clamp(ratio, -1.0, 1.0));
    const double wanted = std::ceil(pi / 2 / half_step);
    count_ = static_cast<int>(std::clamp<double>(wanted, least_chords, most_chords));
    // Chords outside touch the circle in their middles, so that a straight side continues the
    // first and the last of them.
    radius_cm_ = chords == Chords::outside ? reach_cm / std::cos(pi / 2 / count_) : reach_cm;
  }

  void add(Point centre, Point along, Ring& ring) const {
    const double start = std::atan2(along.y, along.x) - pi / 2;
    const bool outside = chords_ == Chords::outside;
    const int corners = outside ? count_ : count_ + 1;
    for (int i = 0; i < corners; ++i) {
      const double angle = start + (i + (outside ? 0.5 : 0.0)) * pi / count_;
      ring.push_back(centre + radius_cm_ * Point{std::cos(angle), std::sin(angle)});
    }
  }

  /// Round one place, closed.
  Ring circle(Point centre) const {
    Ring ring;
    for (const double side : {1.0, -1.0}) {
      add(centre, {side, 0}, ring);
      if (chords_ == Chords::inside) ring.pop_back();  // the next half begins there
    }
    return ring;
  }

  /// Round one step from a to b.
  Ring capsule(Point a, Point b) const {
    Ring ring;
    add(b, b - a, ring);
    add(a, a - b, ring);
    return ring;
  }

 private:
  Chords chords_;
  int count_;
  double radius_cm_;
};

}  // namespace

Region band(const std::vector<Point>& line, double reach_cm, Chords chords, double max_error_cm) {
  if (line.empty()) throw std::invalid_argument("a band needs a line");
  require_positive(reach_cm, "a band's reach must be positive and finite");
  require_positive(max_error_cm, "a band's error must be positive and finite");
  const HalfCircle end(reach_cm, chords, max_error_cm);
  std::vector<Region> steps;
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (line[i - 1] == line[i]) continue;
    steps.push_back({{end.capsule(line[i - 1], line[i]), {}}});
  }
  if (steps.empty()) return {{end.circle(line.front()), {}}};
  return steps.size() == 1 ? std::move(steps.front()) : unite(steps);
}

}  // namespace drapewright::geometry
