#pragma once

#include <functional>

#include "core/cutting/budget.h"
#include "core/cutting/near_misses.h"
#include "core/cutting/random.h"
#include "core/cutting/scene.h"
#include "core/cutting/sheet_sets.h"

namespace drapewright::cutting {

/// Looks for the cheapest set of sheets that takes all placeable pieces: one layout after another
/// on whichever set is cheaper than the best so far and not proven impossible, the roomier ones
/// more often.
class SheetSearch {
 public:
  /// Told of every layout that is better than the one before; false refuses it.
  using Better = std::function<bool(const Arrangement&)>;

  SheetSearch(const Job& job, const SheetLimits& limits, Arrangement& arrangement, Budget& budget,
              Random& random, Better better);
  void run();

 private:
  struct Candidate {
    SheetSet set;
    int attempts = 0;
    NearMisses pool;
  };
  void open_as_needed();
  bool open_sheet(int piece, int preferred, std::vector<int>& left);
  void list_candidates();
  bool attempt(Candidate& candidate);
  void start_over(Candidate& candidate);
  bool accept();
  SheetSet set_in_use() const;

  const Job& job_;
  const SheetLimits& limits_;
  Arrangement& arrangement_;
  Budget& budget_;
  Random& random_;
  Better better_;
  SheetSet best_;
  bool complete_ = false;
  std::vector<Candidate> candidates_;
};

}  // namespace drapewright::cutting
