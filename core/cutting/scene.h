#pragma once

#include <vector>

#include "core/cutting/field.h"
#include "core/cutting/layout.h"
#include "core/cutting/no_fit.h"

namespace drapewright::cutting {

/// A rectangle to place pieces on: a sheet of some kind, or a piece of the strip.
struct Bed {
  int kind = -1;
  double length_cm = 0;
  double width_cm = 0;
};

/// How one piece lies: on which bed, in which orientation, where its reference point is.
struct Pose {
  int bed = -1;          ///< -1: not placed
  int orientation = -1;  ///< in the scene's catalogue; -1: `angle_deg` is none of those
  double angle_deg = 0;
  Point at;
};

/// A job as the search sees it: each different piece once, as a stand-in, with its catalogue of
/// orientations: all that are allowed, or, where any is, those that lay an edge along a side.
class Scene {
 public:
  enum class Detail { parts, hulls };
  explicit Scene(const Job& job, Detail detail = Detail::parts);

  int pieces() const { return static_cast<int>(type_.size()); }
  bool any_angle() const { return any_angle_; }
  int type(int piece) const { return type_[static_cast<std::size_t>(piece)]; }
  const StandIn& stand_in(int piece) const { return types_[static_cast<std::size_t>(type(piece))]; }
  /// Catalogue numbers of the orientations of a piece.
  const std::vector<int>& orientations(int piece) const {
    return of_type_[static_cast<std::size_t>(type(piece))];
  }
  const Oriented& orientation(int number) const {
    return catalogue_[static_cast<std::size_t>(number)];
  }
  NoFitTable& no_fits() { return no_fits_; }
  double edge_gap_cm() const { return edge_gap_cm_; }
  double pieces_area_cm2() const;

  /// Where the reference point keeps the piece on the bed; low above high where it does not fit.
  Box domain(const Oriented& piece, const Bed& bed) const;
  Placement placement(const Job& job, int piece, const Pose& pose) const;
  /// What stands in for a placed piece, where it lies.
  geometry::Polygon cover(const Placement& placed) const;

 private:
  std::vector<int> type_;
  std::vector<StandIn> types_;
  std::vector<Oriented> catalogue_;
  std::vector<std::vector<int>> of_type_;
  bool any_angle_ = false;
  double edge_gap_cm_ = 0;
  NoFitTable no_fits_;
};

/// Where all pieces lie. Copies of `poses` are its snapshots.
class Arrangement {
 public:
  explicit Arrangement(Scene& scene);

  Scene& scene() const { return *scene_; }
  std::vector<Bed> beds;

  const std::vector<Pose>& poses() const { return poses_; }
  const Pose& pose(int piece) const { return poses_[static_cast<std::size_t>(piece)]; }
  void put(int piece, const Pose& pose);
  void restore(const std::vector<Pose>& poses);
  const Oriented& oriented(int piece) const;
  /// The orientation that a pose names; `scratch` takes one that is not in the catalogue.
  const Oriented& oriented(int piece, const Pose& pose, Oriented& scratch) const;
  /// What `piece` in the given orientation sees on a bed; weights per other piece, or 1.
  void look(int piece, const Oriented& as, int bed, const double* weights, Field& field);
  /// Moves what sticks out of its bed back in. False if some piece does not fit its bed at all.
  bool pull_in();
  /// How far along x the pieces on a bed reach, with the gap to the edge.
  double reach_x(int bed) const;

 private:
  Scene* scene_;
  std::vector<Pose> poses_;
  std::vector<Oriented> own_;   ///< orientations that are not in the catalogue
  std::vector<NoFit> scratch_;  ///< one per other piece, for as long as a field is in use
};

}  // namespace drapewright::cutting
