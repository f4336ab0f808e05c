#include "core/cutting/job_check.h"

#include <cmath>
#include <string>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/geometry/validity.h"

namespace drapewright::cutting {
namespace {

/// Far beyond any sheet, and small enough for the verification's integer grid.
constexpr double largest_side_cm = 1000;

void require(bool holds, const std::string& problem, const std::string& expected) {
  if (!holds) throw InputError(problem, expected);
}

bool is_side(double cm) { return std::isfinite(cm) && cm > 0 && cm <= largest_side_cm; }

void check_sheet(const SheetKind& sheet, std::size_t number) {
  const std::string which = "sheet " + std::to_string(number + 1);
  require(
      is_side(sheet.length_cm) && is_side(sheet.width_cm),
      which + " measures " + format_short(sheet.length_cm) + " x " + format_short(sheet.width_cm),
      "sides above 0, up to " + format_short(largest_side_cm));
  require(std::isfinite(sheet.unit_cost) && sheet.unit_cost >= 0,
          which + " costs " + format_short(sheet.unit_cost), "0 or more");
  require(!sheet.available || *sheet.available >= 0,
          which + " is there " + std::to_string(sheet.available.value_or(0)) + " times",
          "0 or more");
}

void check_piece(const geometry::Polygon& piece, std::size_t number) {
  const std::string which = "piece " + std::to_string(number + 1) + ": ";
  const auto report = [&](const geometry::ShapeFault& fault) {
    throw InputError(which + fault.problem, fault.expected,
                     {.drawing = DrawingPosition{fault.where.x, fault.where.y}});
  };
  if (const auto fault = geometry::find_fault(piece.outer, largest_side_cm)) report(*fault);
  for (const geometry::Ring& hole : piece.holes) {
    if (const auto fault = geometry::find_fault(hole, largest_side_cm)) report(*fault);
  }
  if (const auto fault = geometry::find_island_fault(piece.outer, piece.holes, largest_side_cm)) {
    report(*fault);
  }
}

void check_gap(double cm, const std::string& name) {
  require(std::isfinite(cm) && cm >= 0 && cm < largest_side_cm, name + " is " + format_short(cm),
          "0 or more");
}

}  // namespace

void check(const Job& job) {
  require(job.strip_width_cm.has_value() != !job.sheets.empty(),
          job.sheets.empty() ? "there is neither a sheet nor a strip to cut from"
                             : "there are sheets and a strip",
          "either sheets or a strip's width");
  if (job.strip_width_cm) {
    require(is_side(*job.strip_width_cm),
            "the strip is " + format_short(*job.strip_width_cm) + " wide",
            "a width above 0, up to " + format_short(largest_side_cm));
  }
  for (std::size_t i = 0; i < job.sheets.size(); ++i) check_sheet(job.sheets[i], i);
  check_gap(job.gap_cm, "the gap between pieces");
  check_gap(job.edge_gap_cm, "the gap to the edge");
  if (job.rotations_deg) {
    require(!job.rotations_deg->empty(), "no turn is allowed", "at least one angle");
    for (const double angle : *job.rotations_deg) {
      require(std::isfinite(angle), "an angle is not a number", "degrees");
    }
  }
  for (std::size_t i = 0; i < job.pieces.size(); ++i) check_piece(job.pieces[i], i);
}

}  // namespace drapewright::cutting
