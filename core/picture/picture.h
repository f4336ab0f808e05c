#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/extra_members.h"
#include "core/picture/pixel.h"

namespace drapewright::picture {

/// Two places in a picture whose distance was typed: on a ruler, or across a marker.
struct KnownLength {
  Pixel from;
  Pixel to;
  double length_cm = 0;
  ExtraMembers extra;
  friend bool operator==(const KnownLength&, const KnownLength&) = default;
};

/// The four corners of a flat square of known side, in any order.
struct KnownSquare {
  std::array<Pixel, 4> corners;
  double side_cm = 0;
  ExtraMembers extra;
  friend bool operator==(const KnownSquare&, const KnownSquare&) = default;
};

/// What gives a picture its scale.
using Reference = std::variant<KnownLength, KnownSquare>;

/// The limb that a wound lies round, as the picture shows it.
struct LimbView {
  Pixel axis_from;  ///< two places on the limb's middle line
  Pixel axis_to;
  double girth_cm = 0;
  std::optional<double> camera_distance_cm;  ///< from the lens to the nearest skin; none: far away
  ExtraMembers extra;
  friend bool operator==(const LimbView&, const LimbView&) = default;
};

/// A photograph that an outline was traced from, as the case file describes it.
struct Picture {
  std::string file;  ///< a bare file name; it lies beside the case file
  int width_px = 0;
  int height_px = 0;
  std::optional<Reference> reference;  ///< none: it can be looked at, but nothing can be measured
  std::vector<KnownLength> checks;     ///< further known lengths, compared and not calibrated with
  double click_error_px = 1;           ///< how far a click may lie from what it was meant for
  std::optional<LimbView> limb;        ///< the outline was unrolled from this limb
  ExtraMembers extra;
  friend bool operator==(const Picture&, const Picture&) = default;
};

/// Checks every number against its bounds (core/practice), the file name, and that the reference
/// can give a scale. `pointer` is where the picture stands in its case.
/// @throws InputError for the first fault found
void check(const Picture& value, const std::string& pointer = {});

/// Its girth, camera distance and middle line. @throws InputError
void check(const LimbView& value, const std::string& pointer = {});

/// @throws InputError for a reference that gives no scale: the length or side out of bounds,
///         places that are not finite or nearly the same, corners that are no square seen at a
///         slant (three nearly on a line, one inside the triangle of the others)
void check(const Reference& value, const std::string& pointer = {});

}  // namespace drapewright::picture
