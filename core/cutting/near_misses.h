#pragma once

#include <algorithm>
#include <vector>

#include "core/cutting/random.h"
#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// Arrangements that nearly worked, the least overlap first: where further attempts start from.
class NearMisses {
 public:
  explicit NearMisses(std::size_t most) : most_(most) {}

  void clear() { misses_.clear(); }
  bool empty() const { return misses_.empty(); }
  void add(double overlap, const std::vector<Pose>& poses) {
    const auto behind = std::find_if(misses_.begin(), misses_.end(),
                                     [&](const Miss& miss) { return miss.overlap > overlap; });
    misses_.insert(behind, {overlap, poses});
    if (misses_.size() > most_) misses_.pop_back();
  }
  /// One of them, the better ones more often. @pre not empty
  const std::vector<Pose>& pick(Random& random) const {
    const double u = random.unit();
    return misses_[static_cast<std::size_t>(u * u * u * static_cast<double>(misses_.size()))].poses;
  }

 private:
  struct Miss {
    double overlap = 0;
    std::vector<Pose> poses;
  };
  std::size_t most_;
  std::vector<Miss> misses_;
};

}  // namespace drapewright::cutting
