#pragma once

#include <vector>

#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// A choice of sheets: how many of each kind.
struct SheetSet {
  std::vector<int> count;  ///< per kind of the job
  double cost = 0;
  int sheets = 0;
  double area_cm2 = 0;  ///< room for pieces that are each grown by half the gap

  std::vector<Bed> beds(const Job& job) const;
  friend bool operator<(const SheetSet& a, const SheetSet& b) {
    return a.cost != b.cost ? a.cost < b.cost : a.sheets < b.sheets;
  }
};

/// What can be said of sheets and pieces before anything is laid out.
class SheetLimits {
 public:
  SheetLimits(const Job& job, const Scene& scene);

  /// Whether a piece fits on a sheet of a kind, alone, at an allowed angle.
  bool fits(int piece, int kind) const {
    return fits_[static_cast<std::size_t>(piece)][static_cast<std::size_t>(kind)];
  }
  /// Pieces that fit on some kind of which there is a sheet.
  const std::vector<int>& placeable() const { return placeable_; }
  /// The cheapest sets that are not proven impossible and come before `than`, in order: their
  /// sheets have room for the pieces' area, every piece fits on one of them, and pieces of which
  /// no two can share a sheet find one each. At most `most` of them.
  std::vector<SheetSet> sets_before(const SheetSet& than, std::size_t most) const;
  /// A set with everything in stock, or one sheet of each kind per piece: an upper end.
  SheetSet everything() const;
  SheetSet of(const std::vector<int>& count) const;

 private:
  bool may_share(int a, int b, int kind) const;
  bool impossible(const SheetSet& set) const;
  bool loners_find_sheets(const SheetSet& set) const;

  const Job& job_;
  std::vector<std::vector<bool>> fits_;
  std::vector<int> placeable_;
  std::vector<int> available_;
  std::vector<double> room_cm2_;         ///< per kind
  std::vector<double> grown_cm2_;        ///< per piece: its least area when grown by half the gap
  std::vector<double> inner_radius_cm_;  ///< per piece: of its largest circle
  std::vector<int> loners_;              ///< pieces of which no two can share any sheet
};

}  // namespace drapewright::cutting
