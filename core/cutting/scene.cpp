#include "core/cutting/scene.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "core/cutting/fit.h"

namespace drapewright::cutting {
namespace {

/// Corners of two orientations this near to each other are the same.
constexpr double same_cm = 1e-9;
constexpr std::size_t most_natural_angles = 16;

/// Angles that lay a long edge of the hull along the bed's side, longest edge first.
std::vector<double> natural_angles(const StandIn& piece) {
  const auto& hull = piece.hull;
  std::vector<std::size_t> order(hull.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  auto edge = [&](std::size_t k) { return hull[(k + 1) % hull.size()] - hull[k]; };
  std::sort(order.begin(), order.end(),
            [&](auto a, auto b) { return geometry::norm(edge(a)) > geometry::norm(edge(b)); });
  std::vector<double> result;
  for (const auto k : order) {
    const double direction = geometry::degrees(std::atan2(edge(k).y, edge(k).x));
    for (int quarter = 0; quarter < 4; ++quarter) {
      double angle = std::fmod(720 + 90 * quarter - direction, 360);
      if (std::abs(angle - std::round(angle / 90) * 90) < 1e-9) {
        angle = std::fmod(std::round(angle / 90) * 90, 360);
      }
      const bool known = std::any_of(result.begin(), result.end(), [&](double a) {
        return std::abs(std::remainder(a - angle, 360)) < 1;
      });
      if (!known && result.size() < most_natural_angles) result.push_back(angle);
    }
  }
  return result;
}

bool same_corners(const Oriented& a, const Oriented& b) {
  auto has = [](const Oriented& o, Point p) {
    for (const auto& part : o.parts) {
      for (const auto& q : part.corners) {
        if (std::abs(p.x - q.x) < same_cm && std::abs(p.y - q.y) < same_cm) return true;
      }
    }
    return false;
  };
  return std::all_of(a.parts.begin(), a.parts.end(), [&](const Convex& part) {
    return std::all_of(part.corners.begin(), part.corners.end(),
                       [&](Point p) { return has(b, p); });
  });
}

int find_or_add(const Job& job, std::size_t piece, std::vector<std::size_t>& first_of_type) {
  for (std::size_t t = 0; t < first_of_type.size(); ++t) {
    if (job.pieces[first_of_type[t]] == job.pieces[piece]) return static_cast<int>(t);
  }
  first_of_type.push_back(piece);
  return static_cast<int>(first_of_type.size()) - 1;
}

/// The turns at which a piece fits the sheets alone: where a piece only just fits, no other turn
/// will do.
std::vector<double> turns_that_fit(const Job& job, const geometry::Ring& outline) {
  std::vector<double> result;
  for (const auto& sheet : sheets_at_hand(job)) {
    if (const auto turn = turn_that_fits(outline, job, sheet)) result.push_back(*turn);
  }
  return result;
}

/// A stand-in that fits every sheet that the piece itself fits.
StandIn fitting_stand_in(const Job& job, const geometry::Polygon& piece, Scene::Detail detail) {
  if (detail == Scene::Detail::hulls) return make_hull_stand_in(piece);
  StandIn result = make_stand_in(piece);
  if (turns_that_fit(job, result.hull).size() < turns_that_fit(job, piece.outer).size()) {
    result = make_exact_stand_in(piece);
  }
  return result;
}

std::vector<double> angles_to_try(const Job& job, const StandIn& piece) {
  if (job.rotations_deg) return *job.rotations_deg;
  std::vector<double> result = natural_angles(piece);
  if (job.strip_width_cm) return result;
  for (const double turn : turns_that_fit(job, piece.hull)) result.push_back(turn);
  return result;
}

}  // namespace

Scene::Scene(const Job& job, Detail detail)
    : any_angle_(!job.rotations_deg), edge_gap_cm_(job.edge_gap_cm), no_fits_(0, job.gap_cm) {
  std::vector<std::size_t> first_of_type;
  for (std::size_t i = 0; i < job.pieces.size(); ++i) {
    type_.push_back(find_or_add(job, i, first_of_type));
  }
  for (const auto piece : first_of_type) {
    types_.push_back(fitting_stand_in(job, job.pieces[piece], detail));
    of_type_.emplace_back();
    for (const double angle : angles_to_try(job, types_.back())) {
      Oriented oriented;
      orient(types_.back(), angle, oriented);
      // Half a turn leaves a parallelogram as it was: nothing is to gain from trying it twice.
      const auto& known = of_type_.back();
      if (std::any_of(known.begin(), known.end(),
                      [&](int number) { return same_corners(oriented, orientation(number)); })) {
        continue;
      }
      oriented.id = static_cast<int>(catalogue_.size());
      of_type_.back().push_back(oriented.id);
      catalogue_.push_back(std::move(oriented));
    }
  }
  no_fits_ = NoFitTable(static_cast<int>(catalogue_.size()), no_fits_.gap_cm());
}

double Scene::pieces_area_cm2() const {
  double sum = 0;
  for (int i = 0; i < pieces(); ++i) sum += stand_in(i).area_cm2;
  return sum;
}

Box Scene::domain(const Oriented& piece, const Bed& bed) const {
  Box box{{edge_gap_cm_ - piece.box.low.x, edge_gap_cm_ - piece.box.low.y},
          {bed.length_cm - edge_gap_cm_ - piece.box.high.x,
           bed.width_cm - edge_gap_cm_ - piece.box.high.y}};
  // A piece that fits exactly must not fail by the last digit.
  auto close = [](double& low, double& high) {
    if (high < low && high > low - touch_cm) low = high = (low + high) / 2;
  };
  close(box.low.x, box.high.x);
  close(box.low.y, box.high.y);
  return box;
}

Placement Scene::placement(const Job& job, int piece, const Pose& pose) const {
  const Turn turn = Turn::by_deg(pose.angle_deg);
  Placement result{piece, pose.angle_deg, pose.at - turn(stand_in(piece).reference), {}};
  result.outline_cm = job.pieces[static_cast<std::size_t>(piece)];
  auto move = [&](geometry::Ring& ring) {
    for (auto& p : ring) p = turn(p) + result.shift_cm;
  };
  move(result.outline_cm.outer);
  for (auto& hole : result.outline_cm.holes) move(hole);
  return result;
}

geometry::Polygon Scene::cover(const Placement& placed) const {
  const StandIn& piece = stand_in(placed.piece);
  const Turn turn = Turn::by_deg(placed.angle_deg);
  const Point at = placed.shift_cm + turn(piece.reference);
  geometry::Polygon result = piece.cover;
  for (auto& p : result.outer) p = turn(p) + at;
  for (auto& hole : result.holes) {
    for (auto& p : hole) p = turn(p) + at;
  }
  return result;
}

Arrangement::Arrangement(Scene& scene)
    : scene_(&scene),
      poses_(static_cast<std::size_t>(scene.pieces())),
      own_(poses_.size()),
      scratch_(poses_.size()) {}

void Arrangement::put(int piece, const Pose& pose) {
  poses_[static_cast<std::size_t>(piece)] = pose;
  if (pose.bed >= 0 && pose.orientation < 0) {
    orient(scene_->stand_in(piece), pose.angle_deg, own_[static_cast<std::size_t>(piece)]);
  }
}

void Arrangement::restore(const std::vector<Pose>& poses) {
  for (int i = 0; i < scene_->pieces(); ++i) put(i, poses[static_cast<std::size_t>(i)]);
}

const Oriented& Arrangement::oriented(int piece) const {
  const int number = pose(piece).orientation;
  return number >= 0 ? scene_->orientation(number) : own_[static_cast<std::size_t>(piece)];
}

const Oriented& Arrangement::oriented(int piece, const Pose& pose, Oriented& scratch) const {
  if (pose.orientation >= 0) return scene_->orientation(pose.orientation);
  orient(scene_->stand_in(piece), pose.angle_deg, scratch);
  return scratch;
}

void Arrangement::look(int piece, const Oriented& as, int bed, const double* weights,
                       Field& field) {
  field.reset(scene_->domain(as, beds[static_cast<std::size_t>(bed)]));
  if (!field.fits()) return;
  for (int other = 0; other < scene_->pieces(); ++other) {
    if (other == piece || pose(other).bed != bed) continue;
    const auto i = static_cast<std::size_t>(other);
    const auto& no_fit = scene_->no_fits().between(oriented(other), as, scratch_[i]);
    field.add(no_fit, pose(other).at, weights ? weights[other] : 1);
  }
}

bool Arrangement::pull_in() {
  for (int i = 0; i < scene_->pieces(); ++i) {
    if (pose(i).bed < 0) continue;
    const Box box = scene_->domain(oriented(i), beds[static_cast<std::size_t>(pose(i).bed)]);
    if (box.low.x > box.high.x || box.low.y > box.high.y) return false;
    auto& at = poses_[static_cast<std::size_t>(i)].at;
    at = {std::clamp(at.x, box.low.x, box.high.x), std::clamp(at.y, box.low.y, box.high.y)};
  }
  return true;
}

double Arrangement::reach_x(int bed) const {
  double reach = 0;
  for (int i = 0; i < scene_->pieces(); ++i) {
    if (pose(i).bed != bed) continue;
    reach = std::max(reach, pose(i).at.x + oriented(i).box.high.x + scene_->edge_gap_cm());
  }
  return reach;
}

}  // namespace drapewright::cutting
