#include "core/dressing/cut_plan.h"

#include <algorithm>
#include <limits>
#include <string>
#include <tuple>
#include <utility>

#include "core/dressing/filler_stock.h"

namespace drapewright::dressing {
namespace {

auto rank(const SheetChoice& choice) {
  const double off_cut_cm2 =
      choice.off_cut ? choice.off_cut->width() * choice.off_cut->height() : 0;
  return std::tuple(choice.missing, choice.pieces, choice.cost.value_or(choice.sheets),
                    choice.sheets, -off_cut_cm2);
}

bool holds_all(const std::vector<std::string>& items, const std::vector<std::string>& wanted) {
  return std::ranges::all_of(wanted, [&](const std::string& item) {
    return std::ranges::find(items, item) != items.end();
  });
}

/// `to` takes over what `from` opens, where it may open that and is the worse of the two. What no
/// layout can be below stays: it is the sheets' own, or that of more sheets to choose from.
void learn(const SheetChoice& from, SheetChoice& to) {
  const auto may_open = [&](const SheetChoice::Count& count) {
    return holds_all(to.items, {count.item});
  };
  if (!std::ranges::all_of(from.opened, may_open) || rank(from) >= rank(to)) return;
  SheetChoice better = from;
  better.items = to.items;
  better.chosen = false;
  if (!holds_all(from.items, to.items)) {
    better.best_possible = false;
    better.fewer_possible = std::max(0, to.fewer_possible - (to.sheets - from.sheets));
    if (to.cost && from.cost && to.cheaper_possible) {
      better.cheaper_possible = std::max(0.0, *to.cheaper_possible - (*to.cost - *from.cost));
    }
  }
  to = std::move(better);
}

class FillerCutter {
 public:
  FillerCutter(const Plan& draft, const wound::Case& value, const PlanOptions& options,
               const std::function<void(const CutPlan&)>& told, const Progress& progress)
      : case_(value),
        gap_cm_(value.dressing.piece_gap_cm),
        options_(options),
        told_(told),
        progress_(progress) {
    result_.groups = cut_groups(draft, value);
  }

  CutPlan cut_all() {
    for (const CutGroup& group : result_.groups) {
      result_.ways.push_back(first_cut(group, group.sheets));
    }
    for (std::size_t i = 0; i < result_.groups.size(); ++i) compare(i);
    tell();
    for (std::size_t i = 0; i < result_.ways.size(); ++i) improve(i);
    return std::move(result_);
  }

 private:
  /// The plan that follows every keystroke makes do with the first layouts where nothing can cost
  /// less; else a few steps more often save a sheet.
  Cut first_cut(const CutGroup& group, const supplies::StockList& sheets) const {
    const cutting::Options search{.seed = options_.cut.seed,
                                  .max_steps = few_steps,
                                  .max_work = little_work,
                                  .cheapest_will_do = true};
    return cut(group, sheets, gap_cm_, search, progress_);
  }

  /// Every choice side by side: all stock of the thickness, each size alone, and what was chosen by
  /// hand where that is neither.
  std::vector<supplies::StockList> choices_for(const CutGroup& group) const {
    const supplies::StockList all = of_thickness(filler_in_stock(case_), group.thickness_cm);
    std::vector<supplies::StockList> choices;
    if (all.empty()) return choices;
    choices.push_back(all);
    if (options_.compare_sheets && all.size() > 1) {
      for (const supplies::StockItem& sheet : all) choices.push_back({sheet});
    }
    if (std::ranges::find(choices, group.sheets) == choices.end()) choices.push_back(group.sheets);
    return choices;
  }

  void compare(std::size_t number) {
    const CutGroup& group = result_.groups[number];
    SheetComparison side_by_side{group.thickness_cm, {}};
    for (const supplies::StockList& sheets : choices_for(group)) {
      const bool chosen = sheets == group.sheets;
      SheetChoice choice;
      if (!chosen) {
        const Cut way = first_cut(group, sheets);
        follow_if_better(way, result_.ways[number]);
        choice = summed_up(way);
      }
      choice.chosen = chosen;
      side_by_side.choices.push_back(std::move(choice));
    }
    result_.comparison.push_back(std::move(side_by_side));
    refresh(number);
  }

  /// A size that alone does better than the first layout of several together shows these the way.
  static void follow_if_better(const Cut& other, Cut& followed) {
    const auto known = [&](const supplies::StockItem& sheet) {
      return std::ranges::find(followed.sheets, sheet) != followed.sheets.end();
    };
    if (!std::ranges::all_of(other.sheets, known) || !is_better(other, followed)) return;
    cutting::Layout layout = other.layout;
    for (cutting::CutSheet& sheet : layout.sheets) {
      const auto& item = other.sheets[static_cast<std::size_t>(sheet.kind)];
      sheet.kind =
          static_cast<int>(std::ranges::find(followed.sheets, item) - followed.sheets.begin());
    }
    layout.bound = followed.layout.bound;
    auto kinds = std::move(followed.split.job.sheets);
    followed.split = other.split;
    followed.split.job.sheets = std::move(kinds);
    followed.layout = std::move(layout);
  }

  /// The figures of the chosen way, and of every other that could be cut in the same way and would
  /// be better off.
  void refresh(std::size_t number) {
    SheetChoice followed = summed_up(result_.ways[number]);
    followed.chosen = true;
    for (SheetChoice& choice : result_.comparison[number].choices) {
      if (choice.chosen) {
        choice = followed;
      } else {
        learn(followed, choice);
      }
    }
  }

  /// Works on one group's layout; the time is shared out between the groups.
  void improve(std::size_t group) {
    const Cut way = result_.ways[group];
    if (way.sheets.empty() || options_.cut.steps <= 0) return;
    cutting::Options search{.seed = options_.cut.seed,
                            .max_steps = few_steps + std::min(options_.cut.steps, most_steps)};
    const double share = static_cast<double>(group + 1) / static_cast<double>(result_.ways.size());
    if (options_.cut.out_of_time) {
      search.out_of_time = [&out = options_.cut.out_of_time, share] { return out(share); };
    }
    search.on_better = [&](const cutting::Layout& layout) { take(group, layout); };
    take(group, lay_out_again(way, search, progress_));
  }

  void take(std::size_t group, const cutting::Layout& layout) {
    Cut better = result_.ways[group];
    better.layout = layout;
    if (!is_better(better, result_.ways[group])) return;
    result_.ways[group] = std::move(better);
    refresh(group);
    tell();
  }

  void tell() const {
    if (told_) told_(result_);
  }

  /// Settled the layout of every demo case.
  static constexpr std::int64_t few_steps = 50;
  /// Some five to ten milliseconds for each choice of sheets.
  static constexpr std::int64_t little_work = 50'000;
  static constexpr std::int64_t most_steps = std::numeric_limits<std::int64_t>::max() / 2;

  const wound::Case& case_;
  double gap_cm_;
  const PlanOptions& options_;
  const std::function<void(const CutPlan&)>& told_;
  const Progress& progress_;
  CutPlan result_;
};

}  // namespace

CutPlan cut_filler(const Plan& draft, const wound::Case& value, const PlanOptions& options,
                   const std::function<void(const CutPlan&)>& told, const Progress& progress) {
  return FillerCutter(draft, value, options, told, progress).cut_all();
}

}  // namespace drapewright::dressing
