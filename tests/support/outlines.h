#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::support {

/// An invented outline with islands, as a user might trace or type it: faultless, but not tidy.
/// Within about 30 cm, lengths in cm.
struct GeneratedOutline {
  std::string name;  ///< its kind and number, for messages
  geometry::Polygon polygon;
};

/// `count` outlines of every kind in turn, the same for the same seed on every machine: stars,
/// blobs, combs, staircases traced along pixel edges, pixel centres with zero-width spikes,
/// collinear runs, narrow arms, skylines with steps of 0.2 cm a hair off the axes, islands near
/// the edge.
std::vector<GeneratedOutline> generated_outlines(int count, std::uint64_t seed = 1);

/// A smooth, hand-like blob of so many points, some 8 cm across.
geometry::Ring generated_blob(int points, std::uint64_t seed = 1);

}  // namespace drapewright::support
