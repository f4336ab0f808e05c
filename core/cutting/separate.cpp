#include "core/cutting/separate.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace drapewright::cutting {

namespace {

// Tuned on the public instances (docs/decisions): gentler rises wander less and stronger ones get
// out of a dead end sooner; a decay much off this is worse on all of them.
constexpr double weight_rise_least = 1.1;  ///< per round, of a pair that overlaps at all
constexpr double weight_rise_more = 0.4;   ///< on top, for the pair that overlaps most
constexpr double weight_decay = 0.96;      ///< of a pair that does not

double depth_between(const NoFit& no_fit, Point p) {
  double sum = 0;
  for (const auto& cell : no_fit.cells) {
    if (p.x > cell.box.low.x && p.x < cell.box.high.x && p.y > cell.box.low.y &&
        p.y < cell.box.high.y) {
      sum += no_fit.depth(cell, p);
    }
  }
  return sum;
}

}  // namespace

Separator::Separator(Arrangement& arrangement, Budget& budget, Random& random)
    : arrangement_(arrangement),
      budget_(budget),
      random_(random),
      count_(arrangement.scene().pieces()),
      overlap_(static_cast<std::size_t>(count_) * static_cast<std::size_t>(count_)),
      weight_(overlap_.size(), 1) {}

void Separator::measure(int piece) {
  auto& scene = arrangement_.scene();
  const auto& as = arrangement_.oriented(piece);
  for (int other = 0; other < count_; ++other) {
    double depth = 0;
    if (other != piece && arrangement_.pose(piece).bed >= 0 &&
        arrangement_.pose(other).bed == arrangement_.pose(piece).bed) {
      const auto& fixed = arrangement_.oriented(other);
      const Point offset = arrangement_.pose(piece).at - arrangement_.pose(other).at;
      const double gap = scene.no_fits().gap_cm();
      if (offset.x + as.box.low.x < fixed.box.high.x + gap &&
          offset.x + as.box.high.x > fixed.box.low.x - gap &&
          offset.y + as.box.low.y < fixed.box.high.y + gap &&
          offset.y + as.box.high.y > fixed.box.low.y - gap) {
        depth = depth_between(scene.no_fits().between(fixed, as, scratch_), offset);
      }
    }
    total_ += depth - overlap(piece, other);
    overlap(piece, other) = overlap(other, piece) = depth;
  }
}

void Separator::measure_all() {
  std::fill(overlap_.begin(), overlap_.end(), 0.0);
  total_ = 0;
  for (int i = 0; i < count_; ++i) measure(i);
  total_ = std::accumulate(overlap_.begin(), overlap_.end(), 0.0) / 2;
}

double Separator::overlap_of(int piece) const {
  const auto* row = overlap_.data() + index(piece, 0);
  return std::accumulate(row, row + count_, 0.0);
}

void Separator::reset_weights() { std::fill(weight_.begin(), weight_.end(), 1.0); }

void Separator::raise_weights() {
  const double most = *std::max_element(overlap_.begin(), overlap_.end());
  for (std::size_t k = 0; k < weight_.size(); ++k) {
    weight_[k] = overlap_[k] > 0
                     ? weight_[k] * (weight_rise_least + weight_rise_more * overlap_[k] / most)
                     : std::max(1.0, weight_[k] * weight_decay);
  }
}

void Separator::try_pose(int piece, const Oriented& as, const Pose& pose, int starts) {
  const double* weights = weight_.data() + index(piece, 0);
  arrangement_.look(piece, as, pose.bed, weights, field_);
  if (!field_.fits() || !budget_.spend(field_.sides_to_look_at())) return;
  const Box& box = field_.domain();
  for (int k = 0; k <= starts && best_pressure_ > 0; ++k) {
    Point start{std::clamp(pose.at.x, box.low.x, box.high.x),
                std::clamp(pose.at.y, box.low.y, box.high.y)};
    if (k > 0) {
      start = {random_.between(box.low.x, box.high.x), random_.between(box.low.y, box.high.y)};
    }
    const auto spot = field_.descend(start, random_);
    if (spot.pressure < best_pressure_) {
      best_pressure_ = spot.pressure;
      best_pose_ = {pose.bed, as.id, as.angle_deg, spot.at};
    }
  }
}

void Separator::move(int piece) {
  auto& scene = arrangement_.scene();
  const Pose now = arrangement_.pose(piece);
  best_pose_ = now;
  best_pressure_ = 0;
  for (int other = 0; other < count_; ++other) {
    best_pressure_ += weight(piece, other) * overlap(piece, other);
  }
  const int beds = static_cast<int>(arrangement_.beds.size());
  auto any_bed = [&] { return beds == 1 ? 0 : random_.below(beds); };
  const auto& numbers = scene.orientations(piece);
  auto try_number = [&](int number, int bed, int starts) {
    const auto& as = scene.orientation(number);
    try_pose(piece, as, {bed, number, as.angle_deg, now.at}, starts);
  };
  if (!scene.any_angle()) {
    const int tries = std::min<int>(static_cast<int>(numbers.size()), 4);
    const int first = random_.below(static_cast<int>(numbers.size()));
    for (int k = 0; k < tries; ++k) {
      try_number(numbers[static_cast<std::size_t>((first + k) % static_cast<int>(numbers.size()))],
                 any_bed(), 0);
    }
    if (beds > 1) try_number(now.orientation, now.bed, 2);
    return;
  }
  auto try_angle = [&](double angle, int bed, int starts) {
    orient(scene.stand_in(piece), angle, trial_);
    try_pose(piece, trial_, {bed, -1, angle, now.at}, starts);
  };
  try_pose(piece, arrangement_.oriented(piece), now, 1);
  for (int k = 0; k < 2; ++k) {
    try_number(numbers[static_cast<std::size_t>(random_.below(static_cast<int>(numbers.size())))],
               any_bed(), 2);
  }
  try_angle(random_.between(0, 360), any_bed(), 2);
  double spread = 20;
  for (int k = 0; k < 6 && best_pressure_ > 0; ++k, spread *= 0.5) {
    const Pose base = best_pose_;
    orient(scene.stand_in(piece), base.angle_deg + random_.between(-spread, spread), trial_);
    try_pose(piece, trial_, {base.bed, -1, trial_.angle_deg, base.at}, 0);
  }
}

void Separator::move_round() {
  std::vector<int> colliding;
  for (int i = 0; i < count_; ++i) {
    if (overlap_of(i) > 0) colliding.push_back(i);
  }
  random_.shuffle(colliding);
  for (const int piece : colliding) {
    if (overlap_of(piece) <= 0) continue;
    move(piece);
    arrangement_.put(piece, best_pose_);
    measure(piece);
    if (!budget_.step()) return;
  }
}

bool Separator::run(int patience) {
  reset_weights();
  measure_all();
  auto best = arrangement_.poses();
  double least = total_;
  for (int stale = 0; stale < patience && total_ > 0 && !budget_.over(); ++stale) {
    move_round();
    total_ = std::accumulate(overlap_.begin(), overlap_.end(), 0.0) / 2;
    if (total_ < least) {
      if (total_ < 0.98 * least) stale = 0;
      least = total_;
      best = arrangement_.poses();
    }
    raise_weights();
  }
  if (total_ <= 0) return true;
  arrangement_.restore(best);
  total_ = least;
  return false;
}

void Separator::shake() {
  const auto& scene = arrangement_.scene();
  std::vector<int> order(static_cast<std::size_t>(count_));
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(),
            [&](int a, int b) { return scene.stand_in(a).area_cm2 > scene.stand_in(b).area_cm2; });
  if (count_ < 2) return;
  const int large = std::max(2, (3 * count_) / 4);
  const int a = order[static_cast<std::size_t>(random_.below(large))];
  int b = a;
  for (int k = 0; k < 20 && (b == a || scene.type(a) == scene.type(b)); ++k) {
    b = order[static_cast<std::size_t>(random_.below(large))];
  }
  const Pose pa = arrangement_.pose(a), pb = arrangement_.pose(b);
  if (pa.bed < 0 || pb.bed < 0) return;
  lay_near(a, pb);
  lay_near(b, pa);
}

/// Moves a piece to where another lay, as far as it fits there.
void Separator::lay_near(int piece, const Pose& other) {
  Pose pose = arrangement_.pose(piece);
  const Box box = arrangement_.scene().domain(
      arrangement_.oriented(piece), arrangement_.beds[static_cast<std::size_t>(other.bed)]);
  if (box.low.x > box.high.x || box.low.y > box.high.y) return;
  pose.bed = other.bed;
  pose.at = {std::clamp(other.at.x, box.low.x, box.high.x),
             std::clamp(other.at.y, box.low.y, box.high.y)};
  arrangement_.put(piece, pose);
}

}  // namespace drapewright::cutting
