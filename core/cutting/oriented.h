#pragma once

#include <vector>

#include "core/cutting/convex.h"
#include "core/cutting/turn.h"

namespace drapewright::cutting {

/// What the search handles in place of a piece: convex parts about a reference point. It covers
/// the piece and exceeds it by at most the tolerance that it was made with.
struct StandIn {
  Point reference;  ///< of the piece, in the job's coordinates
  std::vector<Convex> parts;
  geometry::Ring hull;
  double area_cm2 = 0;  ///< of the piece itself
  double reach_cm = 0;  ///< from the reference to the farthest corner
};

/// @param tolerance_cm how far it may exceed the piece; 0: not at all
StandIn make_stand_in(const geometry::Polygon& piece, double tolerance_cm);

/// A stand-in turned to one angle.
struct Oriented {
  int id = -1;  ///< in a catalogue of orientations; -1: in none
  double angle_deg = 0;
  std::vector<Convex> parts;
  Box box;  ///< about the reference point
};

void orient(const StandIn& piece, double angle_deg, Oriented& result);

}  // namespace drapewright::cutting
