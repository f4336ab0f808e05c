#include "core/dressing/site_remarks.h"

#include <string>

#include "core/base/say.h"
#include "core/practice/cautions.h"

namespace drapewright::dressing {
namespace {

using practice::BodySite;

/// Read from free words, the site may be another.
void remark_on_doubt(const wound::Case& value, FindingList& findings) {
  const auto named = practice::body_sites_named(value.body_site);
  if (named.size() < 2) return;
  std::string others;
  for (std::size_t i = 1; i < named.size(); ++i) {
    others += (others.empty() ? "" : ", ") + say(named[i]->name);
  }
  findings.add(
      {.severity = Severity::warning,
       .code = "site-unclear",
       .text = say("The body site \"{1}\" was read as: {2}. It also names: {3}. Choose the site "
                   "from the list if that is not meant.",
                   {value.body_site, say(named.front()->name), others}),
       .source = own_rule()});
}

void remark_on_unknown_site(const wound::Case& value, FindingList& findings) {
  const bool chosen = !value.body_site_id.empty();
  if (!chosen && value.body_site.empty()) return;
  findings.add(
      {.severity = chosen ? Severity::warning : Severity::note,
       .code = "site-unknown",
       .text = say("The body site \"{1}\" is not one that this version knows: no cautions of the "
                   "place are shown, and 12 o'clock is taken to point to the head. Choose "
                   "the nearest from the list.",
                   {chosen ? value.body_site_id : value.body_site}),
       .source = own_rule()});
}

void remark_on_clock(const BodySite& site, FindingList& findings) {
  if (site.twelve == practice::Twelve::head) return;
  findings.add(
      {.severity = Severity::note,
       .code = "site-clock",
       .text = say("On the foot 12 o'clock points to the heel and 6 to the toes. Make sure "
                   "that every position by the clock was entered that way."),
       .source = practice::describe(practice::source_of_clock())});
}

void remark_on_missing_girth(const wound::Case& value, const BodySite& site,
                             FindingList& findings) {
  if (!site.on_limb || value.limb_girth_cm) return;
  findings.add(
      {.severity = Severity::note,
       .code = "site-girth-missing",
       .text =
           say("Measure the girth here ({1}) and enter it: without it nobody has checked whether "
               "the film closes round.",
               {say(site.name)}),
       .source = practice::describe(practice::find_caution("circumferential-dressing")->source)});
}

void remark_on_cautions(const BodySite& site, FindingList& findings) {
  for (const std::string_view id : site.cautions) {
    const practice::SiteCaution& caution = practice::site_caution(id);
    findings.add({.severity = caution.warns ? Severity::warning : Severity::note,
                  .code = "site-" + std::string(caution.id),
                  .text = say(site.name) + ": " + say(caution.text),
                  .source = practice::describe(caution.source)});
  }
}

}  // namespace

void remark_on_site(const wound::Case& value, FindingList& findings) {
  const BodySite* site = wound::site_of(value);
  if (site == nullptr) {
    remark_on_unknown_site(value, findings);
    return;
  }
  if (value.body_site_id.empty()) remark_on_doubt(value, findings);
  remark_on_clock(*site, findings);
  remark_on_missing_girth(value, *site, findings);
  remark_on_cautions(*site, findings);
}

}  // namespace drapewright::dressing
