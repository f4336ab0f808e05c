#include "core/cutting/fit.h"

#include <algorithm>
#include <cmath>

#include "core/base/tolerances.h"
#include "core/cutting/turn.h"
#include "core/geometry/rectangle.h"

namespace drapewright::cutting {
namespace {

/// A strip is as long as anything that a job may hold.
constexpr double strip_length_cm = 1e4;

bool fits_turned(std::span<const geometry::Point> points, double angle_deg, double length,
                 double width) {
  const Turn turn = Turn::by_deg(angle_deg);
  std::vector<geometry::Point> turned(points.size());
  std::transform(points.begin(), points.end(), turned.begin(), turn);
  const geometry::Box box = geometry::bounding_box(turned);
  return box.width() <= length + tolerance::sheet_fit_cm &&
         box.height() <= width + tolerance::sheet_fit_cm;
}

}  // namespace

std::optional<double> turn_that_fits(std::span<const geometry::Point> points, const Job& job,
                                     const SheetKind& sheet, double margin_cm) {
  const double length = sheet.length_cm - 2 * (job.edge_gap_cm + margin_cm);
  const double width = sheet.width_cm - 2 * (job.edge_gap_cm + margin_cm);
  if (length <= 0 || width <= 0) return {};
  if (job.rotations_deg) {
    const auto& angles = *job.rotations_deg;
    const auto found = std::find_if(angles.begin(), angles.end(), [&](double angle) {
      return fits_turned(points, angle, length, width);
    });
    if (found == angles.end()) return {};
    return *found;
  }
  const auto placed = geometry::place_in_rectangle(
      points, std::max(length, width), std::min(length, width), tolerance::sheet_fit_cm);
  if (!placed) return {};
  return (length >= width ? 0 : 90) - placed->angle_deg;
}

std::vector<SheetKind> sheets_at_hand(const Job& job) {
  if (job.strip_width_cm) return {{strip_length_cm, *job.strip_width_cm, 0, {}}};
  std::vector<SheetKind> result;
  std::copy_if(job.sheets.begin(), job.sheets.end(), std::back_inserter(result),
               [](const SheetKind& kind) { return kind.available.value_or(1) > 0; });
  return result;
}

}  // namespace drapewright::cutting
