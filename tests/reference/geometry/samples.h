#pragma once

#include <string>
#include <vector>

#include "core/geometry/shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright::reference {

/// One generated outline, tidied.
struct Sample {
  std::string name;
  geometry::Region region;
};

/// The 500 generated outlines that every reference test runs over.
const std::vector<Sample>& samples();

/// Distance to the nearest edge by walking along all of them: slow, and nobody's index.
double walked_distance(const geometry::Region& region, geometry::Point p);

/// How far inside the region p lies, negative outside.
double walked_depth(const geometry::Region& region, geometry::Point p);

}  // namespace drapewright::reference
