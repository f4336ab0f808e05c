#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// What of the skin is spoken for.
struct Zones {
  geometry::Region no_film;
  geometry::Region no_port;
};

/// The skin round all wounds of a case, as bridges and ports see it. What stands in their way is
/// grown when it is first asked for and kept, as every group of wounds asks for the same.
class Skin {
 public:
  /// All three must outlive it.
  Skin(const std::vector<PreparedWound>& wounds, const Zones& zones,
       const wound::DressingSettings& settings);
  ~Skin();
  Skin(const Skin&) = delete;
  Skin& operator=(const Skin&) = delete;

  const Zones& zones() const;

  /// Where no middle of a port may lie: its base or its pad would reach into a zone, or its pad
  /// onto a wound. nullptr when an offset could not be verified.
  const geometry::Region* closed_to_ports() const;

  /// Where no film under a bridge may lie: all wounds and the no_film zones.
  const geometry::Region& closed_to_film() const;

  /// What the middle line of a strip must keep out of on its way from one group of wounds: zones
  /// and all other wounds, grown by half its width. The parts may overlap.
  /// @param group  indices of the wounds that it may cross
  /// @param may_cross_no_port  leaves the no_port zones out
  /// @returns nothing when an offset could not be verified
  std::optional<geometry::Region> closed_to_strips(const std::vector<std::size_t>& group,
                                                   bool may_cross_no_port) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

/// One group of wounds on it. Refers to what outlives it.
struct GroupGround {
  const Skin& skin;
  const geometry::Region& shape;          ///< of the group's wounds
  const std::vector<std::size_t>& group;  ///< their indices
};

/// The round end of a bridge under the port: it holds the aperture with room all round.
double pad_diameter(const wound::DressingSettings& settings);

}  // namespace drapewright::dressing
