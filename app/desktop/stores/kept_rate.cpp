#include "app/desktop/stores/kept_rate.h"

#include <QSettings>
#include <cmath>

#include "core/practice/limits.h"

namespace drapewright::desktop {
namespace {

constexpr const char* rate_key = "stores/extra_dressings_taken_over";
constexpr const char* before_key = "stores/extra_dressings_before";
/// Half of the field's last decimal, and what binary fractions add to it.
constexpr double rounding = 0.005 + 1e-9;

/// Settings may have been edited by hand.
std::optional<double> rate_at(const char* key) {
  bool is_number = false;
  const double rate = QSettings().value(key).toDouble(&is_number);
  const practice::Limit& limit = practice::limit("extra_dressings_per_week");
  // Not a number fails both comparisons.
  if (!is_number || !(rate >= limit.minimum && rate <= limit.maximum)) return std::nullopt;
  return rate;
}

}  // namespace

std::optional<TakenOverRate> kept_rate() {
  const auto rate = rate_at(rate_key), before = rate_at(before_key);
  if (!rate || !before) return std::nullopt;
  return TakenOverRate{*rate, *before};
}

void keep_rate(const std::optional<TakenOverRate>& rate) {
  QSettings settings;
  if (rate) {
    settings.setValue(rate_key, rate->per_week);
    settings.setValue(before_key, rate->before);
  } else {
    settings.remove(rate_key);
    settings.remove(before_key);
  }
}

bool is_same_rate(double a, double b) { return std::abs(a - b) <= rounding; }

}  // namespace drapewright::desktop
