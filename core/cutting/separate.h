#pragma once

#include <vector>

#include "core/cutting/budget.h"
#include "core/cutting/random.h"
#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// Takes overlaps out of an arrangement in which every piece lies on some bed: guided local search
/// over the pairs in collision (Egeblad, Nielsen, Odgaard 2007; Umetani et al. 2009; Gardeyn,
/// Wauters 2025). Each colliding piece in turn moves to where its weighted overlap is least; pairs
/// that stay in collision gain weight.
class Separator {
 public:
  Separator(Arrangement& arrangement, Budget& budget, Random& random);

  /// Works until nothing overlaps (true), the budget is over or nothing was gained for `patience`
  /// rounds. What is left is the arrangement with the least overlap seen.
  bool run(int patience);
  double overlap() const { return total_; }
  /// Exchanges two pieces of some size, to start over from elsewhere.
  void shake();

 private:
  double& overlap(int a, int b) { return overlap_[index(a, b)]; }
  double& weight(int a, int b) { return weight_[index(a, b)]; }
  std::size_t index(int a, int b) const {
    return static_cast<std::size_t>(a) * static_cast<std::size_t>(count_) +
           static_cast<std::size_t>(b);
  }
  void measure_all();
  void measure(int piece);
  double overlap_of(int piece) const;
  void reset_weights();
  void raise_weights();
  void move_round();
  void lay_near(int piece, const Pose& other);
  void move(int piece);
  void try_pose(int piece, const Oriented& as, const Pose& pose, int starts);

  Arrangement& arrangement_;
  Budget& budget_;
  Random& random_;
  int count_;
  std::vector<double> overlap_, weight_;  ///< count_ x count_, symmetric
  double total_ = 0;
  Field field_;
  Oriented trial_;
  NoFit scratch_;
  Pose best_pose_;
  double best_pressure_ = 0;
};

}  // namespace drapewright::cutting
