#include "core/cutting/job_check.h"

#include <cmath>
#include <string>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
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
  const std::size_t number = index + 1;
  const std::string at = item("sheets", index);
  require(is_side(sheet.length_cm) && is_side(sheet.width_cm),
          say("sheet {1} measures {2} x {3}",
              {number, format_short(sheet.length_cm), format_short(sheet.width_cm)}),
          say("sides above 0, up to {1}", {format_short(largest_side_cm)}), at);
  require(std::isfinite(sheet.unit_cost) && sheet.unit_cost >= 0,
          say("sheet {1} costs {2}", {number, format_short(sheet.unit_cost)}), say("0 or more"),
          at + "/unit_cost");
  require(!sheet.available || *sheet.available >= 0,
          say("sheet {1} is there {2} times", {number, sheet.available.value_or(0)}),
          say("0 or more"), at + "/available");
}

void check_piece(const geometry::Polygon& piece, std::size_t index) {
  const std::string at = item("pieces", index);
  const auto report = [&](const std::optional<geometry::ShapeFault>& fault,
                          const std::string& pointer) {
    if (!fault) return;
    throw InputError(
        say("piece {1}: {2}", {index + 1, fault->problem}), fault->expected,
        {.pointer = pointer, .drawing = DrawingPosition{fault->where.x, fault->where.y}});
  };
  report(geometry::find_fault(piece.outer, largest_side_cm), at + "/outer");
  for (std::size_t k = 0; k < piece.holes.size(); ++k) {
    report(geometry::find_fault(piece.holes[k], largest_side_cm), at + item("holes", k));
  }
  report(geometry::find_island_fault(piece.outer, piece.holes, largest_side_cm), at + "/holes");
}

void check_gap(double cm, const char* problem, const std::string& member) {
  require(std::isfinite(cm) && cm >= 0 && cm < largest_side_cm, say(problem, {format_short(cm)}),
          say("0 or more"), member);
}

void check_turns(const std::vector<double>& angles_deg) {
  require(!angles_deg.empty(), say("no turn is allowed"), say("at least one angle"),
          "/rotations_deg");
  for (std::size_t k = 0; k < angles_deg.size(); ++k) {
    require(std::isfinite(angles_deg[k]), say("an angle is not a number"), say("degrees"),
            item("rotations_deg", k));
  }
}

}  // namespace

void check(const Job& job) {
  require(job.strip_width_cm.has_value() != !job.sheets.empty(),
          job.sheets.empty() ? say("there is neither a sheet nor a strip to cut from")
                             : say("there are sheets and a strip"),
          say("either sheets or a strip's width"), job.sheets.empty() ? "" : "/sheets");
  if (job.strip_width_cm) {
    require(is_side(*job.strip_width_cm),
            say("the strip is {1} wide", {format_short(*job.strip_width_cm)}),
            say("a width above 0, up to {1}", {format_short(largest_side_cm)}), "/strip_width_cm");
  }
  for (std::size_t i = 0; i < job.sheets.size(); ++i) check_sheet(job.sheets[i], i);
  check_gap(job.gap_cm, term("the gap between pieces is {1}"), "/gap_cm");
  check_gap(job.edge_gap_cm, term("the gap to the edge is {1}"), "/edge_gap_cm");
  check_gap(job.least_off_cut_cm, term("the least off-cut is {1}"), "/least_off_cut_cm");
  if (job.rotations_deg) check_turns(*job.rotations_deg);
  for (std::size_t i = 0; i < job.pieces.size(); ++i) check_piece(job.pieces[i], i);
}

}  // namespace drapewright::cutting
