#pragma once

#include <string>
#include <vector>

#include "core/base/extra_members.h"
#include "core/geometry/shape.h"

namespace drapewright::wound {

/// Tissue lifted off under the wound's edge, over a range of clock hours (clockwise, may pass 12).
struct Undermining {
  double from_clock = 12;  ///< (0, 12]
  double to_clock = 12;    ///< (0, 12]
  double extent_cm = 0;    ///< > 0, outwards from the wound's edge
  ExtraMembers extra;
  friend bool operator==(const Undermining&, const Undermining&) = default;
};

/// A narrow passage that leads away from the wound.
struct Tunnel {
  double clock = 12;     ///< (0, 12]
  double length_cm = 0;  ///< > 0
  bool explored = false;
  ExtraMembers extra;
  friend bool operator==(const Tunnel&, const Tunnel&) = default;
};

/// One wound as it was seen from above.
struct Wound {
  std::string id;  ///< 1 to 16 characters, unique in an assessment
  geometry::Ring outline_cm;
  std::vector<geometry::Ring> islands_cm;  ///< intact skin inside the outline
  /// What the hand drew, before it was smoothed to the outline; empty where it was not drawn
  /// freehand. Kept to look back at; nothing is worked out from it.
  geometry::Ring trace_cm;
  double depth_cm = 0;                     ///< at the deepest point; 0: not deep, or not measured
  double wall_run_in_cm = 0;  ///< how far the wall runs inward from skin edge to bed; 0: straight
  std::vector<Undermining> undermining;
  std::vector<Tunnel> tunnels;
  ExtraMembers extra;
  friend bool operator==(const Wound&, const Wound&) = default;
};

enum class ZoneKind {
  no_film,  ///< film must be trimmed clear of it
  no_port,  ///< neither aperture nor port base on it
};

/// A part of the skin that takes no film or no port.
struct SkinZone {
  ZoneKind kind = ZoneKind::no_film;
  geometry::Ring outline_cm;
  std::string note;
  ExtraMembers extra;
  friend bool operator==(const SkinZone&, const SkinZone&) = default;
};

}  // namespace drapewright::wound
