#pragma once

#include <string>
#include <vector>

#include "core/report/check_bars.h"
#include "core/report/page_kinds.h"

namespace drapewright::desktop {

/// What is to be printed, and how.
struct PageWishes {
  std::vector<report::PageKind> kinds{report::PageKind::plan};
  bool templates = false;
  bool mirror_film = false;  ///< of the templates
  bool squares = false;      ///< to photograph a wound with; needs no plan
  report::Paper paper = report::Paper::a4;
  report::PrinterCorrection printer;

  bool need_plan() const { return templates || !kinds.empty(); }
  bool are_none() const { return !need_plan() && !squares; }
};

/// The pages of all that is wished for, one after the other; each kind counts its own.
/// @param plan   nullptr: what needs one is left out
/// @param today  YYYY-MM-DD
report::Document pages_for(const PageWishes& wishes, const wound::Case& value,
                           const dressing::Plan* plan, const std::string& today);

}  // namespace drapewright::desktop
