#include "core/dressing/border_stretches.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <stdexcept>

#include "core/base/tolerances.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

using geometry::Point;
using geometry::Ring;
using geometry::Segment;

class StretchFinder {
 public:
  StretchFinder(const geometry::Region& no_film, const BorderLimits& limits)
      : zones_(no_film), edges_(no_film), limits_(limits) {}

  std::vector<BorderStretch> walk(const Ring& ring) {
    stretches_.clear();
    double from_cm = distance_at(ring.front());
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Segment edge{ring[i], ring[(i + 1) % ring.size()]};
      const double to_cm = distance_at(edge.to);
      cut(edge, from_cm, to_cm);
      from_cm = to_cm;
    }
    join_ends();
    for (BorderStretch& stretch : stretches_) find_least(stretch);
    return std::move(stretches_);
  }

 private:
  double distance_at(Point p) const {
    return geometry::contains(zones_, p) ? 0 : edges_.nearest(p).distance_cm;
  }

  std::array<double, 3> bounds_cm() const {
    return {tolerance::contact_cm, limits_.enough_cm, limits_.enough_cm + limits_.tracing_error_cm};
  }

  BorderKind kind_at(double distance_cm) const {
    if (distance_cm <= tolerance::contact_cm) return BorderKind::none;
    if (distance_cm < limits_.enough_cm) return BorderKind::too_short;
    return distance_cm < limits_.enough_cm + limits_.tracing_error_cm ? BorderKind::may_be_short
                                                                      : BorderKind::enough;
  }

  /// A distance changes no faster than the point moves: most edges need no closer look.
  void cut(const Segment& edge, double from_cm, double to_cm) {
    const double length_cm = geometry::distance(edge.from, edge.to);
    if (length_cm == 0) return;
    const BorderKind nearest = kind_at((from_cm + to_cm - length_cm) / 2);
    const BorderKind farthest = kind_at((from_cm + to_cm + length_cm) / 2);
    if (nearest == farthest) {
      append(nearest, edge);
      return;
    }
    const std::vector<double> shares = cuts_of(edge);
    const auto at = [&](double share) {
      return share == 1 ? edge.to : edge.from + share * (edge.to - edge.from);
    };
    for (std::size_t i = 1; i < shares.size(); ++i) {
      const double middle = (shares[i - 1] + shares[i]) / 2;
      append(kind_at(distance_at(at(middle))), {at(shares[i - 1]), at(shares[i])});
    }
  }

  /// Where the distance passes a bound, with 0 and 1.
  std::vector<double> cuts_of(const Segment& edge) const {
    std::vector<double> shares{0, 1};
    for (const double bound_cm : bounds_cm()) {
      for (const geometry::Part& part : edges_.parts_within(edge, bound_cm)) {
        shares.push_back(part.from);
        shares.push_back(part.to);
      }
    }
    std::ranges::sort(shares);
    const auto same = std::ranges::unique(shares);
    shares.erase(same.begin(), same.end());
    return shares;
  }

  void append(BorderKind kind, const Segment& part) {
    if (stretches_.empty() || stretches_.back().kind != kind) {
      stretches_.push_back({.kind = kind, .line = {part.from}, .length_cm = 0});
    }
    stretches_.back().line.push_back(part.to);
    stretches_.back().length_cm += geometry::distance(part.from, part.to);
  }

  /// A ring has no beginning.
  void join_ends() {
    if (stretches_.size() < 2 || stretches_.front().kind != stretches_.back().kind) return;
    BorderStretch& last = stretches_.back();
    const BorderStretch& first = stretches_.front();
    last.line.insert(last.line.end(), std::next(first.line.begin()), first.line.end());
    last.length_cm += first.length_cm;
    stretches_.erase(stretches_.begin());
  }

  void find_least(BorderStretch& stretch) const {
    const Point middle = stretch.line[stretch.line.size() / 2];
    stretch.least_line = {middle, middle};
    if (stretch.kind == BorderKind::none) {
      stretch.least = {0, limits_.tracing_error_cm};
      return;
    }
    stretch.least = {limits_.asked_cm, 0};
    for (std::size_t i = 1; i < stretch.line.size(); ++i) {
      const auto gap = edges_.gap_to({stretch.line[i - 1], stretch.line[i]}, stretch.least.value);
      if (!gap) continue;
      stretch.least = {gap->distance_cm, limits_.tracing_error_cm};
      stretch.least_line = gap->shortest;
    }
  }

  const geometry::Region& zones_;
  geometry::EdgeIndex edges_;
  BorderLimits limits_;
  std::vector<BorderStretch> stretches_;
};

BorderStretch whole_ring(const Ring& ring, double asked_cm) {
  BorderStretch stretch{.kind = BorderKind::enough,
                        .line = ring,
                        .length_cm = geometry::edge_length(ring),
                        .least = {asked_cm, 0},
                        .least_line = {ring.front(), ring.front()}};
  stretch.line.push_back(ring.front());
  return stretch;
}

}  // namespace

std::string_view name_of(BorderKind kind) {
  switch (kind) {
    case BorderKind::enough:
      return "enough";
    case BorderKind::may_be_short:
      return "may_be_short";
    case BorderKind::too_short:
      return "too_short";
    case BorderKind::none:
      return "none";
  }
  throw std::logic_error("a kind of border without a name");
}

BorderLimits border_limits(const wound::Case& value) {
  const double asked_cm = value.dressing.border_cm;
  return {asked_cm, std::min(asked_cm, *practice::limit("border_cm").usual_minimum),
          value.dressing.tracing_error_mm / 10};
}

std::vector<BorderStretch> border_stretches(const geometry::Region& wounds,
                                            const geometry::Region& no_film,
                                            const BorderLimits& limits) {
  std::vector<BorderStretch> all;
  std::optional<StretchFinder> finder;
  if (!no_film.empty()) finder.emplace(no_film, limits);
  const auto walk = [&](const Ring& ring) {
    if (ring.empty()) return;
    if (!finder) {
      all.push_back(whole_ring(ring, limits.asked_cm));
      return;
    }
    std::ranges::move(finder->walk(ring), std::back_inserter(all));
  };
  for (const geometry::Polygon& polygon : wounds) {
    walk(polygon.outer);
    for (const Ring& hole : polygon.holes) walk(hole);
  }
  return all;
}

double length_of(const std::vector<BorderStretch>& stretches, BorderKind kind) {
  double length_cm = 0;
  for (const BorderStretch& stretch : stretches) {
    if (stretch.kind == kind) length_cm += stretch.length_cm;
  }
  return length_cm;
}

}  // namespace drapewright::dressing
