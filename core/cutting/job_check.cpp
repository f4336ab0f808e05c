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

void require(bool holds, const std::string& problem, const std::string& expected,
             const std::string& pointer) {
  if (!holds) throw InputError(problem, expected, {.pointer = pointer});
}

std::string item(const std::string& list, std::size_t index) {
  return "/" + list + "/" + std::to_string(index);
}

bool is_side(double cm) { return std::isfinite(cm) && cm > 0 && cm <= largest_side_cm; }

void check_sheet(const SheetKind& sheet, std::size_t index) {
  const std::string which = "sheet " + std::to_string(index + 1), at = item("sheets", index);
  require(
      is_side(sheet.length_cm) && is_side(sheet.width_cm),
      which + " measures " + format_short(sheet.length_cm) + " x " + format_short(sheet.width_cm),
      "sides above 0, up to " + format_short(largest_side_cm), at);
  require(std::isfinite(sheet.unit_cost) && sheet.unit_cost >= 0,
          which + " costs " + format_short(sheet.unit_cost), "0 or more", at + "/unit_cost");
  require(!sheet.available || *sheet.available >= 0,
          which + " is there " + std::to_string(sheet.available.value_or(0)) + " times",
          "0 or more", at + "/available");
}

void check_piece(const geometry::Polygon& piece, std::size_t index) {
  const std::string which = "piece " + std::to_string(index + 1) + ": ";
  const std::string at = item("pieces", index);
  const auto report = [&](const std::optional<geometry::ShapeFault>& fault,
                          const std::string& pointer) {
    if (!fault) return;
    throw InputError(
        which + fault->problem, fault->expected,
        {.pointer = pointer, .drawing = DrawingPosition{fault->where.x, fault->where.y}});
  };
  report(geometry::find_fault(piece.outer, largest_side_cm), at + "/outer");
  for (std::size_t k = 0; k < piece.holes.size(); ++k) {
    report(geometry::find_fault(piece.holes[k], largest_side_cm), at + item("holes", k));
  }
  report(geometry::find_island_fault(piece.outer, piece.holes, largest_side_cm), at + "/holes");
}

void check_gap(double cm, const std::string& name, const std::string& member) {
  require(std::isfinite(cm) && cm >= 0 && cm < largest_side_cm, name + " is " + format_short(cm),
          "0 or more", member);
}

void check_turns(const std::vector<double>& angles_deg) {
  require(!angles_deg.empty(), "no turn is allowed", "at least one angle", "/rotations_deg");
  for (std::size_t k = 0; k < angles_deg.size(); ++k) {
    require(std::isfinite(angles_deg[k]), "an angle is not a number", "degrees",
            item("rotations_deg", k));
  }
}

}  // namespace

void check(const Job& job) {
  require(job.strip_width_cm.has_value() != !job.sheets.empty(),
          job.sheets.empty() ? "there is neither a sheet nor a strip to cut from"
                             : "there are sheets and a strip",
          "either sheets or a strip's width", job.sheets.empty() ? "" : "/sheets");
  if (job.strip_width_cm) {
    require(is_side(*job.strip_width_cm),
            "the strip is " + format_short(*job.strip_width_cm) + " wide",
            "a width above 0, up to " + format_short(largest_side_cm), "/strip_width_cm");
  }
  for (std::size_t i = 0; i < job.sheets.size(); ++i) check_sheet(job.sheets[i], i);
  check_gap(job.gap_cm, "the gap between pieces", "/gap_cm");
  check_gap(job.edge_gap_cm, "the gap to the edge", "/edge_gap_cm");
  check_gap(job.least_off_cut_cm, "the least off-cut", "/least_off_cut_cm");
  if (job.rotations_deg) check_turns(*job.rotations_deg);
  for (std::size_t i = 0; i < job.pieces.size(); ++i) check_piece(job.pieces[i], i);
}

}  // namespace drapewright::cutting
