#include "core/base/say.h"
#include "core/casefile/json_document.h"
#include "core/casefile/outline_formats.h"

namespace drapewright::casefile {
namespace {

using geometry::Polygon;
using geometry::Ring;

JsonValue member(const JsonValue& of, std::string_view name) {
  const auto found = of.member(name);
  if (!found) of.fail(say("there is no member `{1}`", {name}), "GeoJSON (RFC 7946)");
  return *found;
}

std::vector<JsonValue> list(const JsonValue& value, const char* expected) {
  if (value.kind() != JsonKind::list)
    value.fail(say("found {1}", {value.in_words()}), say(expected));
  return value.items();
}

geometry::Point position_in(const JsonValue& value) {
  const auto items = list(value, term("a list of two numbers"));
  if (items.size() != 2 || items[0].kind() != JsonKind::number ||
      items[1].kind() != JsonKind::number) {
    value.fail(say("this is no place in a plane"), say("two numbers [x, y]"));
  }
  return {items[0].number(), items[1].number()};
}

Ring ring_in(const JsonValue& value) {
  Ring out;
  for (const auto& item : list(value, term("a list of places [x, y]")))
    out.push_back(position_in(item));
  if (out.empty() || out.front() != out.back()) {
    value.fail(say("the ring is not closed"), say("its first place at its end"));
  }
  return opened(std::move(out));
}

Polygon polygon_in(const JsonValue& value) {
  Polygon out;
  const auto rings = list(value, term("a list of rings"));
  if (rings.empty()) value.fail(say("there is nothing in the polygon"), say("an outline"));
  for (std::size_t i = 0; i < rings.size(); ++i) {
    (i == 0 ? out.outer : out.holes.emplace_back()) = ring_in(rings[i]);
  }
  return out;
}

void collect(const JsonValue& value, std::vector<Polygon>& out) {
  constexpr const char* expected = term("Polygon, MultiPolygon, Feature or FeatureCollection");
  if (value.kind() != JsonKind::object)
    value.fail(say("found {1}", {value.in_words()}), say(expected));
  const JsonValue type = member(value, "type");
  const std::string kind = type.kind() == JsonKind::text ? type.text() : std::string();
  if (kind == "Polygon") {
    out.push_back(polygon_in(member(value, "coordinates")));
  } else if (kind == "MultiPolygon") {
    for (const auto& item : list(member(value, "coordinates"), term("a list of polygons"))) {
      out.push_back(polygon_in(item));
    }
  } else if (kind == "Feature") {
    collect(member(value, "geometry"), out);
  } else if (kind == "FeatureCollection") {
    for (const auto& item : list(member(value, "features"), term("a list of features")))
      collect(item, out);
  } else {
    type.fail(say("found {1}", {type.in_words()}), say(expected));
  }
}

std::optional<double> unit_in(const JsonValue& root) {
  const auto unit = root.member("unit");
  if (!unit) return {};
  const std::string name = unit->kind() == JsonKind::text ? unit->text() : std::string();
  if (name == "cm") return 1;
  if (name == "mm") return 0.1;
  unit->fail(say("found {1}", {unit->in_words()}), say("\"cm\" or \"mm\""));
}

}  // namespace

RawOutlines read_geojson(std::string_view text, const std::string& file) {
  const JsonDocument document(text, file);
  RawOutlines out;
  collect(document.root(), out.outlines);
  out.cm_per_unit = unit_in(document.root());
  return out;
}

}  // namespace drapewright::casefile
