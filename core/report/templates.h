#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/practice/body_sites.h"
#include "core/report/layer_style.h"
#include "core/wound/case.h"

namespace drapewright::report {

/// What a template is for. The parts of a document that can be asked for one by one.
enum class TemplatePart { film, filler, port, sheets };
/// "film", "filler", "port", "sheets".
std::string_view name_of(TemplatePart part);

struct TemplateLine {
  LayerKind kind = LayerKind::cut_line;
  std::vector<geometry::Point> points;  ///< cm; a ring's first point is repeated at its end
};

/// A word on a template, its middle at a place.
struct TemplateWord {
  geometry::Point at_cm;
  std::string text;
  bool bold = false;
};

/// One thing to cut along, in cm and as it lies in the wound: to be printed at life size.
struct Template {
  TemplatePart part = TemplatePart::film;
  std::string title;
  std::vector<std::string> notes;  ///< how often, from what, and what the lines mean
  std::vector<TemplateLine> lines;
  std::vector<TemplateWord> words;
  std::optional<double> twelve_deg;  ///< direction of 12 o'clock, where it matters
  practice::Twelve twelve = practice::Twelve::head;
  bool mirrored = false;
};

/// Every template of one kind: a film each, a piece of filler each (pieces of one outline share
/// one), the port, a sheet with its pieces each. Lines and words follow the plan.
/// @param plan of that case
std::vector<Template> templates(const wound::Case& value, const dressing::Plan& plan,
                                TemplatePart part);

/// The template as it is seen from behind. Words stay readable.
Template mirrored(Template value);

}  // namespace drapewright::report
