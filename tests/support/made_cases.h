#pragma once

#include <cstdint>

#include "core/wound/case.h"

namespace drapewright::support {

/// How much a made case may hold.
struct CaseBounds {
  int most_wounds = 4;
  int most_points = 400;  ///< of one outline, corners along its edges left out
};

/// An invented case, the same for the same seed and bounds: wounds of every kind of outline, 0.5 to
/// 60 cm across, near, far and sometimes over each other, deep, with run-in, undermining (past 12
/// o'clock and all round too), tunnels, skin zones on, beside and away from the wound's edge,
/// places chosen for the port, bridges wanted, settings at and between their bounds, odd stock
/// lists, far from the origin. Most of them are cases that `wound::check` lets pass; not all.
wound::Case made_case(std::uint64_t seed, const CaseBounds& bounds = {});

}  // namespace drapewright::support
