#include "core/cutting/off_cut_search.h"

#include <algorithm>

#include "core/cutting/construct.h"
#include "core/cutting/separate.h"

namespace drapewright::cutting {
namespace {

/// How much larger the next off-cut is to be: at first, and at least.
constexpr double first_growth = 0.3;
constexpr double least_growth = 0.01;
/// The first goal where nothing is left yet: this share of the sheet.
constexpr double first_share = 0.05;
constexpr int patience = 150;

}  // namespace

void OffCutSearch::start(double off_cut_cm2) {
  beds_ = arrangement_.beds;
  best_ = arrangement_.poses();
  off_cut_cm2_ = off_cut_cm2;
  growth_ = first_growth;
  stale_ = 0;
}

/// Takes off the bed's length or its width what the next off-cut needs. False if nothing remains.
bool OffCutSearch::shorten(Bed& bed) {
  const bool lengthwise = random_.below(2) == 0;
  double& side = lengthwise ? bed.length_cm : bed.width_cm;
  const double across = lengthwise ? bed.width_cm : bed.length_cm;
  const double wanted =
      std::max(off_cut_cm2_ * (1 + growth_), first_share * bed.length_cm * bed.width_cm);
  // The pieces keep the edge's gap to the shorter bed's end; the off-cut keeps the pieces' gap.
  side += job_.edge_gap_cm - job_.gap_cm - wanted / across;
  return side > 0;
}

/// Lays all pieces anew, one after another in a shuffled order: finds the exact fits of straight
/// pieces, which overlaps taken out bit by bit seldom end in.
bool OffCutSearch::construct() {
  auto order = by_falling_area(arrangement_.scene());
  std::erase_if(order, [&](int piece) { return arrangement_.pose(piece).bed < 0; });
  for (std::size_t k = 0; k + 1 < order.size(); ++k) {
    if (random_.below(2) == 0) std::swap(order[k], order[k + 1]);
  }
  return Constructor(arrangement_, budget_).place_all(order);
}

/// Lays every piece somewhere, to start over from elsewhere.
void OffCutSearch::scatter() {
  for (int i = 0; i < arrangement_.scene().pieces(); ++i) {
    if (arrangement_.pose(i).bed >= 0) drop(arrangement_, i, random_);
  }
}

bool OffCutSearch::separate() {
  if (stale_ % 4 == 3) scatter();
  if (!arrangement_.pull_in()) return false;
  return Separator(arrangement_, budget_, random_).run(patience);
}

void OffCutSearch::attempt() {
  ++stale_;
  budget_.step();
  arrangement_.beds = beds_;
  arrangement_.restore(best_);
  const int bed = random_.below(static_cast<int>(beds_.size()));
  if (!shorten(arrangement_.beds[static_cast<std::size_t>(bed)])) return;
  if (!(stale_ % 2 == 0 ? construct() : separate())) {
    growth_ = growth_ > least_growth ? growth_ * 0.8 : first_growth;
    return;
  }
  arrangement_.beds = beds_;
  const double before = off_cut_cm2_;
  off_cut_cm2_ = offer_(arrangement_);
  if (off_cut_cm2_ <= before) return;
  best_ = arrangement_.poses();
  stale_ = 0;
}

}  // namespace drapewright::cutting
