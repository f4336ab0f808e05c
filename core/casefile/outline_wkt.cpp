#include <algorithm>
#include <cctype>

#include "core/base/say.h"
#include "core/casefile/outline_formats.h"

namespace drapewright::casefile {
namespace {

using geometry::Polygon;
using geometry::Ring;

std::string keyword_at(TextCursor& text) {
  text.skip_blanks();
  std::string word;
  for (TextCursor ahead = text; std::isalpha(static_cast<unsigned char>(ahead.peek())) != 0;
       ahead.advance()) {
    word += static_cast<char>(std::toupper(static_cast<unsigned char>(ahead.peek())));
  }
  return word;
}

Ring ring_in(TextCursor& text) {
  Ring out;
  text.expect('(');
  do {
    const double x = text.number();
    const double y = text.number();
    out.push_back({x, y});
    text.skip_blanks();
    if (text.peek() != ',' && text.peek() != ')') text.fail(say("\",\" or \")\" after x and y"));
  } while (text.take(','));
  if (out.front() != out.back())
    text.fail(say("the ring is not closed"), say("its first point at its end"));
  text.expect(')');
  return opened(std::move(out));
}

Polygon polygon_in(TextCursor& text) {
  Polygon out;
  text.expect('(');
  out.outer = ring_in(text);
  while (text.take(',')) out.holes.push_back(ring_in(text));
  text.expect(')');
  return out;
}

std::vector<Polygon> polygons_in(TextCursor& text) {
  std::vector<Polygon> out;
  text.expect('(');
  do {
    out.push_back(polygon_in(text));
  } while (text.take(','));
  text.expect(')');
  return out;
}

std::vector<Polygon> geometry_in(TextCursor& text) {
  const std::string kind = keyword_at(text);

  if (kind != "POLYGON" && kind != "MULTIPOLYGON" && kind != "LINESTRING") {
    text.fail(say("POLYGON, MULTIPOLYGON or a closed LINESTRING"));
  }
  text.advance(kind.size());
  text.skip_blanks();
  if (keyword_at(text) == "EMPTY")
    text.fail(say("there is nothing in the {1}", {kind}), say("an outline"));
  if (text.peek() != '(') text.fail(say("\"(\": points have x and y alone"));
  if (kind == "POLYGON") return {polygon_in(text)};
  if (kind == "LINESTRING") return {{.outer = ring_in(text), .holes = {}}};
  return polygons_in(text);
}

}  // namespace

RawOutlines read_wkt(TextCursor text) {
  RawOutlines out;
  for (text.skip_blanks(); !text.at_end(); text.skip_blanks()) {
    for (auto& polygon : geometry_in(text)) out.outlines.push_back(std::move(polygon));
    text.take(';');
  }
  return out;
}

}  // namespace drapewright::casefile
