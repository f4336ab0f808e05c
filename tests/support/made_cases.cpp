#include "tests/support/made_cases.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/practice/limits.h"
#include "tests/support/made_outlines.h"

namespace drapewright::support {
namespace {

using geometry::Point;
using geometry::Polygon;
using geometry::Ring;

class CaseMaker {
 public:
  CaseMaker(std::uint64_t seed, const CaseBounds& bounds) : maker_(seed), bounds_(bounds) {}

  wound::Case make() {
    value_.label = "made";
    value_.cautions.reviewed = true;
    value_.assessments.push_back({.date = "2026-01-01"});
    if (sometimes(0.5)) value_.head_direction_deg = maker_.between(0, 360);
    if (sometimes(0.35)) choose_settings();
    if (sometimes(0.25)) value_.supplies = odd_stock();
    add_wounds();
    add_zones();
    choose_port_places();
    move_far_away();
    return std::move(value_);
  }

 private:
  wound::Assessment& seen() { return value_.current(); }
  wound::DressingSettings& settings() { return value_.dressing; }
  bool sometimes(double share) { return maker_.between(0, 1) < share; }
  /// Evenly spread over the orders of magnitude.
  double magnitude(double low, double high) {
    return low * std::pow(high / low, maker_.between(0, 1));
  }
  double hour() { return sometimes(0.2) ? 12 : maker_.between(0.01, 12); }

  // Settings -----------------------------------------------------------------------------------

  void choose_settings() {
    choose(settings().inset_cm, "inset_cm", 1);
    choose(settings().border_cm, "border_cm", 8);
    choose(settings().filler_thickness_cm, "filler_thickness_cm", 5);
    choose(settings().film_overlap_cm, "film_overlap_cm", 3);
    choose(settings().aperture_diameter_cm, "aperture_diameter_cm", 4);
    choose(settings().port_base_diameter_cm, "port_base_diameter_cm", 8);
    choose(settings().bridge_width_cm, "bridge_width_cm", 5);
    choose(settings().tracing_error_mm, "tracing_error_mm", 3);
    choose(settings().change_every_h, "change_every_h", 96);
    choose(settings().course_days, "course_days", 30);
    settings().bridge_wanted = sometimes(0.3);
  }

  /// Left alone, anywhere up to what is still likely, or at a bound of its own.
  void choose(double& setting, std::string_view id, double likely) {
    const practice::Limit& limit = practice::limit(id);
    const double least = std::max(limit.minimum, 0.01 * likely);
    if (sometimes(0.4)) {
      setting = maker_.between(least, likely);
    } else if (sometimes(0.08)) {
      setting = sometimes(0.5) ? limit.maximum : limit.minimum_excluded ? least : limit.minimum;
    }
  }

  supplies::StockList odd_stock() {
    supplies::StockList stock;
    const int lines = maker_.whole(0, 5);
    for (int i = 0; i < lines; ++i) {
      supplies::StockItem item{
          .item = "item " + std::to_string(i + 1),
          .kind = sometimes(0.5) ? supplies::Kind::film_sheet : supplies::Kind::filler_sheet};
      item.length_cm = magnitude(1, 60);
      item.width_cm = sometimes(0.2) ? *item.length_cm : magnitude(1, 60);
      if (item.kind == supplies::Kind::filler_sheet) item.thickness_cm = magnitude(0.2, 5);
      if (sometimes(0.5)) item.unit_cost = maker_.whole(0, 20);
      if (sometimes(0.4)) item.available = maker_.whole(0, 4);
      stock.push_back(std::move(item));
    }
    return stock;
  }

  // Wounds -------------------------------------------------------------------------------------

  void add_wounds() {
    const int count = sometimes(0.6) ? 1 : maker_.whole(1, bounds_.most_wounds);
    double right = 0;
    for (int i = 0; i < count; ++i) {
      const Polygon shape = outline(count == 1 ? 30 : 5);
      const geometry::Box box = geometry::bounding_box(shape.outer);
      const Point at{right + gap() - box.low.x, maker_.between(-3, 3) - box.low.y};
      const Polygon placed = geometry::moved(geometry::Region{shape}, at).front();
      right = std::max(right, geometry::bounding_box(placed.outer).high.x);
      seen().wounds.push_back(wound_of(placed, i));
    }
  }

  /// Between neighbours: under one film, under two, or drawn over each other.
  double gap() {
    const double border = settings().border_cm;
    if (sometimes(0.03)) return -0.5;
    return sometimes(0.6) ? maker_.between(0.05, 2 * border + 0.1)
                          : 2 * border + maker_.between(0, 10);
  }

  Polygon outline(double largest_radius) {
    if (sometimes(0.3)) {
      GeneratedOutline made = any_generated_outline(maker_);
      return std::move(made.polygon);
    }
    const double radius = sometimes(0.2) ? magnitude(0.25, largest_radius)
                                         : maker_.between(0.5, std::min(6.0, largest_radius));
    const int points = static_cast<int>(magnitude(6, bounds_.most_points));
    switch (maker_.whole(0, 6)) {
      case 0:
        return turned(maker_.star(std::max(2, points / 8), radius));
      case 1:
        return turned({Point{0, 0}, {2 * radius, 0.1 * radius}, {0.3 * radius, radius}});
      case 2:
        return turned(maker_.spiral(maker_.between(0.5, 2.5), maker_.between(0.3, 1.5),
                                    maker_.between(0.1, 1), points + 60));
      case 3:
        return turned(maker_.comb(maker_.whole(2, 8), maker_.between(0.2, 1.5),
                                  maker_.between(0.05, 1), maker_.between(1, 5)));
      case 4:
        return turned(maker_.armed_blob(std::max(radius, 1.0), maker_.between(0.05, 1.2),
                                        maker_.between(0.5, 4)));
      case 5:
        // A corridor that the filler just cannot, or just can, pass.
        return turned(maker_.dumbbell(
            radius + 2 * settings().inset_cm,
            2 * settings().inset_cm + (sometimes(0.5) ? 0 : maker_.between(0, 0.02)) + 1e-9,
            maker_.between(0.5, 3)));
      default:
        return turned(maker_.blob(points, radius));
    }
  }

  Polygon turned(Ring ring) {
    return {geometry::turned(std::move(ring), sometimes(0.2) ? 0 : maker_.between(0, 360)), {}};
  }

  wound::Wound wound_of(const Polygon& shape, int index) {
    wound::Wound wound{.id = std::string(1, static_cast<char>('A' + index)),
                       .outline_cm = shape.outer,
                       .islands_cm = shape.holes};
    if (sometimes(0.7))
      wound.depth_cm = sometimes(0.1) ? magnitude(0.01, 30) : maker_.between(0.1, 7);
    if (sometimes(0.4)) wound.wall_run_in_cm = maker_.between(0, 1.5);
    const int pockets = sometimes(0.3) ? maker_.whole(1, 3) : 0;
    for (int i = 0; i < pockets; ++i) {
      wound.undermining.push_back({.from_clock = sometimes(0.3) ? 10.5 : hour(),
                                   .to_clock = sometimes(0.3) ? 1.5 : hour(),
                                   .extent_cm = magnitude(0.1, sometimes(0.1) ? 30 : 5)});
    }
    const int tunnels = sometimes(0.3) ? maker_.whole(1, 3) : 0;
    for (int i = 0; i < tunnels; ++i) {
      wound.tunnels.push_back(
          {.clock = hour(), .length_cm = magnitude(0.1, 50), .explored = sometimes(0.5)});
    }
    return wound;
  }

  // Zones and port -----------------------------------------------------------------------------

  Point edge_point() {
    const auto& wounds = seen().wounds;
    const int which = maker_.whole(0, static_cast<int>(wounds.size()) - 1);
    const Ring& ring = wounds[static_cast<std::size_t>(which)].outline_cm;
    return ring[static_cast<std::size_t>(maker_.whole(0, static_cast<int>(ring.size()) - 1))];
  }

  void add_zones() {
    const int count = sometimes(0.45) ? maker_.whole(1, 4) : 0;
    for (int i = 0; i < count; ++i) {
      const double size = magnitude(0.2, 12);
      // Over the edge, or a way off it.
      const double away = sometimes(0.3) ? 0 : size / 2 + maker_.between(0, 8);
      const double angle = maker_.between(0, 2 * geometry::pi);
      const Point at = edge_point() + away * Point{std::cos(angle), std::sin(angle)};
      seen().skin_zones.push_back(
          {.kind = sometimes(0.5) ? wound::ZoneKind::no_film : wound::ZoneKind::no_port,
           .outline_cm = zone(size, at)});
    }
  }

  Ring zone(double size, Point at) {
    switch (maker_.whole(0, 2)) {
      case 0:
        return geometry::circle(size, at, 60);
      case 1:
        return geometry::rectangle(size, 0.3 * size, at, maker_.between(0, 180));
      default:
        return geometry::moved(maker_.blob(24, size / 2), at);
    }
  }

  void choose_port_places() {
    if (!sometimes(0.15)) return;
    const int count = maker_.whole(1, 3);
    for (int i = 0; i < count; ++i) {
      settings().port_places_cm.push_back(edge_point() +
                                          Point{maker_.between(-4, 4), maker_.between(-4, 4)});
    }
  }

  void move_far_away() {
    if (!sometimes(0.15)) return;
    const Point by{maker_.between(-1e5, 1e5), maker_.between(-1e5, 1e5)};
    for (wound::Wound& wound : seen().wounds) {
      wound.outline_cm = geometry::moved(std::move(wound.outline_cm), by);
      for (Ring& island : wound.islands_cm) island = geometry::moved(std::move(island), by);
    }
    for (wound::SkinZone& zone : seen().skin_zones) {
      zone.outline_cm = geometry::moved(std::move(zone.outline_cm), by);
    }
    for (Point& place : settings().port_places_cm) place = place + by;
  }

  OutlineMaker maker_;
  CaseBounds bounds_;
  wound::Case value_;
};

}  // namespace

wound::Case made_case(std::uint64_t seed, const CaseBounds& bounds) {
  return CaseMaker(seed, bounds).make();
}

}  // namespace drapewright::support
