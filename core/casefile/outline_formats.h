#pragma once

#include <optional>
#include <vector>

#include "core/casefile/text_cursor.h"
#include "core/geometry/shape.h"

namespace drapewright::casefile {

/// The readers of the single formats, for outline_file.cpp. All but SVG's give lengths in the
/// file's unit; SVG's curves have to know their size.

/// What was read, and what the file says its unit is.
struct RawOutlines {
  std::vector<geometry::Polygon> outlines;
  std::optional<double> cm_per_unit;
};

RawOutlines read_wkt(TextCursor text);
/// @param text must outlive the call
RawOutlines read_geojson(std::string_view text, const std::string& file);

/// What an SVG document says its unit is; nothing for bare path data.
std::optional<double> unit_of_svg(TextCursor text);
/// In cm.
std::vector<geometry::Polygon> read_svg(TextCursor text, double cm_per_unit);

/// The closed rings that SVG path data draws, in cm, y up; curves as chords.
/// @throws InputError for what is no path data, a curve too large for a wound, too many points
std::vector<geometry::Ring> rings_of_path(TextCursor data, double cm_per_unit);

/// Sorts rings by which lies in which: one inside an outline is an island of it, one inside an
/// island is an outline again.
std::vector<geometry::Polygon> nested(const std::vector<geometry::Ring>& rings);

/// Leaves a repeated first point at the end away.
geometry::Ring opened(geometry::Ring ring);

}  // namespace drapewright::casefile
