#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/dressing/plan.h"
#include "core/report/paper.h"

namespace drapewright::report {

/// What can be printed of a plan beside its cutting templates, which have settings of their own.
enum class PageKind { plan, record, labels, what_to_do, teaching, solution };

/// All of them, in the order in which they are printed.
std::span<const PageKind> page_kinds();

/// "what-to-do": how the command line calls it.
std::string_view name_of(PageKind kind);

/// "What to do when", in the reader's language.
std::string title_of(PageKind kind);

/// The pages of one kind.
Document pages_of(PageKind kind, const wound::Case& value, const dressing::Plan& plan,
                  const PageOptions& options = {});

/// Those of several kinds one after the other; each counts its own pages, the first gives the
/// title.
Document pages_of(std::span<const PageKind> kinds, const wound::Case& value,
                  const dressing::Plan& plan, const PageOptions& options = {});

}  // namespace drapewright::report
