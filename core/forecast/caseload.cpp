#include "core/forecast/caseload.h"

#include <algorithm>

#include "core/forecast/pattern_use.h"

namespace drapewright::forecast {

void Caseload::add(const Patient& patient, int count) {
  if (patient.items.empty() || count <= 0) return;
  patients_ += count;
  for (const ItemUse& use : patient.items) {
    Item& item = items_[use.item];
    item.kind = use.kind;
    item.demand.now[use.pattern] += count;
    if (arrivals_per_week_ > 0) item.demand.anew[use.anew] += count;
  }
  forget();
}

void Caseload::add_profile(const Patient& patient, int count) {
  if (patient.items.empty()) return;
  profiles_ += count;
  for (const ItemUse& use : patient.items) {
    Item& item = items_[use.item];
    item.kind = use.kind;
    item.demand.profiles[use.anew] += count;
  }
  forget();
}

void Caseload::forget() {
  for (auto& [name, item] : items_) {
    item.like = nullptr;
    item.known.clear();
    item.known_present.clear();
  }
}

std::vector<std::string> Caseload::items() const {
  std::vector<std::string> names;
  for (const auto& [name, item] : items_) names.push_back(name);
  std::ranges::stable_sort(names, {}, [&](const std::string& name) { return kind_of(name); });
  return names;
}

supplies::Kind Caseload::kind_of(const std::string& item) const { return items_.at(item).kind; }

const Caseload::Item& Caseload::first_like(const Item& item) const {
  if (item.like == nullptr) {
    for (const auto& [name, other] : items_) {
      if (&other == &item || other.demand == item.demand) {
        item.like = &other;
        break;
      }
    }
  }
  return *item.like;
}

const Quantity& Caseload::use(const std::string& item, int from, int to) const {
  const Item& one = first_like(items_.at(item));
  const auto [at, is_new] = one.known.try_emplace({from, to});
  if (!is_new) return at->second;
  at->second = present(one, from, to);
  if (arrivals_per_week_ > 0) {
    at->second = sum(at->second, arrivals(one.demand, from, to));
  }
  return at->second;
}

/// Of the patients that are there now. Once all their courses are over nothing changes any more.
const Quantity& Caseload::present(const Item& item, int from, int to) const {
  int over = 0;
  for (const auto& [pattern, count] : item.demand.now) over = std::max(over, latest_end(pattern));
  from = std::min(from, over);
  to = std::min(to, over);
  const auto [at, is_new] = item.known_present.try_emplace({from, to});
  if (!is_new) return at->second;
  std::vector<Quantity> parts;
  for (const auto& [pattern, count] : item.demand.now) {
    parts.push_back(repeated(use_of(pattern, from, to), count));
  }
  return at->second = sum(std::move(parts));
}

/// New patients come on every day of the forecast alike. One that comes on day s has been there for
/// from - s days when the window opens; each is one of the patterns, or one that does not use this
/// item at all.
Quantity Caseload::arrivals(const Demand& demand, int from, int to) const {
  const Counts& anew = profiles_ > 0 ? demand.profiles : demand.anew;
  const int all = profiles_ > 0 ? profiles_ : patients_;
  if (to <= 0 || all == 0) return {};
  Mixture one;
  int users = 0;
  for (const auto& [pattern, count] : anew) {
    users += count;
    std::map<std::pair<int, int>, int> days;  // arrival days that see the same window
    for (int arrival = 0; arrival < to; ++arrival) {
      const int end = latest_end(pattern);
      ++days[{std::clamp(from - arrival, 0, end), std::min(to - arrival, end)}];
    }
    for (const auto& [window, times] : days) {
      one.add(static_cast<double>(count) * times, use_of(pattern, window.first, window.second));
    }
  }
  one.add(static_cast<double>(all - users) * to, Quantity());
  return compound_poisson(arrivals_per_week_ / 7 * to, one.taken());
}

}  // namespace drapewright::forecast
