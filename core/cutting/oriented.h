#pragma once

#include <vector>

#include "core/cutting/convex.h"
#include "core/cutting/turn.h"

namespace drapewright::cutting {

/// What the search handles in place of a piece: convex parts about a reference point. It covers
/// the piece; where the piece has many corners it exceeds it a little.
struct StandIn {
  Point reference;  ///< of the piece, in the job's coordinates
  std::vector<Convex> parts;
  geometry::Ring hull;
  geometry::Polygon cover;  ///< the parts in one, about the reference
  double area_cm2 = 0;      ///< of the piece itself
  double reach_cm = 0;      ///< from the reference to the farthest corner
};

/// Pieces of up to 24 corners are taken as they are. Others are simplified outwards until they
/// have no more than that, or would exceed the piece by a hundredth of its size.
StandIn make_stand_in(const geometry::Polygon& piece);
/// The same with every corner kept: for a piece that leaves no room to be exceeded.
StandIn make_exact_stand_in(const geometry::Polygon& piece);
/// The convex hull: made in next to no time, and all that rows need.
StandIn make_hull_stand_in(const geometry::Polygon& piece);

/// A stand-in turned to one angle.
struct Oriented {
  int id = -1;  ///< in a catalogue of orientations; -1: in none
  double angle_deg = 0;
  std::vector<Convex> parts;
  Box box;  ///< about the reference point
};

void orient(const StandIn& piece, double angle_deg, Oriented& result);

}  // namespace drapewright::cutting
