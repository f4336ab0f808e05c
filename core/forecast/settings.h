#pragma once

#include <array>
#include <string_view>
#include <utility>
#include <vector>

namespace drapewright::forecast {

/// A rate of fluid by wound area that was published, and how much weight it has among the others.
struct FluidRate {
  double ml_per_cm2_day = 0;
  double weight = 1;
};

/// The published rates of core/practice, equally likely: between 0.10 and 1.3 mL/cm2 a day nobody
/// knows which a wound will have before its canister has been read.
std::vector<FluidRate> published_fluid_rates();

/// What a forecast rests on beside the cases. Defaults and bounds: core/practice, by these names.
struct Settings {
  int first_day = 0;  ///< day_number of the forecast's first day
  int weeks = 8;      ///< 1 to 104
  double service_level = 0.95;
  double extra_dressings_per_week = 0.5;  ///< for leaks and soiling, per patient under therapy
  double early_end_per_week = 0.05;       ///< chance that a course ends before its time
  double extension_share = 0.2;           ///< chance that it is extended at its end, once
  double extension_days = 7;
  double new_patients_per_week = 0;  ///< with the mix of the caseload
  double area_change_per_week = 0;   ///< share; below 0 shrinks; a series of three beats it
  double fluid_change_per_week = 0;  ///< share, from the first day of the course
  std::vector<FluidRate> fluid_rates = published_fluid_rates();
  int review_days = 7;  ///< between two looks at the shelf

  int last_day() const { return 7 * weeks; }  ///< counted from the first day; not part of it
};

/// The settings that are plain numbers, by their names in core/practice.
inline constexpr std::array<std::pair<std::string_view, double Settings::*>, 8> numbers{{
    {"service_level_share", &Settings::service_level},
    {"extra_dressings_per_week", &Settings::extra_dressings_per_week},
    {"early_end_per_week", &Settings::early_end_per_week},
    {"extension_share", &Settings::extension_share},
    {"extension_days", &Settings::extension_days},
    {"new_patients_per_week", &Settings::new_patients_per_week},
    {"area_change_per_week", &Settings::area_change_per_week},
    {"fluid_change_per_week", &Settings::fluid_change_per_week},
}};

/// @throws InputError that names the setting, for what is out of its bounds
void check(const Settings& settings);

}  // namespace drapewright::forecast
