#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <string>

#include "core/base/say.h"
#include "core/casefile/json_document.h"
#include "core/casefile/outline_formats.h"

namespace drapewright::casefile {
namespace {

using geometry::Ring;

struct Tag {
  std::string name;  ///< without a namespace's prefix
  bool opens = false;
  bool closes = false;
  std::map<std::string, TextCursor, std::less<>> attributes;
};

std::string bare(std::string_view name) {
  const std::size_t colon = name.rfind(':');
  return std::string(colon == std::string_view::npos ? name : name.substr(colon + 1));
}

/// The next tag of the document; text, comments and declarations are passed over.
class SvgTags {
 public:
  explicit SvgTags(TextCursor text) : in_(std::move(text)) {}

  std::optional<Tag> next() {
    while (true) {
      const std::size_t found = in_.rest().find('<');
      if (found == std::string_view::npos) return {};
      in_.advance(found);
      if (in_.rest().starts_with("<!--")) {
        in_.skip_past("-->", term("a comment that does not end"));
      } else if (in_.rest().starts_with("<![CDATA[")) {
        in_.skip_past("]]>", term("character data that does not end"));
      } else if (in_.rest().starts_with("<?") || in_.rest().starts_with("<!")) {
        in_.skip_past(">", term("a declaration that does not end"));
      } else {
        return tag();
      }
    }
  }

 private:
  Tag tag() {
    in_.advance();
    Tag out;
    out.closes = in_.peek() == '/';
    out.opens = !out.closes;
    if (out.closes) in_.advance();
    out.name = bare(in_.word());
    if (out.name.empty()) in_.fail(say("the name of an element"));
    for (in_.skip_blanks(); in_.peek() != '>' && in_.peek() != '/'; in_.skip_blanks()) {
      attribute(out);
    }
    out.closes = in_.take('/') || out.closes;
    in_.expect('>');
    return out;
  }

  void attribute(Tag& out) {
    const std::string name(in_.word());
    if (name.empty()) in_.fail(say("an attribute or \">\""));
    in_.expect('=');
    in_.skip_blanks();
    const char quote = in_.peek();
    if (quote != '"' && quote != '\'') in_.fail(say("a value in quotation marks"));
    in_.advance();
    const std::size_t begin = in_.offset();
    in_.skip_past(std::string_view(&quote, 1), term("a value that does not end"));
    out.attributes.emplace(name, in_.part(begin, in_.offset() - 1));
  }

  TextCursor in_;
};

/// cm, where the unit is one of length; nothing for pixels and per cent.
std::optional<double> length_cm(const Tag& tag, std::string_view name) {
  const auto found = tag.attributes.find(name);
  if (found == tag.attributes.end()) return {};
  TextCursor value = found->second;
  const double number = value.number();
  const std::string_view unit = value.word();
  static constexpr std::pair<std::string_view, double> units[] = {
      {"mm", 0.1}, {"cm", 1}, {"in", 2.54}, {"pt", 2.54 / 72}, {"pc", 2.54 / 6}};
  for (const auto& [known, cm] : units) {
    if (unit == known) return number * cm;
  }
  return {};
}

std::optional<double> unit_of(const Tag& svg) {
  const auto width = length_cm(svg, "width"), height = length_cm(svg, "height");
  const auto box = svg.attributes.find("viewBox");
  if (!width || !height || box == svg.attributes.end()) return {};
  TextCursor value = box->second;
  double numbers[4];
  for (double& number : numbers) {
    number = value.number();
    value.take(',');
  }
  const double across = *width / numbers[2], down = *height / numbers[3];
  if (!(across > 0) || !(down > 0) || !std::isfinite(across) || !std::isfinite(down)) {
    box->second.fail(say("a drawing without a size"), say("a width and a height above 0"));
  }
  // Unless told otherwise the drawing keeps its proportions: the smaller scale holds (section 7.8).
  return std::min(across, down);
}

/// Its content is not drawn where it stands.
bool is_not_drawn(const std::string& name) {
  static constexpr std::string_view names[] = {"defs",    "symbol", "clipPath", "mask",
                                               "pattern", "marker", "metadata", "style"};
  return std::ranges::find(names, name) != std::end(names);
}

/// Drawn, but no path: an outline must not get lost in silence.
bool is_other_shape(const std::string& name) {
  static constexpr std::string_view names[] = {"rect", "circle", "ellipse", "line", "use", "image"};
  return std::ranges::find(names, name) != std::end(names);
}

Ring points_in(TextCursor value, double cm_per_unit) {
  Ring out;
  const TextCursor begin = value;
  for (value.skip_blanks(); !value.at_end(); value.skip_blanks()) {
    const double x = value.number();
    value.take(',');
    const double y = value.number();
    value.take(',');
    out.push_back({cm_per_unit * x, -cm_per_unit * y});
  }
  out = opened(std::move(out));
  if (out.size() < 3)
    begin.fail(say("fewer than three points"), say("three corner points or more"));
  return out;
}

void collect(const Tag& tag, double cm_per_unit, std::vector<Ring>& out) {
  const auto moved = tag.attributes.find("transform");
  if (moved != tag.attributes.end()) {
    moved->second.fail(say("a shape that is moved or scaled by `transform`"),
                       say("coordinates as drawn: apply the transformation before saving"));
  }
  const auto data = tag.attributes.find(tag.name == "path" ? "d" : "points");
  if (data == tag.attributes.end()) return;
  if (tag.name == "path") {
    for (auto& ring : rings_of_path(data->second, cm_per_unit)) out.push_back(std::move(ring));
  } else if (tag.name == "polygon" || tag.name == "polyline") {
    out.push_back(points_in(data->second, cm_per_unit));
  }
}

bool is_document(const TextCursor& text) { return text.peek() == '<'; }

}  // namespace

std::optional<double> unit_of_svg(TextCursor text) {
  if (!is_document(text)) return {};
  const auto first = SvgTags(text).next();
  if (!first || first->name != "svg") text.fail(say("an SVG document: its first element is svg"));
  return unit_of(*first);
}

std::vector<geometry::Polygon> read_svg(TextCursor text, double cm_per_unit) {
  if (!is_document(text)) return nested(rings_of_path(text, cm_per_unit));
  std::vector<Ring> rings;
  SvgTags tags(text);
  int hidden = 0;  // how deep inside what is not drawn
  while (const auto tag = tags.next()) {
    if (is_not_drawn(tag->name)) hidden += (tag->opens ? 1 : 0) - (tag->closes ? 1 : 0);
    if (hidden > 0 || !tag->opens) continue;
    if (is_other_shape(tag->name)) {
      text.fail(say("there is a `{1}`", {tag->name}),
                say("paths and polygons: turn shapes into paths"));
    }
    collect(*tag, cm_per_unit, rings);
  }
  return nested(rings);
}

}  // namespace drapewright::casefile
