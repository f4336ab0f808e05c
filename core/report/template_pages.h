#pragma once

#include <set>

#include "core/report/check_bars.h"
#include "core/report/paper.h"
#include "core/report/templates.h"

namespace drapewright::report {

struct TemplatePageOptions {
  PageOptions page;
  std::set<TemplatePart> parts{TemplatePart::film, TemplatePart::filler, TemplatePart::port,
                               TemplatePart::sheets};
  bool mirror_film = false;  ///< to draw on the back of its backing
  PrinterCorrection printer;
};

/// Cutting templates at life size: small ones side by side, larger ones tiled over pages that
/// overlap, with marks to join them and a key. On every page two check bars at right angles.
/// Deterministic.
/// @throws std::invalid_argument for bars outside their bounds
Document template_pages(const wound::Case& value, const dressing::Plan& plan,
                        const TemplatePageOptions& options = {});

}  // namespace drapewright::report
