#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::support {

/// Outlines of the kinds that have broken offsets: the same ones for the same seed, in cm, valid
/// and without repeated points, unless said otherwise.
class OutlineMaker {
 public:
  explicit OutlineMaker(std::uint64_t seed) : random_(seed) {}

  /// A star with `corners` tips of uneven length.
  geometry::Ring star(int corners, double radius);
  /// A soft closed curve of a few waves.
  geometry::Ring blob(int corners, double radius);
  /// A band of some width wound round a centre.
  geometry::Ring spiral(double turns, double width, double gap, int corners);
  /// A back with teeth, each `width` wide.
  geometry::Ring comb(int teeth, double width, double gap, double length);
  /// The edge of a disc-like set of pixels, corner by corner, as traced from a mask.
  geometry::Ring staircase(int corners, double radius);
  /// Bars of width `step` side by side whose edges lie 1 to 200 grid units off the axes.
  geometry::Ring skyline(int steps, double step);
  /// Two squares joined by a corridor of exactly this width.
  geometry::Ring dumbbell(double square, double corridor_width, double corridor_length);
  /// Two wide ends joined by an arm that tapers from one width to another.
  geometry::Ring tapering_arm(double end, double near_width, double far_width, double length);
  /// The ring with up to `most_parts` points along every edge, some of them twice.
  geometry::Ring with_collinear_runs(const geometry::Ring& ring, int most_parts);
  /// A blob with a thin arm of a constant width.
  geometry::Ring armed_blob(double radius, double arm_width, double arm_length);
  /// A blob with an island at `gap` from its edge.
  geometry::Polygon with_island(double radius, double island_radius, double gap);

  double between(double low, double high);
  int whole(int low, int high);  ///< both included

 private:
  std::mt19937_64 random_;
};

/// An invented outline with islands, as a user might trace or type it: faultless, but not tidy.
/// Within about 30 cm, lengths in cm.
struct GeneratedOutline {
  std::string name;  ///< its kind and number, for messages
  geometry::Polygon polygon;
};

/// `count` outlines of every kind in turn, the same for the same seed on every machine: stars,
/// blobs, combs, staircases traced along pixel edges, pixel centres with zero-width spikes,
/// collinear runs, narrow arms, skylines with steps of 0.2 cm a hair off the axes, islands near
/// the edge, corridors exactly 0.6 cm wide.
std::vector<GeneratedOutline> generated_outlines(int count, std::uint64_t seed = 1);

/// One outline of a kind drawn at random, at any angle and anywhere within 20 cm.
GeneratedOutline any_generated_outline(OutlineMaker& maker);

}  // namespace drapewright::support
