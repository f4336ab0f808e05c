#include "app/desktop/document/reshape_case.h"

#include <algorithm>

#include "app/wording/spoken.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "core/tracing/reshape.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Polygon;
using geometry::Region;
using geometry::Ring;
using Kind = ShapeRef::Kind;

constexpr double speck_cm2 = 0.01;  ///< a part of 1 mm x 1 mm is a slip of the hand

bool is_wound(const ShapeRef& ref) { return ref.kind == Kind::wound; }

/// The shape as a region; a wound's islands are its holes.
Region region_of(const wound::Case& value, const ShapeRef& ref) {
  const Polygon bare{outline_of(value, ref), {}};
  if (!is_wound(ref)) return {bare};
  Region islands;
  for (const Ring& island : value.current().wounds[ref.index].islands_cm) {
    islands.push_back({island, {}});
  }
  return islands.empty() ? Region{bare} : geometry::subtract({bare}, islands);
}

/// Gives the shape one part of what an overlay made of it.
void put_part(wound::Case& value, const ShapeRef& ref, const Polygon& part) {
  outline_of(value, ref) = part.outer;
  if (!is_wound(ref)) return;
  auto& wound = value.current().wounds[ref.index];
  wound.islands_cm.clear();
  for (const Ring& hole : part.holes) {
    if (geometry::area(hole) > speck_cm2) wound.islands_cm.push_back(hole);
  }
  wound.trace_cm.clear();
}

void drop_specks(Region& parts) {
  std::erase_if(parts, [](const Polygon& part) { return geometry::area(part) < speck_cm2; });
  std::ranges::sort(parts, std::greater{},
                    [](const Polygon& part) { return geometry::area(part); });
}

/// A part that was cut off becomes a shape of its own, like the one that it came from.
void put_off_cut(wound::Case& value, const ShapeRef& from, const Polygon& part) {
  if (from.kind == Kind::zone) {
    const auto like = value.current().skin_zones[from.index];
    const ShapeRef made = add_zone(value, like.kind, part.outer);
    value.current().skin_zones[made.index].note = like.note;
  } else if (from.kind == Kind::island) {
    add_island(value, from.index, part.outer);
  } else {
    const auto like = value.current().wounds[from.index];
    const ShapeRef made = add_wound(value, part.outer);
    auto& wound = value.current().wounds[made.index];
    wound.depth_cm = like.depth_cm;
    wound.wall_run_in_cm = like.wall_run_in_cm;
    put_part(value, made, part);
  }
}

bool has_pockets(const wound::Wound& wound) {
  return !wound.undermining.empty() || !wound.tunnels.empty();
}

/// The other wounds that an area reaches become part of this one. Not one with pockets: their hours
/// are counted round a middle that it would no longer have.
/// @return nothing then, and `with_pockets` names it
std::optional<Region> join_touched(wound::Case& value, ShapeRef& ref, const Region& area,
                                   std::string& with_pockets) {
  auto& wounds = value.current().wounds;
  Region joined = region_of(value, ref);
  for (std::size_t i = wounds.size(); i-- > 0;) {
    const ShapeRef other{Kind::wound, i, 0};
    if (i == ref.index || !geometry::overlap(region_of(value, other), area)) continue;
    if (has_pockets(wounds[i])) {
      with_pockets = wounds[i].id;
      return std::nullopt;
    }
    joined = geometry::unite(joined, region_of(value, other));
    auto& mine = wounds[ref.index];
    mine.depth_cm = std::max(mine.depth_cm, wounds[i].depth_cm);
    remove_shape(value, other);
    if (i < ref.index) --ref.index;
  }
  return joined;
}

}  // namespace

Refusal add_area(wound::Case& value, const ShapeRef& shape, const Ring& area) {
  wound::Case next = value;
  ShapeRef ref = shape;
  const Region drawn{{area, {}}};
  std::string with_pockets;
  const std::optional<Region> before =
      is_wound(ref) ? join_touched(next, ref, drawn, with_pockets) : region_of(next, ref);
  if (!before) {
    return spoken(
        "Wound {1} has undermining or tunnels, whose hours are counted round its own "
        "middle: they would be lost. Take them out first, and type them anew afterwards.",
        {with_pockets});
  }
  Region parts = geometry::unite(*before, drawn);
  drop_specks(parts);
  if (parts.size() != 1)
    return spoken("What was drawn does not touch this outline: {1}.", {title_of(value, shape)});
  if (!is_wound(ref) && !parts.front().holes.empty()) {
    return spoken("That would leave a hole in it: draw over the whole.");
  }
  put_part(next, ref, parts.front());
  value = std::move(next);
  return std::nullopt;
}

Refusal take_area(wound::Case& value, const ShapeRef& ref, const Ring& area) {
  const Region drawn{{area, {}}};
  const Region before = region_of(value, ref);
  if (!geometry::overlap(before, drawn)) {
    return spoken("What was drawn does not touch this outline: {1}.", {title_of(value, ref)});
  }
  Region parts = geometry::subtract(before, drawn);
  drop_specks(parts);
  if (parts.empty()) return spoken("Nothing would be left of it. Use Remove to take it out.");
  if (!is_wound(ref) && !parts.front().holes.empty()) {
    return spoken("That would leave a hole in it: start outside its edge.");
  }
  put_part(value, ref, parts.front());
  for (std::size_t i = 1; i < parts.size(); ++i) put_off_cut(value, ref, parts[i]);
  return std::nullopt;
}

Refusal split_shape(wound::Case& value, const ShapeRef& ref, const Ring& line) {
  const auto halves = tracing::split(outline_of(value, ref), line);
  if (!halves) return spoken("Draw right across it: in over the edge and out again.");
  const Region before = region_of(value, ref);
  Region kept = geometry::intersect(before, {{halves->first, {}}});
  Region off = geometry::intersect(before, {{halves->second, {}}});
  drop_specks(kept);
  drop_specks(off);
  if (kept.empty() || off.empty()) return spoken("One of the two parts would be a speck.");
  put_part(value, ref, kept.front());
  for (std::size_t i = 1; i < kept.size(); ++i) put_off_cut(value, ref, kept[i]);
  for (const Polygon& part : off) put_off_cut(value, ref, part);
  return std::nullopt;
}

Ring placed(Ring ring, Point about, const Displacement& how) {
  for (Point& p : ring) {
    p = about + how.factor * (geometry::turned(p, how.turn_deg, about) - about) + how.by_cm;
  }
  return ring;
}

void place_anew(wound::Case& value, const ShapeRef& ref, Point about, const Displacement& how) {
  const auto place = [&](Ring& ring) { ring = placed(std::move(ring), about, how); };
  place(outline_of(value, ref));
  if (!is_wound(ref)) return;
  auto& wound = value.current().wounds[ref.index];
  for (Ring& island : wound.islands_cm) place(island);
  place(wound.trace_cm);
}

}  // namespace drapewright::desktop
