// wound_sets DIR [SETS [SECONDS [SEED]]]
//
// Lays out the filler of wound-like sets: the pieces of the plans of 1 to 8 outlines of a folder,
// drawn with a fixed seed, on the generic sheets at their area for a cost. Compares the engine with
// rows of bounding rectangles, worked out here without it, and has GEOS judge every layout.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "core/cutting/layout.h"
#include "core/cutting/verify.h"
#include "core/dressing/plan.h"
#include "core/geometry/measures.h"
#include "core/geometry/rectangle.h"
#include "tests/support/layout_judge.h"
#include "tests/support/outline_files.h"

namespace drapewright {
namespace {

using Clock = std::chrono::steady_clock;
constexpr double gap_cm = 0.3;
constexpr double depth_cm = 1.5;  // one layer of the thinner sheets

std::vector<cutting::SheetKind> generic_sheets() {
  return {{10, 8, 80, {}}, {20, 12, 240, {}}, {30, 20, 600, {}}};
}

struct Sides {
  double length_cm = 0, width_cm = 0;
};

Sides sides_of(const geometry::Polygon& piece) {
  const geometry::Rectangle round = geometry::smallest_enclosing_rectangle(piece.outer);
  return {std::max(round.length_cm, round.width_cm), std::min(round.length_cm, round.width_cm)};
}

/// The heights of the rows that hold the rectangles, first fit by falling height; nothing where
/// one is longer than a row.
std::vector<double> row_heights(std::vector<Sides> rectangles, double row_cm) {
  std::ranges::sort(rectangles, std::greater{}, &Sides::width_cm);
  std::vector<double> heights, filled;
  for (const Sides& sides : rectangles) {
    if (sides.length_cm > row_cm) return {};
    std::size_t row = 0;
    while (row < filled.size() && filled[row] + gap_cm + sides.length_cm > row_cm) ++row;
    if (row == filled.size()) {
      heights.push_back(sides.width_cm);
      filled.push_back(sides.length_cm);
    } else {
      filled[row] += gap_cm + sides.length_cm;
    }
  }
  return heights;
}

/// Sheets of one kind that rows of these heights take: first fit again (they fall already).
int sheets_for_rows(const std::vector<double>& heights, double across_cm) {
  std::vector<double> filled;
  for (const double height : heights) {
    if (height > across_cm) return 0;
    std::size_t sheet = 0;
    while (sheet < filled.size() && filled[sheet] + gap_cm + height > across_cm) ++sheet;
    if (sheet == filled.size()) {
      filled.push_back(height);
    } else {
      filled[sheet] += gap_cm + height;
    }
  }
  return static_cast<int>(filled.size());
}

/// Cheapest of: every size alone, rows along its length or its width; and each piece on the
/// cheapest sheet that holds it.
double cost_of_rows(const cutting::Job& job) {
  std::vector<Sides> rectangles;
  for (const auto& piece : job.pieces) rectangles.push_back(sides_of(piece));
  double best = std::numeric_limits<double>::infinity();
  for (const cutting::SheetKind& kind : job.sheets) {
    const double length_cm = kind.length_cm - 2 * gap_cm, width_cm = kind.width_cm - 2 * gap_cm;
    for (const auto& [along, across] :
         {std::pair(length_cm, width_cm), std::pair(width_cm, length_cm)}) {
      const int sheets = sheets_for_rows(row_heights(rectangles, along), across);
      if (sheets > 0) best = std::min(best, sheets * kind.unit_cost);
    }
  }
  double apart = 0;
  for (const Sides& sides : rectangles) {
    const auto holds = std::ranges::find_if(job.sheets, [&](const cutting::SheetKind& kind) {
      return sides.length_cm <= kind.length_cm - 2 * gap_cm &&
             sides.width_cm <= kind.width_cm - 2 * gap_cm;
    });
    apart += holds == job.sheets.end() ? std::numeric_limits<double>::infinity() : holds->unit_cost;
  }
  return std::min(best, apart);
}

/// The filler pieces of every outline whose pieces all fit the largest sheet.
std::vector<std::vector<geometry::Polygon>> pieces_of(const std::string& folder) {
  std::vector<std::vector<geometry::Polygon>> all;
  for (const std::string& file : support::json_files(folder)) {
    const dressing::Plan plan =
        dressing::plan_dressing(support::read_case_or_outline(file, depth_cm));
    std::vector<geometry::Polygon> pieces;
    for (const dressing::Layer& layer : plan.fill.layers) {
      pieces.insert(pieces.end(), layer.pieces.begin(), layer.pieces.end());
    }
    const bool fit = std::ranges::all_of(pieces, [](const geometry::Polygon& piece) {
      return sides_of(piece).length_cm < 29.4 && sides_of(piece).width_cm < 19.4;
    });
    if (fit && !pieces.empty()) all.push_back(std::move(pieces));
  }
  return all;
}

struct Tally {
  int sets = 0, wins = 0, ties = 0, losses = 0, faults = 0, best_possible = 0;
  double saved = 0;
  void add(double ours, double rows) {
    ++sets;
    (ours < rows - 1e-9 ? wins : ours > rows + 1e-9 ? losses : ties) += 1;
    saved += 1 - ours / rows;
  }
  void print(const std::string& name) const {
    std::printf("| %s | %d | %d | %d | %d | %.1f %% | %d |\n", name.c_str(), sets, wins, ties,
                losses, sets > 0 ? 100 * saved / sets : 0, best_possible);
  }
};

class SetBench {
 public:
  SetBench(std::string folder, double seconds, unsigned seed)
      : wounds_(pieces_of(folder)), seconds_(seconds), random_(seed) {}

  int run(int sets) {
    if (wounds_.empty()) return 2;
    for (int set = 0; set < sets; ++set) lay_out(set);
    std::puts("| wounds | sets | cheaper | equal | dearer | mean saving | proven best |");
    std::puts("|---|---|---|---|---|---|---|");
    for (const auto& [count, tally] : by_count_) tally.print(std::to_string(count));
    all_.print("all");
    std::printf("%d layouts refused by GEOS or by the grid\n", all_.faults);
    std::printf("first layout: longest %.1f ms; %zu pieces at most\n", longest_first_ms_, most_);
    return all_.losses + all_.faults == 0 ? 0 : 1;
  }

 private:
  void lay_out(int set) {
    const int wounds = std::uniform_int_distribution<int>(1, 8)(random_);
    cutting::Job job{.sheets = generic_sheets(), .gap_cm = gap_cm, .edge_gap_cm = gap_cm};
    std::uniform_int_distribution<std::size_t> any(0, wounds_.size() - 1);
    for (int i = 0; i < wounds; ++i) {
      const auto& pieces = wounds_[any(random_)];
      job.pieces.insert(job.pieces.end(), pieces.begin(), pieces.end());
    }
    const auto start = Clock::now();
    double first_ms = -1;
    cutting::Options options{.seed = static_cast<std::uint64_t>(set) + 1};
    options.out_of_time = [&] {
      return std::chrono::duration<double>(Clock::now() - start).count() > seconds_;
    };
    options.on_better = [&](const cutting::Layout&) {
      if (first_ms < 0) {
        first_ms = std::chrono::duration<double, std::milli>(Clock::now() - start).count();
      }
    };
    options.cheapest_will_do = true;
    const cutting::Layout layout = cutting::lay_out(job, options);
    longest_first_ms_ = std::max(longest_first_ms_, first_ms);
    most_ = std::max(most_, job.pieces.size());
    note(wounds, set, job, layout);
  }

  void note(int wounds, int set, const cutting::Job& job, const cutting::Layout& layout) {
    auto fault = cutting::find_fault(job, layout);
    if (!fault) fault = support::fault_by_geos(job, layout);
    if (fault || !layout.unplaced.empty()) {
      std::printf("set %d: %s\n", set, fault ? fault->c_str() : "pieces left over");
      ++all_.faults;
    }
    const double rows = cost_of_rows(job);
    if (layout.cost > rows + 1e-9) std::printf("set %d: %g against %g\n", set, layout.cost, rows);
    for (Tally* tally : {&by_count_[wounds], &all_}) {
      tally->add(layout.cost, rows);
      tally->best_possible += layout.proven_best() ? 1 : 0;
    }
  }

  std::vector<std::vector<geometry::Polygon>> wounds_;
  double seconds_;
  std::mt19937 random_;
  std::map<int, Tally> by_count_;
  Tally all_;
  double longest_first_ms_ = 0;
  std::size_t most_ = 0;
};

}  // namespace
}  // namespace drapewright

int main(int count, char** arguments) {
  if (count < 2) {
    std::fputs("usage: wound_sets DIR [SETS [SECONDS [SEED]]]\n", stderr);
    return 2;
  }
  const int sets = count > 2 ? std::atoi(arguments[2]) : 200;
  const double seconds = count > 3 ? std::atof(arguments[3]) : 2;
  const unsigned seed = count > 4 ? static_cast<unsigned>(std::atoi(arguments[4])) : 1;
  return drapewright::SetBench(arguments[1], seconds, seed).run(sets);
}
