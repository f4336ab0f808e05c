#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "core/wound/case.h"

namespace drapewright::casefile {

/// The members of `dressing` that are numbers, in the order in which they are written.
inline constexpr std::array<std::pair<std::string_view, double wound::DressingSettings::*>, 15>
    settings{{
        {"inset_cm", &wound::DressingSettings::inset_cm},
        {"border_cm", &wound::DressingSettings::border_cm},
        {"filler_thickness_cm", &wound::DressingSettings::filler_thickness_cm},
        {"film_overlap_cm", &wound::DressingSettings::film_overlap_cm},
        {"aperture_diameter_cm", &wound::DressingSettings::aperture_diameter_cm},
        {"port_base_diameter_cm", &wound::DressingSettings::port_base_diameter_cm},
        {"bridge_width_cm", &wound::DressingSettings::bridge_width_cm},
        {"piece_gap_cm", &wound::DressingSettings::piece_gap_cm},
        {"pressure_mmhg", &wound::DressingSettings::pressure_mmhg},
        {"change_every_h", &wound::DressingSettings::change_every_h},
        {"course_days", &wound::DressingSettings::course_days},
        {"canister_ml", &wound::DressingSettings::canister_ml},
        {"canister_max_days", &wound::DressingSettings::canister_max_days},
        {"battery_days", &wound::DressingSettings::battery_days},
        {"tracing_error_mm", &wound::DressingSettings::tracing_error_mm},
    }};

/// The names of all members of `dressing`, in that order: the numbers, then the others.
inline constexpr auto setting_names = [] {
  std::array<std::string_view, settings.size() + 3> names;
  for (std::size_t i = 0; i < settings.size(); ++i) names[i] = settings[i].first;
  names[settings.size()] = "bridge_wanted";
  names[settings.size() + 1] = "port_places_cm";
  names[settings.size() + 2] = "filler_items";
  return names;
}();

}  // namespace drapewright::casefile
