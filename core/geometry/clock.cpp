#include "core/geometry/clock.h"

#include <cmath>

#include "core/geometry/measures.h"

namespace drapewright::geometry {
namespace {

constexpr double degrees_per_hour = 30;
constexpr double hours = 12;
/// Rounding errors only: what points straight to the head is 12 o'clock, not a hair past 0.
constexpr double hour_rounding = 1e-9;

double into_clock(double hour) {
  const double rest = hour - hours * std::floor(hour / hours);
  return rest < hour_rounding || rest > hours ? hours : rest;
}

}  // namespace

double clock_hour(Point centre, Point p, double head_deg) {
  return into_clock((head_deg - direction_deg(centre, p)) / degrees_per_hour);
}

double clock_direction_deg(double hour, double head_deg) {
  const double direction = std::fmod(head_deg - degrees_per_hour * hour, 360.0);
  const double positive = direction < 0 ? direction + 360 : direction;
  return positive < 360 ? positive : 0;  // a tiny negative angle rounds up to the full turn
}

int clock_sector(Point centre, Point p, double head_deg) {
  const int nearest = static_cast<int>(std::lround(clock_hour(centre, p, head_deg)));
  return nearest == 0 ? 12 : nearest;
}

double clock_span(double from_hour, double to_hour) { return into_clock(to_hour - from_hour); }

}  // namespace drapewright::geometry
