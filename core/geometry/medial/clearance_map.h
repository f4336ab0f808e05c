#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/tolerances.h"
#include "core/geometry/offset.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// A narrow place between two parts of a region.
struct Neck {
  double width_cm = 0;       ///< diameter of the largest disc that passes through
  Segment across;            ///< from edge to edge through the narrowest place
  double lobe_area_cm2 = 0;  ///< the smaller part that a cut here leaves; where there is also a
                             ///< way round an island, the cut takes the narrowest place there too
  double lobe_width_cm = 0;  ///< diameter of the largest disc in that part
};

/// One stretch of a region that is too narrow for filler at some inset.
struct Arm {
  Region region;
  double area_cm2 = 0;
  double width_cm = 0;  ///< of its widest place
  Point widest_at;
};

/// What an opening of a region leaves out.
struct Unreached {
  std::vector<Arm> arms;  ///< largest area first; they do not overlap
  double area_cm2 = 0;
};

/// How far every point of the plane is from the edge of a region, worked out once and then asked
/// many times: for insets and outsets at any distance, the largest circle, narrow places and what
/// filler cannot reach.
///
/// It rests on the Voronoi diagram of the region's edges (the medial axis and the cells of each
/// edge and corner). Building costs about as much as two offsets by a general-purpose library;
/// every later question costs a fraction of one. Building checks the diagram against what any true
/// one satisfies and starts again at another angle if it must, because the library that computes
/// it has been seen to fail in silence; `sound()` says whether it passed.
///
/// The edge is first thinned by `thinning_cm` and laid on a grid of tolerance::grid_cm. All
/// answers lie on their safe side by as much as that moved it (`stray_cm()`). A region that is
/// shifted, turned or listed in another order is laid on the grid in the same way, so its answers
/// are the same. Values, immutable, safe to ask from several threads.
class ClearanceMap {
 public:
  /// @param region       tidy polygons (see `tidy`) with or without holes, none touching another;
  ///                     extent up to some 200 cm. May be empty.
  /// @param thinning_cm  how far the edge may be moved to save points; finite, >= 0
  /// @throws std::invalid_argument for a thinning outside its domain or points that are not finite
  explicit ClearanceMap(const Region& region, double thinning_cm = tolerance::thinning_cm);
  ~ClearanceMap();
  ClearanceMap(ClearanceMap&&) noexcept;
  ClearanceMap& operator=(ClearanceMap&&) noexcept;

  bool sound() const;
  const std::string& doubt() const;  ///< why it is not sound, in words; empty when it is
  int attempts() const;              ///< how many times it was built
  double stray_cm() const;           ///< the edge that was measured lies this near to the true one
  const Region& region() const;      ///< as it was given

  /// See geometry::inset and geometry::outset. Unverified when the map is not sound or when
  /// `max_error_cm` leaves no room beside twice `stray_cm()`.
  /// @throws std::invalid_argument unless distance >= 0 and max_error > 0, both finite
  Offset inset(double distance_cm, double max_error_cm = tolerance::offset_cm) const;
  Offset outset(double distance_cm, double max_error_cm = tolerance::offset_cm) const;

  // The following throw std::logic_error when the map is not sound: look first.

  /// How many pieces `inset` leaves, without drawing them.
  int pieces(double distance_cm, double max_error_cm = tolerance::offset_cm) const;

  /// The largest circle inside the region. Its radius is the centre's true distance to the edge;
  /// no circle is larger by more than 2 stray_cm(). Nothing for an empty region.
  std::optional<Circle> largest_circle() const;

  /// All places narrower than `narrower_than_cm` that part two wider ones, narrowest first.
  std::vector<Neck> necks(double narrower_than_cm) const;

  /// The parts of the region farther than `inset_cm + band_cm` from every place where a disc of
  /// radius `inset_cm` fits: what filler cut at this inset does not serve. Errs on the large side,
  /// by at most stray_cm() and `max_error_cm` along its edge.
  /// @throws std::invalid_argument unless inset > 0, band >= 0 and max_error > 0, all finite
  Unreached unreached(double inset_cm, double band_cm = tolerance::unfilled_band_cm,
                      double max_error_cm = tolerance::offset_cm) const;

 private:
  struct Impl;
  std::unique_ptr<const Impl> impl_;
};

}  // namespace drapewright::geometry
