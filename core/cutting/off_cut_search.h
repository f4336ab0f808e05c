#pragma once

#include <functional>
#include <vector>

#include "core/cutting/budget.h"
#include "core/cutting/random.h"
#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// Presses the pieces of a layout together so that a larger rectangle is left of one of its
/// sheets, at no cost: a sheet is taken for shorter, or for narrower, than it is.
class OffCutSearch {
 public:
  /// @param offer told of every arrangement that was found; answers the off-cut that counts since
  OffCutSearch(const Job& job, Arrangement& arrangement, Budget& budget, Random& random,
               std::function<double(const Arrangement&)> offer)
      : job_(job),
        arrangement_(arrangement),
        budget_(budget),
        random_(random),
        offer_(std::move(offer)) {}

  /// From the arrangement as it lies, whose off-cut is given.
  void start(double off_cut_cm2);
  void attempt();
  /// Nothing was gained for so long that there is little hope.
  bool exhausted() const { return stale_ >= most_stale; }

 private:
  static constexpr int most_stale = 80;

  bool shorten(Bed& bed);
  bool construct();
  void scatter();
  bool separate();

  const Job& job_;
  Arrangement& arrangement_;
  Budget& budget_;
  Random& random_;
  std::function<double(const Arrangement&)> offer_;
  std::vector<Bed> beds_;
  std::vector<Pose> best_;
  double off_cut_cm2_ = 0;
  double growth_ = 0;
  int stale_ = 0;
};

}  // namespace drapewright::cutting
