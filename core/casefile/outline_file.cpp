#include "core/casefile/outline_file.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/outline_formats.h"
#include "core/casefile/outline_text.h"
#include "core/casefile/text_file.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::casefile {

using geometry::Polygon;
using geometry::Ring;

namespace {

OutlineFormat format_of(TextCursor text) {
  text.skip_blanks();
  const char first = text.peek();
  if (first == '<') return OutlineFormat::svg;
  if (first == '{' || first == '[') return OutlineFormat::geojson;
  const std::string_view word = text.word();
  if ((first == 'M' || first == 'm') && (word.size() == 1 || word[1] == '-' || word[1] < 'A')) {
    return OutlineFormat::svg;
  }
  const auto begins = [&](std::string_view name) {
    return word.size() >= name.size() &&
           std::equal(name.begin(), name.end(), word.begin(), [](char a, char b) {
             return a == std::toupper(static_cast<unsigned char>(b));
           });
  };
  const bool wkt = begins("POLYGON") || begins("MULTIPOLYGON") || begins("LINESTRING") ||
                   begins("POINT") || begins("MULTIPOINT") || begins("MULTILINESTRING") ||
                   begins("GEOMETRYCOLLECTION");
  return wkt ? OutlineFormat::wkt : OutlineFormat::csv;
}

/// Of a CSV heading such as "x_mm;y_mm".
std::optional<double> unit_of_heading(std::string_view text) {
  std::string word;
  for (const char c : text.substr(0, text.find('\n'))) {
    if (std::isdigit(static_cast<unsigned char>(c)) != 0) return {};  // corner points
    word += std::isalpha(static_cast<unsigned char>(c)) != 0 ? c : ' ';
  }
  word = " " + word + " ";
  if (word.find(" cm ") != std::string::npos) return 1;
  if (word.find(" mm ") != std::string::npos) return 0.1;
  return {};
}

RawOutlines read_csv(std::string_view text, const std::string& file) {
  const auto said = unit_of_heading(text);
  const bool in_mm = said == 0.1;
  try {
    Ring ring = outline_from_text(text, in_mm ? LengthUnit::mm : LengthUnit::cm);
    // In mm the reader has made cm of them.
    if (in_mm) {
      for (auto& p : ring) p = 10 * p;
    }
    return {{{.outer = std::move(ring), .holes = {}}}, said};
  } catch (const InputError& error) {
    throw error.within({.file = file});
  }
}

double unit_from(std::optional<double> said, std::optional<double> typed, const std::string& file) {
  if (!said && !typed) throw UnitNeeded(file);
  if (said && typed && std::fabs(*said / *typed - 1) > 1e-6) {
    throw InputError(say("the file says that its unit is {1} cm, and {2} cm was asked for",
                         {format_short(*said, 6), format_short(*typed, 6)}),
                     say("no unit, or the file's own"), {.file = file});
  }
  return said ? *said : *typed;
}

void scale(Ring& ring, double by) {
  for (auto& p : ring) p = by * p;
}

void scale(Polygon& polygon, double by) {
  scale(polygon.outer, by);
  for (auto& hole : polygon.holes) scale(hole, by);
}

std::vector<Polygon> outlines_in(std::string_view text, const std::string& file,
                                 std::optional<double> typed) {
  TextCursor cursor(text, file);
  cursor.skip_blanks();
  const OutlineFormat format = format_of(cursor);
  if (format == OutlineFormat::svg) {
    return read_svg(cursor, unit_from(unit_of_svg(cursor), typed, file));
  }
  RawOutlines raw = format == OutlineFormat::wkt       ? read_wkt(cursor)
                    : format == OutlineFormat::geojson ? read_geojson(text, file)
                                                       : read_csv(text, file);
  const double by = unit_from(raw.cm_per_unit, typed, file);
  for (auto& polygon : raw.outlines) scale(polygon, by);
  return std::move(raw.outlines);
}

/// A drawing with more rings than this is something else; who lies in whom takes its square.
constexpr std::size_t most_rings = 300;

bool lies_in(const Ring& inner, const Ring& outer) {
  const Polygon whole{.outer = outer, .holes = {}};
  return std::ranges::all_of(inner,
                             [&](geometry::Point p) { return geometry::contains(whole, p); });
}

}  // namespace

UnitNeeded::UnitNeeded(const std::string& file)
    : InputError(say("the file does not say what its lengths are in"),
                 say("a unit, such as mm or cm"), {.file = file}) {}

std::vector<Polygon> outlines_from(std::string_view text, const std::string& file,
                                   std::optional<double> cm_per_unit) {
  if (cm_per_unit && !(*cm_per_unit > 0 && std::isfinite(*cm_per_unit))) {
    throw InputError(say("a unit of {1} cm", {format_short(*cm_per_unit, 6)}),
                     say("a length above 0"));
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  auto out = outlines_in(text, file, cm_per_unit);
  if (out.empty())
    throw InputError(say("there is no outline"), say("at least one"), {.file = file});
  return out;
}

std::vector<Polygon> read_outlines(const std::string& path, std::optional<double> cm_per_unit) {
  return outlines_from(read_text(path, largest_file_bytes), path, cm_per_unit);
}

Ring opened(Ring ring) {
  if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
  return ring;
}

std::vector<Polygon> nested(const std::vector<Ring>& rings) {
  if (rings.size() > most_rings) {
    throw InputError(say("there are {1} closed lines", {rings.size()}),
                     say("a drawing of wounds, {1} at most", {most_rings}));
  }
  std::vector<std::size_t> by_size(rings.size());
  for (std::size_t i = 0; i < rings.size(); ++i) by_size[i] = i;
  std::ranges::stable_sort(by_size, std::ranges::greater{},
                           [&](std::size_t i) { return std::fabs(geometry::area(rings[i])); });
  std::vector<Polygon> out;
  struct Placed {
    std::size_t ring;
    std::size_t outline;
    bool is_island;
  };
  std::vector<Placed> placed;
  for (const std::size_t i : by_size) {
    const Placed* holder = nullptr;  // the smallest, since larger ones come first
    for (const Placed& other : placed) {
      if (lies_in(rings[i], rings[other.ring])) holder = &other;
    }
    if (holder != nullptr && !holder->is_island) {
      out[holder->outline].holes.push_back(rings[i]);
      placed.push_back({i, holder->outline, true});
    } else {
      out.push_back({.outer = rings[i], .holes = {}});
      placed.push_back({i, out.size() - 1, false});
    }
  }
  return out;
}

}  // namespace drapewright::casefile
