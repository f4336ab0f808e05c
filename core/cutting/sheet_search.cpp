#include "core/cutting/sheet_search.h"

#include <algorithm>
#include <limits>

#include "core/cutting/construct.h"
#include "core/cutting/rows.h"
#include "core/cutting/separate.h"

namespace drapewright::cutting {
namespace {

/// Sets worked on at a time; more come up when the cheaper of these fall away.
constexpr std::size_t most_candidates = 12;
constexpr std::size_t pool_size = 10;
constexpr int patience = 50;
/// One attempt in so many goes to the off-cut while cheaper sheets may still be found.
constexpr int off_cut_every = 5;

}  // namespace

SheetSearch::SheetSearch(const Job& job, const SheetLimits& limits, Arrangement& arrangement,
                         Budget& budget, Random& random, Offer offer,
                         std::function<double()> off_cut_cm2)
    : job_(job),
      limits_(limits),
      arrangement_(arrangement),
      budget_(budget),
      random_(random),
      offer_(std::move(offer)),
      off_cut_cm2_(std::move(off_cut_cm2)),
      best_(limits.everything()),
      off_cut_search_(job, arrangement, budget, random, [this](const Arrangement& found) {
        offer_(found);
        return off_cut_cm2_();
      }) {
  best_.cost = std::numeric_limits<double>::infinity();
}

SheetSet SheetSearch::set_in_use() const {
  std::vector<bool> used(arrangement_.beds.size());
  for (const auto& pose : arrangement_.poses()) {
    if (pose.bed >= 0) used[static_cast<std::size_t>(pose.bed)] = true;
  }
  std::vector<int> count(job_.sheets.size());
  for (std::size_t b = 0; b < used.size(); ++b) {
    if (used[b]) ++count[static_cast<std::size_t>(arrangement_.beds[b].kind)];
  }
  return limits_.of(count);
}

bool SheetSearch::open_sheet(int piece, int preferred, std::vector<int>& left) {
  int chosen = -1;
  double least = std::numeric_limits<double>::infinity();
  for (int k = 0; k < static_cast<int>(job_.sheets.size()); ++k) {
    const auto& kind = job_.sheets[static_cast<std::size_t>(k)];
    if (left[static_cast<std::size_t>(k)] == 0 || !limits_.fits(piece, k)) continue;
    const double cost = k == preferred ? -1 : kind.unit_cost;
    if (cost < least) {
      least = cost;
      chosen = k;
    }
  }
  if (chosen < 0) return false;
  const auto& kind = job_.sheets[static_cast<std::size_t>(chosen)];
  --left[static_cast<std::size_t>(chosen)];
  arrangement_.beds.push_back({chosen, kind.length_cm, kind.width_cm});
  return true;
}

/// Takes the arrangement as the new best if it is better, pressed together if that leaves more.
bool SheetSearch::accept() {
  if (!offer_(arrangement_)) return false;
  best_ = set_in_use();
  complete_ = true;
  const auto found = arrangement_.poses();
  tighten();
  if (offer_(arrangement_)) {
    best_ = set_in_use();
  } else {
    arrangement_.restore(found);
  }
  off_cut_search_.start(off_cut_cm2_());
  return true;
}

/// Lays every piece anew, from the corner outwards, where it reaches least far.
void SheetSearch::tighten() {
  std::vector<int> order;
  for (int i = 0; i < arrangement_.scene().pieces(); ++i) {
    if (arrangement_.pose(i).bed >= 0) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    const Pose &pa = arrangement_.pose(a), &pb = arrangement_.pose(b);
    return pa.bed != pb.bed ? pa.bed < pb.bed : pa.at.x < pb.at.x;
  });
  Constructor constructor(arrangement_, budget_);
  for (const int piece : order) {
    const Pose before = arrangement_.pose(piece);
    if (!constructor.place(piece)) arrangement_.put(piece, before);
  }
}

std::vector<int> SheetSearch::placeable(std::vector<int> order) const {
  std::erase_if(order, [&](int piece) {
    return !std::binary_search(limits_.placeable().begin(), limits_.placeable().end(), piece);
  });
  return order;
}

/// Lays everything anew; one more sheet is opened whenever a piece finds no room.
/// @returns whether all pieces lie
bool SheetSearch::open_as_needed(const std::vector<int>& order, int preferred,
                                 const std::function<bool(int)>& place) {
  arrangement_.beds.clear();
  std::vector<int> left = limits_.everything().count;
  for (int i = 0; i < arrangement_.scene().pieces(); ++i) arrangement_.put(i, {});
  bool all = true;
  for (const int piece : order) {
    if (place(piece)) continue;
    all = open_sheet(piece, preferred, left) && place(piece) && all;
  }
  return all;
}

void SheetSearch::lay_in_rows() {
  const auto order = placeable(by_falling_height(arrangement_.scene()));
  for (int preferred = static_cast<int>(job_.sheets.size()) - 1; preferred >= 0; --preferred) {
    for (const auto stacked : {Rows::Stacked::along_length, Rows::Stacked::along_width}) {
      Rows rows(arrangement_, stacked, job_.gap_cm);
      const bool all =
          open_as_needed(order, preferred, [&](int piece) { return rows.place(piece); });
      if (!offer_(arrangement_) || !all) continue;
      best_ = set_in_use();
      complete_ = true;
      off_cut_search_.start(off_cut_cm2_());
    }
  }
}

void SheetSearch::construct() {
  const auto order = placeable(by_falling_area(arrangement_.scene()));
  for (int preferred = static_cast<int>(job_.sheets.size()) - 1; preferred >= 0; --preferred) {
    if (budget_.over()) return;
    Constructor constructor(arrangement_, budget_);
    const bool all =
        open_as_needed(order, preferred, [&](int piece) { return constructor.place(piece); });
    if (all) {
      accept();
    } else if (!complete_) {
      offer_(arrangement_);  // not all pieces lie, but something is there to be shown
    }
  }
}

void SheetSearch::list_candidates() {
  auto sets = limits_.sets_before(best_, 400);
  // The dearest of the cheaper ones have the most room: they come first.
  std::stable_sort(sets.begin(), sets.end(),
                   [](const SheetSet& a, const SheetSet& b) { return a.area_cm2 > b.area_cm2; });
  if (sets.size() > most_candidates) sets.resize(most_candidates);
  std::vector<Candidate> kept;
  for (auto& set : sets) {
    const auto known = std::find_if(candidates_.begin(), candidates_.end(),
                                    [&](const auto& c) { return c.set.count == set.count; });
    kept.push_back(known == candidates_.end() ? Candidate{set, 0, NearMisses(pool_size)}
                                              : std::move(*known));
  }
  candidates_ = std::move(kept);
}

void SheetSearch::start_over(Candidate& candidate) {
  auto order = placeable(by_falling_area(arrangement_.scene()));
  for (int i = 0; i < arrangement_.scene().pieces(); ++i) arrangement_.put(i, {});
  random_.shuffle(arrangement_.beds);
  if (candidate.attempts > 1) {
    for (std::size_t k = 0; k + 1 < order.size(); ++k) {
      if (random_.below(2) == 0) std::swap(order[k], order[k + 1]);
    }
  }
  Constructor(arrangement_, budget_).place_all(order);
  for (const int piece : order) {
    if (arrangement_.pose(piece).bed < 0) drop(arrangement_, piece, random_);
  }
}

bool SheetSearch::attempt(Candidate& candidate) {
  ++candidate.attempts;
  arrangement_.beds = candidate.set.beds(job_);
  Separator separator(arrangement_, budget_, random_);
  if (candidate.pool.empty() || random_.unit() < 0.2) {
    start_over(candidate);
  } else {
    arrangement_.restore(candidate.pool.pick(random_));
    separator.shake();
  }
  if (separator.run(patience)) return accept();
  candidate.pool.add(separator.overlap(), arrangement_.poses());
  return false;
}

std::size_t SheetSearch::next_candidate() const {
  std::size_t next = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < candidates_.size(); ++k) {
    const double turn = (candidates_[k].attempts + 1) * (1.0 + static_cast<double>(k));
    if (turn < least) {
      least = turn;
      next = k;
    }
  }
  return next;
}

bool SheetSearch::rows_will_do() {
  if (limits_.placeable().empty()) return true;
  lay_in_rows();
  list_candidates();
  return complete_ && candidates_.empty();
}

void SheetSearch::run() {
  if (limits_.placeable().empty()) return;
  lay_in_rows();
  construct();
  list_candidates();
  for (int turn = 1; !budget_.over(); ++turn) {
    if (candidates_.empty() && budget_.cheapest_will_do()) return;
    const bool off_cut_next = candidates_.empty() || turn % off_cut_every == 0;
    if (off_cut_next && complete_ && !off_cut_search_.exhausted()) {
      off_cut_search_.attempt();
    } else if (candidates_.empty()) {
      return;
    } else if (attempt(candidates_[next_candidate()])) {
      list_candidates();
    }
  }
}

}  // namespace drapewright::cutting
