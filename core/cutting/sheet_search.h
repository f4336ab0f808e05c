#pragma once

#include <functional>

#include "core/cutting/budget.h"
#include "core/cutting/near_misses.h"
#include "core/cutting/off_cut_search.h"
#include "core/cutting/random.h"
#include "core/cutting/scene.h"
#include "core/cutting/sheet_sets.h"

namespace drapewright::cutting {

/// Looks for the cheapest set of sheets that takes all placeable pieces: one layout after another
/// on whichever set is cheaper than the best so far and not proven impossible, the roomier ones
/// more often. Now and then, and once no cheaper set is left, it enlarges the off-cut of the best.
class SheetSearch {
 public:
  /// Told of every layout that was found; false refuses it: not sound, or no better than the best.
  using Offer = std::function<bool(const Arrangement&)>;

  SheetSearch(const Job& job, const SheetLimits& limits, Arrangement& arrangement, Budget& budget,
              Random& random, Offer offer, std::function<double()> off_cut_cm2);
  void run();
  /// The first layouts alone.
  /// @returns whether all placeable pieces lie and no set of sheets comes before theirs
  bool rows_will_do();

 private:
  struct Candidate {
    SheetSet set;
    int attempts = 0;
    NearMisses pool;
  };
  std::vector<int> placeable(std::vector<int> order) const;
  bool open_as_needed(const std::vector<int>& order, int preferred,
                      const std::function<bool(int)>& place);
  void lay_in_rows();
  void construct();
  bool open_sheet(int piece, int preferred, std::vector<int>& left);
  void list_candidates();
  bool attempt(Candidate& candidate);
  void start_over(Candidate& candidate);
  bool accept();
  void tighten();
  std::size_t next_candidate() const;
  SheetSet set_in_use() const;

  const Job& job_;
  const SheetLimits& limits_;
  Arrangement& arrangement_;
  Budget& budget_;
  Random& random_;
  Offer offer_;
  std::function<double()> off_cut_cm2_;  ///< of the best
  SheetSet best_;
  bool complete_ = false;
  std::vector<Candidate> candidates_;
  OffCutSearch off_cut_search_;
};

}  // namespace drapewright::cutting
