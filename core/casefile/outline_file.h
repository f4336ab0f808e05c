#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/geometry/shape.h"

namespace drapewright::casefile {

/// How outlines are exchanged with other programs.
enum class OutlineFormat {
  wkt,      ///< well-known text (OGC 06-103r4, clause 7): POLYGON, MULTIPOLYGON, closed LINESTRING
  geojson,  ///< RFC 7946, its coordinates taken as lengths in a plane
  svg,      ///< paths and polygons of an SVG 1.1 document, or bare path data; y points down there
  csv       ///< one corner point a line, see outline_from_text
};

/// The file does not say how long its unit is: read it again with a unit.
class UnitNeeded : public InputError {
 public:
  explicit UnitNeeded(const std::string& file);
};

/// The outlines of a text, its format recognised by how it begins. Rings inside an outline are its
/// islands.
///
/// A CSV heading ("x_mm y_mm"), an SVG document whose width and height have a unit of length, and
/// GeoJSON with the member `unit` say their unit; pixels say none, since programs differ in how
/// many they put to the inch. Curves become chords within tolerance::offset_cm.
/// @param file         names the text in errors
/// @param cm_per_unit  positive; must agree with what the file says
/// @return outlines in cm, at least one; shapes are not checked here: see wound::check_outline
/// @throws UnitNeeded, or InputError with line and column, what was found and what was expected
std::vector<geometry::Polygon> outlines_from(std::string_view text, const std::string& file,
                                             std::optional<double> cm_per_unit = {});

/// The same of a file of at most `largest_file_bytes`; "-" is standard input.
std::vector<geometry::Polygon> read_outlines(const std::string& path,
                                             std::optional<double> cm_per_unit = {});

/// The outlines as text that `outlines_from` reads back: SVG with 1 unit = 1 mm, the others in cm.
/// WKT cannot say its unit.
/// @throws InputError for CSV with more than one ring, which a list of points cannot hold
std::string outlines_to(OutlineFormat format, const std::vector<geometry::Polygon>& outlines);

}  // namespace drapewright::casefile
