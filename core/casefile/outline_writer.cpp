#include <algorithm>
#include <array>
#include <charconv>
#include <functional>

#include "core/base/say.h"
#include "core/casefile/outline_file.h"

namespace drapewright::casefile {
namespace {

using geometry::Point;
using geometry::Polygon;
using geometry::Ring;

/// The shortest text that reads back as the same number.
std::string exact(double value) {
  std::array<char, 32> digits;
  const auto [end, error] = std::to_chars(digits.begin(), digits.end(), value == 0 ? 0 : value);
  return {digits.begin(), end};
}

/// The rings of a polygon, or the polygons, with a comma between them.
template <typename Items, typename Write>
std::string joined(const Items& items, std::string_view between, Write write) {
  std::string out;
  for (const auto& item : items) {
    if (!out.empty()) out += between;
    out += write(item);
  }
  return out;
}

std::vector<Ring> rings_of(const Polygon& polygon) {
  std::vector<Ring> out{polygon.outer};
  out.insert(out.end(), polygon.holes.begin(), polygon.holes.end());
  return out;
}

Ring closed(Ring ring) {
  ring.push_back(ring.front());
  return ring;
}

std::string wkt_of(const Polygon& polygon) {
  const auto point = [](Point p) { return exact(p.x) + " " + exact(p.y); };
  const auto ring = [&](const Ring& r) { return "(" + joined(closed(r), ", ", point) + ")"; };
  return "(" + joined(rings_of(polygon), ", ", ring) + ")";
}

std::string to_wkt(const std::vector<Polygon>& outlines) {
  if (outlines.size() == 1) return "POLYGON " + wkt_of(outlines.front()) + "\n";
  return "MULTIPOLYGON (" + joined(outlines, ", ", wkt_of) + ")\n";
}

std::string to_geojson(const std::vector<Polygon>& outlines) {
  const auto point = [](Point p) { return "[" + exact(p.x) + ", " + exact(p.y) + "]"; };
  const auto ring = [&](const Ring& r) { return "[" + joined(closed(r), ", ", point) + "]"; };
  const auto polygon = [&](const Polygon& p) {
    return "[" + joined(rings_of(p), ",\n", ring) + "]";
  };
  return "{\"type\": \"MultiPolygon\", \"unit\": \"cm\", \"coordinates\": [\n" +
         joined(outlines, ",\n", polygon) + "]}\n";
}

struct Box {
  Point low{1e300, 1e300};
  Point high{-1e300, -1e300};
};

Box box_of(const std::vector<Polygon>& outlines) {
  Box out;
  for (const auto& polygon : outlines) {
    for (const Point p : polygon.outer) {
      out.low = {std::min(out.low.x, p.x), std::min(out.low.y, p.y)};
      out.high = {std::max(out.high.x, p.x), std::max(out.high.y, p.y)};
    }
  }
  return out;
}

/// The drawing's own coordinates, so that an outline comes back where it was.
std::string to_svg(const std::vector<Polygon>& outlines) {
  const auto point = [](Point p) { return exact(10 * p.x) + "," + exact(-10 * p.y); };
  const auto ring = [&](const Ring& r) { return "M " + joined(r, " L ", point) + " Z"; };
  const auto path = [&](const Polygon& p) {
    return "  <path fill=\"none\" stroke=\"#000000\" stroke-width=\"0.5\" d=\"" +
           joined(rings_of(p), " ", ring) + "\"/>\n";
  };
  const auto [low, high] = box_of(outlines);
  const std::string width = exact(10 * (high.x - low.x)), height = exact(10 * (high.y - low.y));
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width + "mm\" height=\"" + height +
         "mm\" viewBox=\"" + exact(10 * low.x) + " " + exact(-10 * high.y) + " " + width + " " +
         height + "\">\n" + joined(outlines, "", path) + "</svg>\n";
}

std::string to_csv(const std::vector<Polygon>& outlines) {
  if (outlines.size() != 1 || !outlines.front().holes.empty()) {
    throw InputError(say("a list of points cannot hold several outlines or islands"),
                     say("one outline without islands, or SVG, GeoJSON or WKT"));
  }
  return "x_cm,y_cm\n" + joined(outlines.front().outer, "",
                                [](Point p) { return exact(p.x) + "," + exact(p.y) + "\n"; });
}

}  // namespace

std::string outlines_to(OutlineFormat format, const std::vector<Polygon>& outlines) {
  switch (format) {
    case OutlineFormat::wkt:
      return to_wkt(outlines);
    case OutlineFormat::geojson:
      return to_geojson(outlines);
    case OutlineFormat::svg:
      return to_svg(outlines);
    case OutlineFormat::csv:
      return to_csv(outlines);
  }
  throw std::logic_error("no such format");
}

}  // namespace drapewright::casefile
