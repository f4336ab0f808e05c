#include "core/casefile/shape_json.h"

namespace drapewright::casefile {

void write_point(JsonWriter& out, std::string_view name,
                 const std::optional<geometry::Point>& point) {
  out.name(name);
  if (point) {
    out.point(*point);
  } else {
    out.null();
  }
}

void write_line(JsonWriter& out, std::string_view name,
                const std::optional<geometry::Segment>& line) {
  out.name(name);
  if (line) {
    out.ring({line->from, line->to}, false);
  } else {
    out.null();
  }
}

void write_piece(JsonWriter& out, const geometry::Polygon& piece) {
  out.begin_object();
  out.name("outer");
  out.ring(piece.outer, true);
  out.begin_list("holes");
  for (const auto& hole : piece.holes) out.ring(hole, true);
  out.end_list();
  out.end_object();
}

void write_pieces(JsonWriter& out, std::string_view name, const geometry::Region& pieces) {
  out.begin_list(name);
  for (const auto& piece : pieces) write_piece(out, piece);
  out.end_list();
}

}  // namespace drapewright::casefile
