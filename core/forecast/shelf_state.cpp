#include "core/forecast/shelf_state.h"

#include <algorithm>
#include <cmath>

namespace drapewright::forecast {
namespace {

constexpr double least_chance = 1e-16;  // of a state that is still followed

/// Every count asked for is told apart as long as there are no more states than this; and never
/// fewer than so many bins, each about half a standard deviation wide.
constexpr std::size_t most_states = 60000;
constexpr std::size_t fewest_bins = 14;
constexpr double reach_of_bins = 8;  // standard deviations, from end to end

}  // namespace

ShelfState::ShelfState(int most, const Quantity& in_all) {
  const auto counts = static_cast<std::size_t>(in_all.most()) + 1;
  const std::size_t bins = most_states / (static_cast<std::size_t>(most) + 1);
  bins_ = std::min(counts, std::max(bins, fewest_bins));
  chances_.resize(bins_);
  chances_.front() = {1, 0, 0};
}

ShelfState::Bins ShelfState::bins_for(const Quantity& asked) const {
  const auto count = static_cast<double>(bins_);
  if (bins_ > static_cast<std::size_t>(asked.most())) return {0, 1};
  const double width = std::max(1.0, std::ceil(reach_of_bins * asked.spread() / count));
  return {std::floor(asked.mean() - width * count / 2), width};
}

std::size_t ShelfState::bin_of(double asked, const Bins& bins) const {
  const double bin = (asked + 1e-6 - bins.from) / bins.width;
  return static_cast<std::size_t>(std::clamp(bin, 0.0, static_cast<double>(bins_ - 1)));
}

ShelfState::Served ShelfState::serve(const UseGivenPast& use, const Quantity& asked, int received) {
  const Bins bins = bins_for(asked);
  const auto all = static_cast<std::size_t>(received);
  std::vector<Chances> after((all + 1) * bins_);
  Served served;
  for (std::size_t at = 0; at < chances_.size(); ++at) {
    const Chances& now = chances_[at];
    if (now.both() <= 0) continue;
    const std::size_t gone = at / bins_;
    if (now.both() < least_chance) {
      after[std::min(gone, all) * bins_ + bin_of(now.asked / now.both(), bins)].add(1, now, 0);
      continue;
    }
    const Served here = serve_from(gone, now, use.after(now.asked / now.both()), bins, after);
    served.used += here.used;
    served.short_of += here.short_of;
  }
  chances_ = std::move(after);
  return served;
}

ShelfState::Served ShelfState::serve_from(std::size_t gone, const Chances& now,
                                          const Quantity& wanted, const Bins& bins,
                                          std::vector<Chances>& after) const {
  const std::size_t all = after.size() / bins_ - 1;
  const auto& chances = wanted.chances();
  const double before = now.asked / now.both();
  double used = 0, short_of = 0;
  for (std::size_t i = 0; i < chances.size();) {
    // All of these are asked for by the end in the same bin.
    const double first = wanted.least() + static_cast<double>(i);
    const std::size_t bin = bin_of(before + first, bins);
    const double next = bins.from + (static_cast<double>(bin) + 1) * bins.width - 1e-6 - before;
    const auto stop =
        bin + 1 == bins_
            ? chances.size()
            : std::clamp(static_cast<std::size_t>(std::max(0.0, std::ceil(next) - wanted.least())),
                         i + 1, chances.size());
    for (; i < stop; ++i) {
      const auto count = static_cast<std::size_t>(wanted.least()) + i;
      const std::size_t given = std::min(count, all - gone);
      const double share = chances[i], lacking = static_cast<double>(count - given);
      Chances& then = after[(gone + given) * bins_ + bin];
      if (given == count) {
        then.add(share, now, static_cast<double>(count));
      } else {
        then.been_short += share * now.both();
        then.asked += share * (now.asked + static_cast<double>(count) * now.both());
      }
      used += share * static_cast<double>(given);
      short_of += share * lacking;
    }
  }
  return {used * now.both(), short_of * now.both()};
}

double ShelfState::expire(int gone_at_least) {
  const auto least = static_cast<std::size_t>(gone_at_least);
  if (gone_counts() <= least) chances_.resize((least + 1) * bins_);
  double wasted = 0;
  for (std::size_t at = 0; at < least * bins_; ++at) {
    Chances& now = chances_[at];
    wasted += static_cast<double>(least - at / bins_) * now.both();
    chances_[least * bins_ + at % bins_].add(1, now, 0);
    now = {};
  }
  return wasted;
}

Quantity ShelfState::left(int received) const {
  const auto all = static_cast<std::size_t>(received);
  std::vector<double> left(all + 1, 0.0);
  for (std::size_t at = 0; at < chances_.size(); ++at)
    left[all - at / bins_] += chances_[at].both();
  return Quantity(0, std::move(left));
}

double ShelfState::been_short() const {
  double chance = 0;
  for (const Chances& now : chances_) chance += now.been_short;
  return chance;
}

}  // namespace drapewright::forecast
