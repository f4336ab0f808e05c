#include "core/forecast/settings.h"

#include <string>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/practice/limits.h"

namespace drapewright::forecast {
namespace {

void check(std::string_view id, double value) {
  const practice::Limit& limit = practice::limit(id);
  if (practice::within_bounds(limit, value)) return;
  throw InputError(say("{1} is {2}", {say(limit.title), format_short(value, 6)}),
                   practice::bounds_in_words(limit));
}

}  // namespace

// Dealey et al, J Wound Care 2006;15(4):149: 1.3 under therapy, 0.10 and 0.21 by weighing
// dressings. 0.5 in leg ulcers: Thomas et al, Wounds 1996;8:145, from memory.
std::vector<FluidRate> published_fluid_rates() { return {{0.10}, {0.21}, {0.5}, {1.3}}; }

void check(const Settings& s) {
  check("forecast_weeks", s.weeks);
  for (const auto& [id, member] : numbers) check(id, s.*member);
  check("review_days", s.review_days);
  if (s.fluid_rates.empty())
    throw InputError(say("no rate of fluid is given"), say("at least one"));
  for (const FluidRate& rate : s.fluid_rates) {
    check("exudate_rate_ml_per_cm2_day", rate.ml_per_cm2_day);
    if (!(rate.weight > 0))
      throw InputError(say("a rate of fluid has no weight"), say("a weight above 0"));
  }
}

}  // namespace drapewright::forecast
