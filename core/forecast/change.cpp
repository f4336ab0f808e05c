// How a wound changes: the trend of its assessments, and the wound as it will be.
#include <cmath>

#include "core/base/calendar.h"
#include "core/forecast/patient.h"
#include "core/geometry/measures.h"

namespace drapewright::forecast {
namespace {

double area_cm2(const wound::Assessment& assessment) {
  double area = 0;
  for (const wound::Wound& wound : assessment.wounds) {
    area += std::fabs(geometry::area(wound.outline_cm));
    for (const auto& island : wound.islands_cm) area -= std::fabs(geometry::area(island));
  }
  return area;
}

/// Of y on x by least squares; nothing for fewer than three different x.
std::optional<double> slope_of(const std::vector<std::pair<double, double>>& points) {
  double x = 0, y = 0;
  int different = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    x += points[i].first;
    y += points[i].second;
    if (i == 0 || points[i].first > points[i - 1].first) ++different;
  }
  if (different < 3) return {};
  const auto count = static_cast<double>(points.size());
  double xx = 0, xy = 0;
  for (const auto& point : points) {
    const double off = point.first - x / count;
    xx += off * off;
    xy += off * (point.second - y / count);
  }
  return xy / xx;
}

}  // namespace

std::optional<double> area_change_of(const wound::Case& value) {
  std::vector<std::pair<double, double>> logs;
  for (const wound::Assessment& assessment : value.assessments) {
    const auto day = day_number(assessment.date);
    const double area = area_cm2(assessment);
    if (day && area > 0) logs.emplace_back(*day / 7.0, std::log(area));
  }
  const auto slope = slope_of(logs);
  if (!slope) return {};
  return std::expm1(*slope);
}

wound::Case scaled(const wound::Case& value, double factor) {
  wound::Case result = value;
  for (wound::Wound& wound : result.current().wounds) {
    const geometry::Point centre = geometry::centroid(wound.outline_cm);
    const auto scale = [&](geometry::Ring& ring) {
      for (geometry::Point& point : ring) {
        point = {centre.x + factor * (point.x - centre.x),
                 centre.y + factor * (point.y - centre.y)};
      }
    };
    scale(wound.outline_cm);
    for (auto& island : wound.islands_cm) scale(island);
    wound.depth_cm *= factor;
    wound.wall_run_in_cm *= factor;
    for (auto& pocket : wound.undermining) pocket.extent_cm *= factor;
    for (auto& tunnel : wound.tunnels) tunnel.length_cm *= factor;
  }
  return result;
}

}  // namespace drapewright::forecast
