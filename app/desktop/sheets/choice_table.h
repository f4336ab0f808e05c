#pragma once

#include <string>
#include <vector>

#include "app/desktop/panels/wrapped_table.h"
#include "core/dressing/plan.h"

namespace drapewright::desktop {

/// The ways to cut the filler side by side, thickness by thickness; the one that the plan follows
/// is marked. A row is chosen by a click, or by Enter or Space.
class ChoiceTable : public WrappedTable {
  Q_OBJECT

 public:
  explicit ChoiceTable(QWidget* parent = nullptr);

  void show_plan(const dressing::Plan* plan);

 signals:
  /// @param thickness  index in the plan's comparison; `choice` among its choices
  void chosen(std::size_t thickness, std::size_t choice);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  /// What a table row belongs to; a heading belongs to no choice.
  struct Target {
    std::size_t thickness = 0;
    int choice = -1;
  };
  void add_heading(const dressing::SheetComparison& comparison, std::size_t thickness);
  void add_choice(const dressing::SheetChoice& choice, Target target);
  int add_row(Target target, bool whole);
  void choose_row(int row);

  std::vector<Target> targets_;  ///< per row
};

}  // namespace drapewright::desktop
