#include "core/geometry/offset_by_buffer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <exception>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "core/geometry/buffer.h"
#include "core/geometry/edge_tree.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset_check.h"
#include "core/geometry/ring_mending.h"
#include "core/geometry/shapes.h"
#include "core/geometry/thinning.h"

namespace drapewright::geometry {
namespace {

/// How one attempt goes about it: later ones thin less and leave dents alone, in case it was the
/// preparation that spoilt the outline.
struct Recipe {
  double thinning_share;  // of tolerance::thinning_cm
  bool bridges_dents;
};
constexpr std::array<Recipe, 8> recipes{{{1, true},
                                         {1, true},
                                         {1, false},
                                         {1, false},
                                         {0.5, false},
                                         {0.5, false},
                                         {0.1, false},
                                         {0.1, false}}};

/// How the allowed error is shared out, so that the result lies on the safe side of the true curve
/// all the same: the offset is computed a margin farther out, and every error eats into the rest.
struct Budget {
  double thinning_cm;
  double jitter_cm;
  double dent_cm;    ///< by which bridged dents may move the curve
  double margin_cm;  ///< thinning and jitter together, either way
  double sag_cm;     ///< of the chords that stand in for arcs

  Budget(double max_error_cm, const Recipe& recipe)
      : thinning_cm(recipe.thinning_share * std::min(tolerance::thinning_cm, max_error_cm / 5)),
        jitter_cm(std::min(tolerance::jitter_cm, max_error_cm / 500)),
        dent_cm(recipe.bridges_dents ? max_error_cm / 5 : 0),
        margin_cm(thinning_cm + 2 * jitter_cm),
        sag_cm(0.95 * max_error_cm - 2 * margin_cm - dent_cm) {}
};

/// The chord of an angle 2 pi / N on a circle of radius r cos-reaches in to r cos(pi / N).
int points_per_circle(double distance_cm, double sag_cm) {
  constexpr double most = 1e5;
  const double half_angle = std::acos(distance_cm / (distance_cm + sag_cm));
  if (!(half_angle * most > pi)) {
    throw std::invalid_argument("an offset's error is too small for its distance");
  }
  return std::max(16, static_cast<int>(std::ceil(pi / half_angle)));
}

/// The widest mouth of a dent that a curve at this distance may skip.
double mouth(double distance_cm, double dent_cm) {
  const double allowed = std::min(dent_cm, distance_cm);
  const double widest = 2 * std::sqrt(allowed * (2 * distance_cm - allowed));
  return std::min(widest, distance_cm);
}

/// The region's offset about an origin of its own, attempt by attempt.
class Offsetting {
 public:
  Offsetting(const Region& region, Direction direction, double distance_cm, double max_error_cm)
      : middle_(middle_of(region)),
        source_(oriented(moved(region, -1 * middle_))),
        edges_(edges_of(source_)),
        task_{source_, edges_, direction, distance_cm, max_error_cm} {}

  Offset run() const {
    Offset result;
    for (const Recipe& recipe : recipes) {
      ++result.attempts;
      Region candidate = attempt(recipe, result.attempts, result.doubt);
      if (!result.doubt.empty()) continue;
      result.region = moved(std::move(candidate), middle_);
      result.verified = true;
      return result;
    }
    return result;
  }

 private:
  static Point middle_of(const Region& region) {
    const Box box = bounding_box(outer_points(region));
    return 0.5 * (box.low + box.high);
  }

  static Region oriented(Region region) {
    for (Polygon& polygon : region) orient(polygon);
    return region;
  }

  Region attempt(const Recipe& recipe, int number, std::string& doubt) const {
    const Budget budget(task_.max_error_cm, recipe);
    const double reach = task_.distance_cm + budget.margin_cm;
    const int points = points_per_circle(reach, budget.sag_cm);
    const double radius = reach / std::cos(pi / points);
    const Region stand_in = prepared(budget, static_cast<std::uint64_t>(number));
    try {
      const bool inwards = task_.direction == Direction::inwards;
      Region result =
          mended_region(unverified_buffer(stand_in, inwards ? -radius : radius, points));
      doubt = find_doubt(task_, {stand_in, radius + 1e-6}, result);
      return result;
    } catch (const std::exception& fault) {
      doubt = fault.what();
      return {};
    }
  }

  Region prepared(const Budget& budget, std::uint64_t seed) const {
    const bool inwards = task_.direction == Direction::inwards;
    const Dents dents = inwards ? Dents::cut_off : Dents::fill_outer;
    const auto prepare = [&](const Ring& ring) {
      const Ring smooth = budget.dent_cm > 0
                              ? without_dents(ring, mouth(task_.distance_cm, budget.dent_cm), dents)
                              : ring;
      const Ring thin = thinned(smooth, budget.thinning_cm);
      return jittered(thin.size() < 3 ? smooth : thin, budget.jitter_cm, seed);
    };
    Region result;
    for (const Polygon& polygon : source_) {
      Polygon part{prepare(polygon.outer), {}};
      for (const Ring& hole : polygon.holes) part.holes.push_back(prepare(hole));
      result.push_back(std::move(part));
    }
    return result;
  }

  static Region mended_region(const Region& region) {
    Region result;
    for (const Polygon& polygon : region) {
      Polygon part{mended(polygon.outer).ring, {}};
      for (const Ring& hole : polygon.holes) part.holes.push_back(mended(hole).ring);
      result.push_back(std::move(part));
    }
    return result;
  }

  Point middle_;
  Region source_;
  EdgeTree edges_;
  OffsetTask task_;
};

}  // namespace

void require_offset_domain(const Region& region, double distance_cm, double max_error_cm) {
  if (!(std::isfinite(distance_cm) && distance_cm >= 0)) {
    throw std::invalid_argument("an offset's distance is not >= 0");
  }
  if (!(std::isfinite(max_error_cm) && max_error_cm > 0)) {
    throw std::invalid_argument("an offset's error is not > 0");
  }
  for (const Polygon& polygon : region) {
    if (polygon.outer.size() < 3) throw std::invalid_argument("a polygon has fewer than 3 points");
  }
}

Offset inset_by_buffer(const Region& region, double distance_cm, double max_error_cm) {
  require_offset_domain(region, distance_cm, max_error_cm);
  if (distance_cm <= 0 || region.empty()) return {.region = region, .verified = true};
  // Each polygon alone: the way from inside one to another's edge crosses its own edge first.
  Offset all{.verified = true};
  for (const Polygon& polygon : region) {
    const Region one{polygon};
    Offset part = Offsetting(one, Direction::inwards, distance_cm, max_error_cm).run();
    all.attempts = std::max(all.attempts, part.attempts);
    if (!part.verified) return part;
    std::move(part.region.begin(), part.region.end(), std::back_inserter(all.region));
  }
  return all;
}

Offset outset_by_buffer(const Region& region, double distance_cm, double max_error_cm) {
  require_offset_domain(region, distance_cm, max_error_cm);
  if (distance_cm <= 0 || region.empty()) return {.region = region, .verified = true};
  return Offsetting(region, Direction::outwards, distance_cm, max_error_cm).run();
}

}  // namespace drapewright::geometry
