#include "core/geometry/medial/clearance_map.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "core/base/say.h"
#include "core/geometry/distance.h"
#include "core/geometry/medial/crossing_test.h"
#include "core/geometry/medial/diagram.h"
#include "core/geometry/medial/narrow_places.h"
#include "core/geometry/medial/piece_tree.h"
#include "core/geometry/medial/pieces.h"
#include "core/geometry/medial/soundness.h"

namespace drapewright::geometry {
namespace {

using tolerance::grid_cm;

/// Odd angles, so that nothing in a drawing is parallel to the grid; the second is added for each
/// further attempt.
constexpr double first_turn_rad = 0.1234;
constexpr double next_turn_rad = 0.7321;
/// Attempts with the thinned outline, and then with every point of it.
constexpr int thinned_attempts = 3;
constexpr int most_attempts = 6;
/// Room, in grid units, within which an offset looks for a distance that is no vertex's: curves
/// through a vertex touch themselves.
constexpr double room_for_level = 3;
/// Arcs have at least eight chords to the circle.
constexpr double widest_half_step = pi / 8;

void require(bool holds, const char* what) {
  if (!holds) throw std::invalid_argument(what);
}

void require_usable(const Region& region) {
  const auto usable = [](const Ring& ring) {
    return ring.size() >= 3 && std::all_of(ring.begin(), ring.end(), [](Point p) {
             return std::isfinite(p.x) && std::isfinite(p.y);
           });
  };
  for (const Polygon& polygon : region)
    require(
        usable(polygon.outer) && std::all_of(polygon.holes.begin(), polygon.holes.end(), usable),
        "clearance map: rings need three points or more, all finite");
}

void require_fits_grid(const Region& region, const medial::Frame& frame) {
  const double most = 0.25 * std::numeric_limits<std::int32_t>::max();
  for (const Polygon& polygon : region)
    for (const Point p : polygon.outer)
      require(norm(frame.to_grid(p)) < most, "clearance map: the region is too large");
}

}  // namespace

struct ClearanceMap::Impl {
  Impl(const Region& given, double thinning_cm) : region(given) {
    require(std::isfinite(thinning_cm) && thinning_cm >= 0,
            "clearance map: thinning must be finite and >= 0");
    require_usable(region);
    if (region.empty()) return;
    while (attempts < most_attempts) {
      doubt = build(attempts < thinned_attempts ? thinning_cm : 0);
      ++attempts;
      if (doubt.empty()) break;
    }
  }

  /// @returns what is wrong with it, or nothing
  std::string build(double thinning_cm) {
    tree.reset();
    frame.emplace(region, first_turn_rad + next_turn_rad * attempts);
    require_fits_grid(region, *frame);
    const medial::Outline outline = medial::lay_on_grid(region, *frame, thinning_cm);
    stray_cm = outline.stray * grid_cm;
    if (outline.lost_rings > 0) return say("a part of the outline is too thin to measure");
    if (medial::edges_meet(outline)) return say("the outline touches or crosses itself");
    std::string fault;
    for (const auto circles : {medial::Circles::quick, medial::Circles::exact}) {
      diagram = medial::build_diagram(outline, circles);
      fault = diagram ? medial::find_fault(*diagram) : say("the diagram of the outline is broken");
      if (fault.empty()) break;
    }
    if (fault.empty()) tree.emplace(*diagram);
    return fault;
  }

  /// The clearance at which a curve is drawn so that its chords keep `distance_cm`, or nothing
  /// when the error allowed leaves no room for chords.
  std::optional<medial::Level> level(double distance_cm, double max_error_cm) const {
    const double keep = (distance_cm + stray_cm) / grid_cm;
    const double room = (max_error_cm - 2 * stray_cm) / grid_cm - room_for_level;
    if (room <= 0) return std::nullopt;
    const double half_step = std::min(std::acos(keep / (keep + room)), widest_half_step);
    const double low = keep / std::cos(half_step);
    return medial::Level{medial::clear_of_vertices(*diagram, low, room_for_level), 2 * half_step};
  }

  Point to_cm(Point p) const { return frame->from_grid(p); }
  void to_cm(Region& shape) const {
    for (Polygon& polygon : shape) {
      for (Point& p : polygon.outer) p = to_cm(p);
      for (Ring& hole : polygon.holes)
        for (Point& p : hole) p = to_cm(p);
    }
  }

  Offset refused(std::string why) const { return {{}, false, attempts, std::move(why)}; }

  Offset offset(medial::Side side, double distance_cm, double max_error_cm) const {
    require(std::isfinite(distance_cm) && distance_cm >= 0, "offset: distance must be >= 0");
    require(std::isfinite(max_error_cm) && max_error_cm > 0, "offset: error must be > 0");
    if (!doubt.empty()) return refused(doubt);
    if (distance_cm == 0 || region.empty()) return {region, true, std::max(attempts, 1), {}};
    const auto at = level(distance_cm, max_error_cm);
    if (!at) return refused(say("the error allowed is finer than the outline was measured"));
    auto pieces = side == medial::Side::inside ? medial::inner_pieces(*diagram, *tree, *at)
                                               : medial::outer_pieces(*diagram, *at);
    if (!pieces) return refused(say("the curves at this distance do not fit together"));
    to_cm(*pieces);
    return {std::move(*pieces), true, attempts, {}};
  }

  void require_sound() const {
    if (!doubt.empty()) throw std::logic_error("clearance map that is not sound was asked");
  }

  Region region;
  std::optional<medial::Frame> frame;
  std::optional<medial::Diagram> diagram;
  std::optional<medial::PieceTree> tree;
  std::string doubt;
  int attempts = 0;
  double stray_cm = 0;
};

ClearanceMap::ClearanceMap(const Region& region, double thinning_cm)
    : impl_(std::make_unique<const Impl>(region, thinning_cm)) {}
ClearanceMap::~ClearanceMap() = default;
ClearanceMap::ClearanceMap(ClearanceMap&&) noexcept = default;
ClearanceMap& ClearanceMap::operator=(ClearanceMap&&) noexcept = default;

bool ClearanceMap::sound() const { return impl_->doubt.empty(); }
const std::string& ClearanceMap::doubt() const { return impl_->doubt; }
int ClearanceMap::attempts() const { return impl_->attempts; }
double ClearanceMap::stray_cm() const { return impl_->stray_cm; }
const Region& ClearanceMap::region() const { return impl_->region; }

Offset ClearanceMap::inset(double distance_cm, double max_error_cm) const {
  return impl_->offset(medial::Side::inside, distance_cm, max_error_cm);
}

Offset ClearanceMap::outset(double distance_cm, double max_error_cm) const {
  return impl_->offset(medial::Side::outside, distance_cm, max_error_cm);
}

int ClearanceMap::pieces(double distance_cm, double max_error_cm) const {
  impl_->require_sound();
  if (impl_->region.empty() || distance_cm == 0) return static_cast<int>(impl_->region.size());
  const auto at = impl_->level(distance_cm, max_error_cm);
  require(at.has_value(), "pieces: the error allowed is finer than the outline was measured");
  return impl_->tree->pieces(at->clearance);
}

std::optional<Circle> ClearanceMap::largest_circle() const {
  impl_->require_sound();
  if (impl_->region.empty()) return std::nullopt;
  const auto& peaks = impl_->tree->peaks();
  const auto highest = std::max_element(peaks.begin(), peaks.end(),
                                        [](auto& a, auto& b) { return a.clearance < b.clearance; });
  const Point centre = impl_->to_cm(impl_->diagram->vertex(highest->vertex).at);
  double radius = std::numeric_limits<double>::infinity();
  for (const Polygon& polygon : impl_->region) {
    const auto measure = [&](const Ring& ring) {
      for (std::size_t i = 0; i < ring.size(); ++i)
        radius = std::min(
            radius, distance(centre, nearest_on({ring[i], ring[(i + 1) % ring.size()]}, centre)));
    };
    measure(polygon.outer);
    for (const Ring& hole : polygon.holes) measure(hole);
  }
  return Circle{centre, radius};
}

std::vector<Neck> ClearanceMap::necks(double narrower_than_cm) const {
  impl_->require_sound();
  std::vector<Neck> necks;
  if (impl_->region.empty()) return necks;
  const auto& saddles = impl_->tree->saddles();
  const auto lobes = impl_->tree->lobes();
  for (std::size_t i = 0; i < saddles.size(); ++i) {
    const double width = 2 * saddles[i].clearance * grid_cm;
    if (width >= narrower_than_cm) break;
    const Segment across = medial::across(*impl_->diagram, saddles[i]);
    necks.push_back({width,
                     {impl_->to_cm(across.from), impl_->to_cm(across.to)},
                     lobes[i].area * grid_cm * grid_cm,
                     2 * lobes[i].clearance * grid_cm});
  }
  return necks;
}

Unreached ClearanceMap::unreached(double inset_cm, double band_cm, double max_error_cm) const {
  require(std::isfinite(inset_cm) && inset_cm > 0, "unreached: inset must be > 0");
  require(std::isfinite(band_cm) && band_cm >= 0, "unreached: band must be >= 0");
  require(std::isfinite(max_error_cm) && max_error_cm > 0, "unreached: error must be > 0");
  impl_->require_sound();
  Unreached result;
  if (impl_->region.empty()) return result;
  const auto at = impl_->level(inset_cm, max_error_cm);
  require(at.has_value(), "unreached: the error allowed is finer than the outline was measured");
  result.arms = medial::unreached_arms(*impl_->diagram, *impl_->frame, *at, inset_cm + band_cm);
  for (const Arm& arm : result.arms) result.area_cm2 += arm.area_cm2;
  std::sort(result.arms.begin(), result.arms.end(),
            [](const Arm& a, const Arm& b) { return a.area_cm2 > b.area_cm2; });
  return result;
}

}  // namespace drapewright::geometry
