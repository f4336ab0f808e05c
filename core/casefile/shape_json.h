#pragma once

#include <optional>
#include <string_view>

#include "core/casefile/json_writer.h"
#include "core/geometry/shape.h"

namespace drapewright::casefile {

/// null where there is none.
void write_point(JsonWriter& out, std::string_view name,
                 const std::optional<geometry::Point>& point);
void write_line(JsonWriter& out, std::string_view name,
                const std::optional<geometry::Segment>& line);

/// Outer ring and holes, closed.
void write_piece(JsonWriter& out, const geometry::Polygon& piece);
void write_pieces(JsonWriter& out, std::string_view name, const geometry::Region& pieces);

}  // namespace drapewright::casefile
