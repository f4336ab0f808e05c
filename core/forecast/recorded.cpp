#include "core/forecast/recorded.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>

namespace drapewright::forecast {
namespace {

int per_dressing(const UsePattern& pattern) {
  return pattern.scenarios.empty() || pattern.scenarios.front().uses.empty()
             ? 0
             : pattern.scenarios.front().uses.front().quantity;
}

}  // namespace

void RecordedUseCounter::add(const Patient& patient) {
  total_.days += patient.past.days;
  total_.recorded += patient.past.recorded;
  total_.planned += patient.past.planned;
  if (patient.past.days == 0) return;
  for (const ItemUse& use : patient.items) {
    if (use.kind == supplies::Kind::canister || use.kind == supplies::Kind::battery) continue;
    auto& item = items_[use.item];
    item.item = use.item;
    const int each = per_dressing(use.anew);
    item.recorded += each * patient.past.recorded;
    item.planned += each * patient.past.planned;
  }
}

RecordedUse RecordedUseCounter::counted() const {
  RecordedUse use = total_;
  for (const auto& [name, item] : items_) use.items.push_back(item);
  return use;
}

/// The exact interval of a Poisson mean by chi-squared quantiles (Garwood, Biometrika 1936;28:437,
/// from memory), on the number of all dressings.
ExtraRate extra_rate_of(const RecordedUse& use) {
  const double weeks = use.days / 7.0;
  const auto quantile = [](double degrees, double level) {
    return boost::math::quantile(boost::math::chi_squared_distribution<>(degrees), level);
  };
  const auto rate = [&](double dressings) {
    return std::max(0.0, (dressings - use.planned) / weeks);
  };
  const double low = use.recorded == 0 ? 0 : quantile(2.0 * use.recorded, 0.025) / 2;
  return {rate(use.recorded), rate(low), rate(quantile(2.0 * use.recorded + 2, 0.975) / 2)};
}

}  // namespace drapewright::forecast
