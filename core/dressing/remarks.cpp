#include "core/dressing/remarks.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/site_remarks.h"
#include "core/geometry/measures.h"
#include "core/practice/cautions.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

void remark_on_cautions(const wound::CautionReview& review, FindingList& findings) {
  if (!review.reviewed) {
    findings.add(
        {.severity = Severity::warning,
         .code = "cautions-not-reviewed",
         .text = say("The cautions were not gone through for this case. Go through the list "
                     "before anything is opened."),
         .source = own_rule()});
  }
  for (const std::string& id : review.present) {
    const practice::Caution* caution = practice::find_caution(id);
    if (caution == nullptr) {
      findings.add(
          {.severity = Severity::warning,
           .code = "caution-unknown",
           .text = say("The case names a caution that this version does not know: \"{1}\". Ask "
                       "what it means before going on.",
                       {id}),
           .source = own_rule()});
      continue;
    }
    const bool stop = caution->kind == practice::CautionKind::contraindication;
    findings.add({.severity = stop ? Severity::stop : Severity::warning,
                  .code = stop ? "contraindication" : "risk-factor",
                  .text = say(caution->text) + ". " + say(caution->advice),
                  .source = practice::describe(caution->source)});
  }
}

std::string dashed(std::string_view id) {
  std::string text(id.substr(0, id.rfind('_')));  // without the unit
  std::ranges::replace(text, '_', '-');
  return text;
}

/// A film border wider than usual wastes film; everything else outside common practice is to be
/// weighed by the clinician.
Severity severity_of(const practice::Limit& limit, double value) {
  return limit.id == "border_cm" && value > *limit.usual_maximum ? Severity::note
                                                                 : Severity::warning;
}

void remark_on_setting(std::string_view id, double value, FindingList& findings) {
  const practice::Limit& limit = practice::limit(id);
  const bool low = limit.usual_minimum && value < *limit.usual_minimum;
  const bool high = limit.usual_maximum && value > *limit.usual_maximum;
  if (!low && !high) return;
  findings.add({.severity = severity_of(limit, value),
                .code = dashed(id) + (low ? "-below-practice" : "-above-practice"),
                .text = say("{1}: {2} {3} leaves common practice, {4}.",
                            {say(limit.title), format_short(value, 2), say(limit.unit),
                             practice::usual_in_words(limit)}),
                .source = practice::describe(limit.source)});
}

void remark_on_settings(const wound::DressingSettings& s, FindingList& findings) {
  remark_on_setting("border_cm", s.border_cm, findings);
  remark_on_setting("aperture_diameter_cm", s.aperture_diameter_cm, findings);
  remark_on_setting("pressure_mmhg", s.pressure_mmhg, findings);
  remark_on_setting("change_every_h", s.change_every_h, findings);
  remark_on_setting("course_days", s.course_days, findings);
  remark_on_setting("canister_max_days", s.canister_max_days, findings);
}

void remark_on_fluid(const wound::Assessment& assessment, FindingList& findings) {
  const practice::Limit& limit = practice::limit("exudate_ml_per_day");
  const auto measured = assessment.exudate_ml_per_day;
  if (!measured || *measured >= *limit.usual_minimum) return;
  findings.add({.severity = Severity::note,
                .code = "little-fluid",
                .text = say("Under {1} mL a day: time to think with the prescriber about stopping.",
                            {format_short(*limit.usual_minimum)}),
                .source = practice::describe(limit.source)});
}

void remark_on_tunnel(const wound::Wound& wound, const wound::Tunnel& tunnel,
                      FindingList& findings) {
  const std::string clock = format_short(tunnel.clock, 2);
  const std::string length = format_short(tunnel.length_cm, 1);
  const std::string tail = format_short(practice::limit("tunnel_tail_cm").standard, 1);
  findings.add({.severity = tunnel.explored ? Severity::note : Severity::stop,
                .code = tunnel.explored ? "tunnel-strip" : "tunnel-unexplored",
                .text = tunnel.explored
                            ? say("The tunnel at {1} o'clock, {2} cm long, takes a strip of filler "
                                  "that is a piece of its own: lay it in without force, {3} cm of "
                                  "it in sight and in reach. Count it.",
                                  {clock, length, tail})
                            : say("The tunnel at {1} o'clock, {2} cm long, is unexplored: no "
                                  "filler into it. Stop until it has been explored.",
                                  {clock, length}),
                .source = source_of_rule("unexplored-tunnel"),
                .wound = wound.id,
                .where_cm = geometry::centroid(wound.outline_cm)});
}

void remark_on_wound(const wound::Wound& wound, FindingList& findings) {
  for (const wound::Tunnel& tunnel : wound.tunnels) remark_on_tunnel(wound, tunnel, findings);
  if (wound.depth_cm <= 0 && wound.wall_run_in_cm > 0) {
    findings.add(
        {.severity = Severity::note,
         .code = "run-in-without-depth",
         .text = say("The wall's run-in of {1} cm is left out: there is no depth to go with it.",
                     {format_short(wound.wall_run_in_cm, 2)}),
         .source = own_rule(),
         .wound = wound.id});
  }
}

/// Each dressing that went in must have come out with the same count.
void remark_on_counts(const wound::Case& value, FindingList& findings) {
  for (const wound::Application& done : value.applications) {
    if (!done.pieces_removed || *done.pieces_removed == done.pieces_placed) continue;
    findings.add(
        {.severity = Severity::stop,
         .code = "count-mismatch",
         .text = say(
             "Of the dressing put on on {1}, {2} went in and {3} came out. Find the "
             "difference before the next dressing.",
             {done.date, count_of(done.pieces_placed, "piece", "pieces"), *done.pieces_removed}),
         .source = source_of_rule("fewest-pieces")});
  }
}

void remark_on_age(const std::string& assessed, const std::string& today, FindingList& findings) {
  const auto then = day_number(assessed);
  const auto now = day_number(today);
  if (!then || !now) return;
  const auto age = *now - *then;
  const practice::Limit& limit = practice::limit("assessment_age_days");
  if (age < 0) {
    findings.add({.severity = Severity::warning,
                  .code = "assessment-in-future",
                  .text = say("The assessment is dated {1}, after today, {2}. Check the date.",
                              {assessed, today}),
                  .source = own_rule()});
  } else if (age > *limit.usual_maximum) {
    findings.add(
        {.severity = Severity::warning,
         .code = "assessment-old",
         .text = say("The assessment is {1} days old ({2}). Measure the wound again before "
                     "anything is cut.",
                     {std::to_string(age), assessed}),
         .source = practice::describe(limit.source)});
  }
}

std::string closing_round(const geometry::Rectangle& film, double girth_cm) {
  const std::vector<Insert> sizes{format_number(film.length_cm, 1), format_number(film.width_cm, 1),
                                  format_number(girth_cm, 1)};
  const bool either_way = film.width_cm >= girth_cm;
  return either_way
             ? say("The film is {1} x {2} cm, the limb {3} cm round: as drawn it closes round the "
                   "limb.",
                   sizes)
             : say("The film is {1} x {2} cm, the limb {3} cm round: as drawn it closes round the "
                   "limb if its longer side lies across.",
                   sizes);
}

}  // namespace

void remark_on_case(const wound::Case& value, const std::string& today, FindingList& findings) {
  remark_on_cautions(value.cautions, findings);
  remark_on_site(value, findings);
  remark_on_counts(value, findings);
  remark_on_age(value.current().date, today, findings);
  for (const wound::Wound& wound : value.current().wounds) remark_on_wound(wound, findings);
  remark_on_settings(value.dressing, findings);
  remark_on_fluid(value.current(), findings);
}

void remark_on_girth(const wound::Case& value, const std::vector<Drape>& drapes,
                     FindingList& findings) {
  if (!value.limb_girth_cm) return;
  const double girth_cm = *value.limb_girth_cm;
  for (const Drape& drape : drapes) {
    if (drape.outline_cm.empty() || drape.rectangle.length_cm < girth_cm) continue;
    findings.add(
        {.severity = Severity::warning,
         .code = "film-round-limb",
         .text = closing_round(drape.rectangle, girth_cm) + " " +
                 say("Ask the prescriber; watch the blood flow beyond the dressing."),
         .source = practice::describe(practice::find_caution("circumferential-dressing")->source),
         .wound = drape.wounds.front(),
         .where_cm = drape.rectangle.centre});
  }
}

}  // namespace drapewright::dressing
