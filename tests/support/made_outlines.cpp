#include "tests/support/made_outlines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/base/tolerances.h"
#include "core/geometry/shapes.h"
#include "tests/support/pixel_trace.h"

namespace drapewright::support {
namespace {

using geometry::pi;
using geometry::Point;
using geometry::Ring;

Point polar(double radius, double angle) {
  return {radius * std::cos(angle), radius * std::sin(angle)};
}

}  // namespace

double OutlineMaker::between(double low, double high) {
  return low + (high - low) * static_cast<double>(random_() >> 11) * 0x1p-53;
}

int OutlineMaker::whole(int low, int high) {
  return low + static_cast<int>(random_() % static_cast<std::uint64_t>(high - low + 1));
}

Ring OutlineMaker::star(int corners, double radius) {
  Ring ring;
  for (int i = 0; i < 2 * corners; ++i) {
    const double reach = i % 2 == 0 ? between(0.6, 1.0) : between(0.15, 0.5);
    ring.push_back(polar(radius * reach, pi * i / corners));
  }
  return ring;
}

Ring OutlineMaker::blob(int corners, double radius) {
  std::array<double, 5> size{};
  std::array<double, 5> phase{};
  for (std::size_t k = 0; k < size.size(); ++k) {
    size[k] = between(0, 0.28) / static_cast<double>(k + 1);
    phase[k] = between(0, 2 * pi);
  }
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * pi * i / corners;
    double reach = 1;
    for (std::size_t k = 0; k < size.size(); ++k)
      reach += size[k] * std::cos(static_cast<double>(k + 1) * angle + phase[k]);
    ring.push_back(polar(radius * std::max(reach, 0.2), angle));
  }
  return ring;
}

Ring OutlineMaker::spiral(double turns, double width, double gap, int corners) {
  Ring outer;
  Ring inner;
  const double pitch = width + gap;
  const double start = width + between(0.1, 0.5);
  for (int i = 0; i < corners / 2; ++i) {
    const double angle = 2 * pi * turns * i / (corners / 2 - 1);
    const double radius = start + pitch * angle / (2 * pi);
    outer.push_back(polar(radius + width, angle));
    inner.push_back(polar(radius, angle));
  }
  Ring ring = outer;
  ring.insert(ring.end(), inner.rbegin(), inner.rend());
  return ring;
}

Ring OutlineMaker::comb(int teeth, double width, double gap, double length) {
  Ring ring{{0, -1}, {teeth * (width + gap), -1}};
  for (int i = teeth; i-- > 0;) {
    const double x = i * (width + gap);
    const double tip = length * between(0.5, 1);
    ring.push_back({x + width + 0.5 * gap, 0});
    ring.push_back({x + width + 0.5 * gap, tip});
    ring.push_back({x + 0.5 * gap, tip});
    ring.push_back({x + 0.5 * gap, 0});
  }
  return ring;
}

Ring OutlineMaker::staircase(int corners, double radius) {
  // A column of pixels has one top and one bottom: walk the tops to the right, the bottoms back.
  const int columns = std::max(2, corners / 4);
  const double pixel = 2 * radius / columns;
  const double wave = between(1, 4);
  std::vector<double> top(static_cast<std::size_t>(columns));
  std::vector<double> bottom(top);
  for (int i = 0; i < columns; ++i) {
    const double x = (i + 0.5) * pixel - radius;
    const double half = std::sqrt(radius * radius - x * x);
    const double bend = 0.3 * radius * std::sin(wave * x / radius);
    const auto at = static_cast<std::size_t>(i);
    top[at] = pixel * (std::round((bend + half) / pixel) + whole(1, 2));
    bottom[at] = pixel * (std::round((bend - half) / pixel) - whole(1, 2));
    if (at > 0 && top[at] == top[at - 1]) top[at] += pixel;
    if (at > 0 && bottom[at] == bottom[at - 1]) bottom[at] -= pixel;
  }
  Ring ring;
  for (int i = 0; i < columns; ++i) {
    const auto at = static_cast<std::size_t>(i);
    ring.push_back({i * pixel, bottom[at]});
    ring.push_back({(i + 1) * pixel, bottom[at]});
  }
  for (int i = columns; i-- > 0;) {
    const auto at = static_cast<std::size_t>(i);
    ring.push_back({(i + 1) * pixel, top[at]});
    ring.push_back({i * pixel, top[at]});
  }
  return ring;
}

Ring OutlineMaker::skyline(int steps, double step) {
  const auto off = [&] { return tolerance::grid_cm * whole(1, 200) * (whole(0, 1) * 2 - 1); };
  Ring ring{{off(), off()}, {steps * step + off(), off()}};
  double height = step * whole(3, 12);
  for (int i = steps; i-- > 0;) {
    // Never the same twice: two bars of a height may cross each other by a hair.
    const double change = step * whole(1, 3);
    height += height - change >= 2 * step && whole(0, 1) == 0 ? -change : change;
    ring.push_back({(i + 1) * step + off(), height + off()});
    ring.push_back({i * step + off(), height + off()});
  }
  return ring;
}

Ring OutlineMaker::dumbbell(double square, double corridor_width, double corridor_length) {
  const double low = 0.5 * (square - corridor_width);
  const double high = 0.5 * (square + corridor_width);
  const double right = square + corridor_length;
  return {{0, 0},
          {square, 0},
          {square, low},
          {right, low},
          {right, 0},
          {right + square, 0},
          {right + square, square},
          {right, square},
          {right, high},
          {square, high},
          {square, square},
          {0, square}};
}

Ring OutlineMaker::tapering_arm(double end, double near_width, double far_width, double length) {
  const double low_near = -near_width / 2;
  const double low_far = -far_width / 2;
  return {{-2 * end, -end},        {0, -end},      {0, low_near},
          {length, low_far},       {length, -end}, {length + 2 * end, -end},
          {length + 2 * end, end}, {length, end},  {length, -low_far},
          {0, -low_near},          {0, end},       {-2 * end, end}};
}

Ring OutlineMaker::with_collinear_runs(const Ring& corners, int most_parts) {
  Ring ring;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point a = corners[i];
    const Point b = corners[(i + 1) % corners.size()];
    const int parts = whole(1, most_parts);
    for (int k = 0; k < parts; ++k) ring.push_back(a + (static_cast<double>(k) / parts) * (b - a));
    if (whole(0, 3) == 0) ring.push_back(ring.back());
  }
  return ring;
}

Ring OutlineMaker::armed_blob(double radius, double arm_width, double arm_length) {
  const double half = std::asin(0.5 * arm_width / radius);
  Ring ring;
  const int corners = 60;
  for (int i = 0; i <= corners; ++i)
    ring.push_back(polar(radius, half + (2 * pi - 2 * half) * i / corners));
  ring.push_back({radius + arm_length, -0.5 * arm_width});
  ring.push_back({radius + arm_length, 0.5 * arm_width});
  return geometry::turned(ring, between(0, 360));
}

geometry::Polygon OutlineMaker::with_island(double radius, double island_radius, double gap) {
  const Ring outer = geometry::circle(2 * radius, {}, 80);
  Ring island = geometry::circle(2 * island_radius,
                                 polar(radius - gap - island_radius, between(0, 2 * pi)), 31);
  std::reverse(island.begin(), island.end());
  return {outer, {island}};
}

namespace {

geometry::Polygon alone(Ring ring) { return {std::move(ring), {}}; }

geometry::Polygon placed(geometry::Polygon polygon, OutlineMaker& maker) {
  const double turn = maker.between(0, 360);
  const Point by{maker.between(-20, 20), maker.between(-20, 20)};
  return geometry::moved(geometry::turned(geometry::Region{std::move(polygon)}, turn), by).front();
}

/// Islands of 0.1 to 1 cm, as near as 0.02 cm to the edge.
geometry::Polygon island_near_edge(OutlineMaker& maker) {
  const double radius = maker.between(2, 7);
  return maker.with_island(radius, maker.between(0.05, 0.25) * radius, maker.between(0.02, 1));
}

struct Kind {
  const char* name;
  geometry::Polygon (*make)(OutlineMaker&);
  bool placed = true;  ///< turned and moved; not where the axes or the pixels matter
};

constexpr std::array<Kind, 10> kinds{{
    {"star", [](auto& m) { return alone(m.star(m.whole(3, 20), m.between(1, 8))); }},
    {"blob", [](auto& m) { return alone(m.blob(m.whole(30, 300), m.between(0.5, 8))); }},
    {"comb",
     [](auto& m) {
       return alone(m.comb(m.whole(2, 12), m.between(0.3, 1.2), m.between(0.05, 1), 5));
     }},
    {"staircase", [](auto& m) { return alone(traced_along_edges(m, m.whole(4, 35))); }, false},
    {"spiky", [](auto& m) { return alone(traced_through_centres(m, m.whole(4, 35))); }, false},
    {"collinear",
     [](auto& m) {
       return alone(m.with_collinear_runs(m.blob(m.whole(4, 12), m.between(1, 6)), 30));
     }},
    {"arm",
     [](auto& m) {
       return alone(m.tapering_arm(m.between(0.7, 2), m.between(0.05, 1.2), m.between(0.05, 1.2),
                                   m.between(2, 8)));
     }},
    {"skyline", [](auto& m) { return alone(m.skyline(m.whole(5, 40), 0.2)); }, false},
    {"islands", island_near_edge},
    {"corridor", [](auto& m) { return alone(m.dumbbell(2, 0.6, m.between(0.5, 3))); }},
}};

GeneratedOutline outline_of(const Kind& kind, OutlineMaker& maker) {
  geometry::Polygon polygon = kind.make(maker);
  if (kind.placed) polygon = placed(std::move(polygon), maker);
  return {kind.name, std::move(polygon)};
}

}  // namespace

GeneratedOutline any_generated_outline(OutlineMaker& maker) {
  const auto kind = static_cast<std::size_t>(maker.whole(0, static_cast<int>(kinds.size()) - 1));
  return outline_of(kinds[kind], maker);
}

std::vector<GeneratedOutline> generated_outlines(int count, std::uint64_t seed) {
  OutlineMaker maker(seed);
  std::vector<GeneratedOutline> outlines;
  for (int i = 0; i < count; ++i) {
    outlines.push_back(outline_of(kinds[static_cast<std::size_t>(i) % kinds.size()], maker));
    outlines.back().name += " " + std::to_string(i);
  }
  return outlines;
}

}  // namespace drapewright::support
