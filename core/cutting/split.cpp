#include "core/cutting/split.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/cutting/fit.h"
#include "core/cutting/half.h"
#include "core/cutting/job_check.h"
#include "core/geometry/circle.h"

namespace drapewright::cutting {
namespace {

using geometry::Point;
using geometry::Polygon;

/// Parts are made to fit with this to spare on every side: they are cut on the overlay's grid.
constexpr double margin_cm = 1e-4;
/// Directions tried for a cut and for laying a grid of sheets over a piece.
constexpr int cut_directions = 24;
constexpr int grid_directions = 18;
constexpr int bisections = 9;
/// Positions tried where both sides fit, ends included.
constexpr int positions = 9;
/// How many of the most promising cuts are followed up: of the whole piece, of its parts, of
/// theirs.
constexpr std::size_t followed[] = {5, 3, 1};
/// The same where many parts are needed: every try costs as many times more.
constexpr std::size_t followed_of_many[] = {2, 1, 1};
constexpr int many_parts = 5;
/// The first way that is found has to do for each piece of a job with more misfits than this.
constexpr int many_misfits = 20;
constexpr std::size_t followed_of_many_misfits[] = {1, 1, 1};
/// So many cuts that leave slivers are followed up besides; none where one try has to do, as tries
/// multiply from part to part.
constexpr std::size_t sliver_tries = 2;
/// A piece in more parts than this is no longer of use: it stays whole.
constexpr int deepest = 64;

/// A cut with what is known of it before it is made.
struct Proposal {
  Cut cut;
  int parts = 0;     ///< at most so many, by the estimate
  double grade = 0;  ///< the lower the better: seam against the smaller side
};

/// A piece in parts, to be compared with other ways to cut it.
struct Division {
  std::vector<Polygon> parts;
  std::vector<geometry::Segment> seams;

  double seam_cm() const {
    double sum = 0;
    for (const auto& seam : seams) sum += geometry::distance(seam.from, seam.to);
    return sum;
  }
  double least_area_cm2() const {
    double least = std::numeric_limits<double>::infinity();
    for (const auto& part : parts) least = std::min(least, geometry::area(part));
    return least;
  }
  void add(const Division& other) {
    parts.insert(parts.end(), other.parts.begin(), other.parts.end());
    seams.insert(seams.end(), other.seams.begin(), other.seams.end());
  }
};

/// Short seams and a large smallest part in one figure that does not depend on the piece's size.
double grade(double seam_cm, double least_area_cm2) {
  return seam_cm / std::sqrt(std::max(least_area_cm2, 1e-12));
}

class Splitter {
 public:
  Splitter(const Job& job, double least_part_cm, const Progress& progress)
      : job_(job),
        least_part_cm_(least_part_cm),
        progress_(progress),
        sheets_(sheets_at_hand(job)) {}

  bool fits(const std::vector<Point>& points) const {
    return std::any_of(sheets_.begin(), sheets_.end(), [&](const SheetKind& sheet) {
      return turn_that_fits(points, job_, sheet).has_value();
    });
  }
  /// Nothing where no cutting helps.
  /// @param quickly  one of many pieces
  std::optional<Division> divide(const Polygon& piece, bool quickly) const {
    if (largest_usable_cm2() <= 0) return {};
    if (quickly) return divide(piece, 0, followed_of_many_misfits);
    const bool many = estimate(piece.outer) >= many_parts;
    return divide(piece, 0, many ? followed_of_many : followed);
  }

 private:
  double usable(double side) const { return side - 2 * (job_.edge_gap_cm + margin_cm); }
  double largest_usable_cm2() const {
    double most = 0;
    for (const auto& sheet : sheets_) {
      const double length = usable(sheet.length_cm), width = usable(sheet.width_cm);
      if (length > 0 && width > 0) most = std::max(most, length * width);
    }
    return most;
  }
  /// Answers most questions at a fraction of the cost: whether it fits laid along a direction.
  bool fits_along(const std::vector<Point>& points, double direction_deg) const {
    const double along = geometry::extent_along(points, direction_deg);
    const double across = geometry::extent_along(points, direction_deg + 90);
    return std::any_of(sheets_.begin(), sheets_.end(), [&](const SheetKind& sheet) {
      const double length = usable(sheet.length_cm), width = usable(sheet.width_cm);
      return (along <= length && across <= width) || (along <= width && across <= length);
    });
  }
  bool fits_with_margin(const std::vector<Point>& points, double likely_deg = 0) const {
    if (points.size() >= 3 && !job_.rotations_deg && fits_along(points, likely_deg)) return true;
    return std::any_of(sheets_.begin(), sheets_.end(), [&](const SheetKind& sheet) {
      return turn_that_fits(points, job_, sheet, margin_cm).has_value();
    });
  }

  /// An upper limit to the parts needed: a grid of sheets laid over the points.
  int estimate(const std::vector<Point>& points) const {
    if (points.size() < 3) return 0;
    if (fits_with_margin(points)) return 1;
    double least = std::numeric_limits<double>::infinity();
    for (const double angle : grid_angles()) {
      const double along = geometry::extent_along(points, angle);
      const double across = geometry::extent_along(points, angle + 90);
      for (const auto& sheet : sheets_) {
        const double length = usable(sheet.length_cm), width = usable(sheet.width_cm);
        if (length <= 0 || width <= 0) continue;
        least = std::min(least, std::ceil(along / length) * std::ceil(across / width));
      }
    }
    return static_cast<int>(std::clamp(least, 2.0, 1e6));
  }
  std::vector<double> grid_angles() const {
    std::vector<double> result;
    if (job_.rotations_deg) {
      for (const double angle : *job_.rotations_deg) result.push_back(-angle);
    } else {
      for (int k = 0; k < 2 * grid_directions; ++k) result.push_back(180.0 * k / grid_directions);
    }
    return result;
  }

  /// The farthest position from `low` on at which the near side still fits.
  double farthest_that_fits(const Polygon& piece, Point normal, double low, double high) const {
    const double likely_deg = geometry::degrees(std::atan2(normal.y, normal.x));
    for (int k = 0; k < bisections; ++k) {
      const double middle = (low + high) / 2;
      const bool fits = fits_with_margin(near_half(piece, {normal, middle}).points, likely_deg);
      (fits ? low : high) = middle;
    }
    return low;
  }

  void propose(const Polygon& piece, const Cut& cut, std::vector<Proposal>& result) const {
    const Half near = near_half(piece, cut), far = near_half(piece, cut.reversed());
    const double least = std::min(near.area_cm2, far.area_cm2);
    if (!(least > 1e-3) || near.seams == 0) return;
    const int sides = estimate(near.points) + estimate(far.points);
    // A cut that runs through bays leaves more than two parts; a hole takes one of them back.
    const int extra = std::max(0, near.seams - 1 - static_cast<int>(piece.holes.size()));
    result.push_back({cut, sides + extra, grade(near.seam_cm, least)});
  }

  void propose_along(const Polygon& piece, double direction_deg,
                     std::vector<Proposal>& result) const {
    const Point normal{std::cos(geometry::radians(direction_deg)),
                       std::sin(geometry::radians(direction_deg))};
    const auto ends = geometry::extremes_along(piece.outer, direction_deg);
    const double low = geometry::dot(normal, ends.from), high = geometry::dot(normal, ends.to);
    const double near = farthest_that_fits(piece, normal, low, high);
    const double far = -farthest_that_fits(piece, -1.0 * normal, -high, -low);
    if (far <= near) {
      for (int k = 0; k < positions; ++k) {
        propose(piece, {normal, far + (near - far) * k / (positions - 1)}, result);
      }
      return;
    }
    propose(piece, {normal, near}, result);
    propose(piece, {normal, far}, result);
    for (const int shares : {2, 3, 4})
      propose(piece, {normal, low + (high - low) / shares}, result);
  }

  std::vector<Proposal> proposals(const Polygon& piece) const {
    std::vector<Proposal> result;
    for (int k = 0; k < cut_directions; ++k) {
      progress_.at(0);
      propose_along(piece, 180.0 * k / cut_directions, result);
    }
    std::stable_sort(result.begin(), result.end(), [](const Proposal& a, const Proposal& b) {
      return std::tie(a.parts, a.grade) < std::tie(b.parts, b.grade);
    });
    return result;
  }

  bool is_sliver(const Polygon& part) const {
    const auto circle = geometry::largest_inscribed_circle({part});
    return !circle || 2 * circle->radius_cm < least_part_cm_;
  }
  /// Slivers count before all: a part too narrow to handle is worse than one part more.
  std::tuple<std::ptrdiff_t, std::size_t, double> rank(const Division& division) const {
    const auto slivers = std::count_if(division.parts.begin(), division.parts.end(),
                                       [&](const Polygon& part) { return is_sliver(part); });
    return {slivers, division.parts.size(), grade(division.seam_cm(), division.least_area_cm2())};
  }

  std::optional<Division> divide(const Polygon& piece, int depth, const std::size_t* tries) const {
    if (fits_with_margin(piece.outer)) return Division{{piece}, {}};
    if (depth > deepest) return {};
    std::optional<Division> best;
    const std::size_t most = tries[std::min(depth, 2)];
    std::size_t tried = 0, with_slivers = 0;
    for (const Proposal& proposal : proposals(piece)) {
      if (tried == most || with_slivers == sliver_tries) break;
      if (most == 1 && best) break;
      if (best && proposal.parts > static_cast<int>(best->parts.size()) + 1) break;
      auto division = follow(piece, proposal.cut, depth, tries);
      if (!division) continue;
      const bool clean = std::get<0>(rank(*division)) == 0;
      if (!best || rank(*division) < rank(*best)) best = std::move(division);
      ++(clean ? tried : with_slivers);
    }
    return best;
  }
  std::optional<Division> follow(const Polygon& piece, const Cut& cut, int depth,
                                 const std::size_t* tries) const {
    const Halves halves = cut_apart(piece, cut);
    if (halves.parts.size() < 2) return {};
    Division result{{}, halves.seams};
    for (const auto& part : halves.parts) {
      const auto division = divide(part, depth + 1, tries);
      if (!division) return {};
      result.add(*division);
    }
    return result;
  }

  const Job& job_;
  double least_part_cm_;
  const Progress& progress_;
  std::vector<SheetKind> sheets_;
};

/// Outer ring counter-clockwise, holes clockwise, whichever way they were given.
Polygon wound_right(Polygon piece) {
  if (geometry::signed_area(piece.outer) < 0) std::reverse(piece.outer.begin(), piece.outer.end());
  for (auto& hole : piece.holes) {
    if (geometry::signed_area(hole) > 0) std::reverse(hole.begin(), hole.end());
  }
  return piece;
}

}  // namespace

SplitJob split_to_fit(const Job& job, double least_part_cm, const Progress& progress) {
  check(job);
  if (!(std::isfinite(least_part_cm) && least_part_cm >= 0)) {
    throw InputError(say("the least part is {1}", {format_short(least_part_cm)}), say("0 or more"));
  }
  const Splitter splitter(job, least_part_cm, progress);
  SplitJob result{job, {}, {}};
  result.job.pieces.clear();
  // The layers of a straight wall are all the same piece.
  std::vector<std::optional<Division>> divisions(job.pieces.size());
  const auto misfits = std::ranges::count_if(
      job.pieces, [&](const Polygon& piece) { return !splitter.fits(piece.outer); });
  for (std::size_t i = 0; i < job.pieces.size(); ++i) {
    const int number = static_cast<int>(i);
    const auto first = std::ranges::find(job.pieces, job.pieces[i]) - job.pieces.begin();
    std::optional<Division>& division = divisions[i];
    if (first < number) {
      division = divisions[static_cast<std::size_t>(first)];
    } else if (!splitter.fits(job.pieces[i].outer)) {
      division = splitter.divide(wound_right(job.pieces[i]), misfits > many_misfits);
    }
    if (!division) division = Division{{job.pieces[i]}, {}};
    for (const auto& part : division->parts) {
      result.job.pieces.push_back(part);
      result.piece_of.push_back(number);
    }
    for (const auto& seam : division->seams) result.seams.push_back({number, seam});
  }
  return result;
}

}  // namespace drapewright::cutting
