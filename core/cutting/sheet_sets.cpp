#include "core/cutting/sheet_sets.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <queue>
#include <set>

#include "core/base/tolerances.h"
#include "core/cutting/fit.h"
#include "core/geometry/circle.h"

namespace drapewright::cutting {
namespace {

/// Sets looked at before the search for more is given up; the bound then holds for those left.
constexpr int most_sets_looked_at = 20000;

/// A set that fits exactly must not be called impossible for the last digit's sake.
constexpr double rounding = 1e-9;

/// The least area that a shape can have once grown by r (Brunn and Minkowski: a disc's).
double grown_area(double area, double r) {
  const double root = std::sqrt(area) + std::sqrt(geometry::pi) * r;
  return root * root;
}

}  // namespace

std::vector<Bed> SheetSet::beds(const Job& job) const {
  std::vector<Bed> result;
  for (std::size_t k = 0; k < count.size(); ++k) {
    for (int i = 0; i < count[k]; ++i) {
      result.push_back({static_cast<int>(k), job.sheets[k].length_cm, job.sheets[k].width_cm});
    }
  }
  return result;
}

SheetLimits::SheetLimits(const Job& job, const Scene& scene) : job_(job) {
  for (const auto& kind : job.sheets) {
    available_.push_back(std::min(kind.available.value_or(scene.pieces()), scene.pieces()));
    const double grow = job.gap_cm - 2 * job.edge_gap_cm;
    room_cm2_.push_back(std::max(0.0, kind.length_cm + grow) * std::max(0.0, kind.width_cm + grow));
  }
  for (int piece = 0; piece < scene.pieces(); ++piece) {
    const auto& outline = job.pieces[static_cast<std::size_t>(piece)];
    grown_cm2_.push_back(grown_area(scene.stand_in(piece).area_cm2, job.gap_cm / 2));
    const auto circle = geometry::largest_inscribed_circle({outline});
    inner_radius_cm_.push_back(circle ? circle->radius_cm : 0);
    fits_.emplace_back();
    bool some = false;
    for (std::size_t k = 0; k < job.sheets.size(); ++k) {
      fits_.back().push_back(turn_that_fits(outline.outer, job, job.sheets[k]).has_value());
      some = some || (fits_.back().back() && available_[k] > 0);
    }
    if (some) placeable_.push_back(piece);
  }
  std::vector<int> order = placeable_;
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return grown_cm2_[static_cast<std::size_t>(a)] > grown_cm2_[static_cast<std::size_t>(b)];
  });
  for (const int piece : order) {
    bool alone = true;
    for (const int other : loners_) {
      for (std::size_t k = 0; k < job.sheets.size(); ++k) {
        alone = alone && !may_share(piece, other, static_cast<int>(k));
      }
    }
    if (alone) loners_.push_back(piece);
  }
}

bool SheetLimits::may_share(int a, int b, int kind) const {
  if (!fits(a, kind) || !fits(b, kind)) return false;
  const auto i = static_cast<std::size_t>(a), j = static_cast<std::size_t>(b);
  const auto k = static_cast<std::size_t>(kind);
  if (grown_cm2_[i] + grown_cm2_[j] > room_cm2_[k] * (1 + rounding)) return false;
  // Their inner circles keep apart, each inside the sheet: the centres are at most the diagonal of
  // what is left of the sheet from each other.
  const double apart = inner_radius_cm_[i] + inner_radius_cm_[j];
  const double length = job_.sheets[k].length_cm - 2 * job_.edge_gap_cm - apart;
  const double width = job_.sheets[k].width_cm - 2 * job_.edge_gap_cm - apart;
  return length >= -tolerance::sheet_fit_cm && width >= -tolerance::sheet_fit_cm &&
         std::hypot(length, width) >= (apart + job_.gap_cm) * (1 - rounding);
}

SheetSet SheetLimits::of(const std::vector<int>& count) const {
  SheetSet set{count, 0, 0, 0};
  for (std::size_t k = 0; k < count.size(); ++k) {
    set.cost += count[k] * job_.sheets[k].unit_cost;
    set.sheets += count[k];
    set.area_cm2 += count[k] * room_cm2_[k];
  }
  return set;
}

SheetSet SheetLimits::everything() const { return of(available_); }

bool SheetLimits::loners_find_sheets(const SheetSet& set) const {
  // Each loner takes a sheet of its own: a matching, found by augmenting paths.
  std::vector<int> sheets;
  for (std::size_t k = 0; k < set.count.size(); ++k) {
    sheets.insert(sheets.end(), static_cast<std::size_t>(set.count[k]), static_cast<int>(k));
  }
  std::vector<int> taken(sheets.size(), -1);
  std::vector<bool> visited;
  const std::function<bool(int)> settle = [&](int piece) {
    for (std::size_t s = 0; s < sheets.size(); ++s) {
      if (visited[s] || !fits(piece, sheets[s])) continue;
      visited[s] = true;
      if (taken[s] < 0 || settle(taken[s])) {
        taken[s] = piece;
        return true;
      }
    }
    return false;
  };
  return std::all_of(loners_.begin(), loners_.end(), [&](int piece) {
    visited.assign(sheets.size(), false);
    return settle(piece);
  });
}

bool SheetLimits::impossible(const SheetSet& set) const {
  double needed = 0;
  for (const int piece : placeable_) {
    needed += grown_cm2_[static_cast<std::size_t>(piece)];
    bool some = false;
    for (std::size_t k = 0; k < set.count.size(); ++k) {
      some = some || (set.count[k] > 0 && fits(piece, static_cast<int>(k)));
    }
    if (!some) return true;
  }
  return needed > set.area_cm2 * (1 + rounding) || !loners_find_sheets(set);
}

std::vector<SheetSet> SheetLimits::sets_before(const SheetSet& than, std::size_t most) const {
  auto later = [](const SheetSet& a, const SheetSet& b) { return b < a; };
  std::priority_queue<SheetSet, std::vector<SheetSet>, decltype(later)> open(later);
  std::set<std::vector<int>> seen;
  open.push(of(std::vector<int>(job_.sheets.size(), 0)));
  std::vector<SheetSet> result;
  for (int looked = 0; !open.empty() && looked < most_sets_looked_at; ++looked) {
    const SheetSet set = open.top();
    open.pop();
    if (!(set < than) || result.size() >= most) break;
    if (!impossible(set)) result.push_back(set);
    for (std::size_t k = 0; k < set.count.size(); ++k) {
      auto count = set.count;
      if (++count[k] <= available_[k] && seen.insert(count).second) open.push(of(count));
    }
  }
  return result;
}

}  // namespace drapewright::cutting
