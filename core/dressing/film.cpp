#include "core/dressing/film.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/dressing/border.h"
#include "core/dressing/border_advice.h"
#include "core/dressing/border_stretches.h"
#include "core/dressing/bridge.h"
#include "core/dressing/film_cover.h"
#include "core/geometry/clock.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/geometry/rectangle.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

std::string joined(const std::vector<std::string>& ids) {
  if (ids.size() == 1) return say("wound {1}", {ids.front()});
  std::string all_but_last = ids.front();
  for (std::size_t i = 1; i + 1 < ids.size(); ++i) all_but_last += ", " + ids[i];
  return say("wounds {1} and {2}", {all_but_last, ids.back()});
}

class FilmCutter {
 public:
  FilmCutter(Drape& drape, const geometry::Region& wounds, const Maps& maps,
             const geometry::Region& no_film, const wound::Case& value, FilmShelf& shelf,
             FindingList& findings)
      : drape_(drape),
        wounds_(wounds),
        maps_(maps),
        no_film_(no_film),
        value_(value),
        shelf_(shelf),
        findings_(findings) {}

  void cut() {
    cut_outline();
    leave_border();
    choose_sheet();
    advise_on_border();
    protect_skin();
  }

 private:
  double border_cm() const { return value_.dressing.border_cm; }

  void add(Severity severity, std::string code, std::string text, std::string source,
           std::optional<geometry::Point> where) {
    findings_.add({.severity = severity,
                   .code = std::move(code),
                   .text = std::move(text),
                   .source = std::move(source),
                   .wound = drape_.wounds.front(),
                   .where_cm = where});
  }

  /// All that lies within the border of the wounds and of the bridges that lead away from them:
  /// each grown by itself, as the wounds' maps are there already.
  geometry::Offset all_within_border() const {
    std::vector<geometry::Region> parts;
    for (const geometry::ClearanceMap* map : maps_) {
      geometry::Offset offset = geometry::outset(*map, border_cm());
      if (!offset.verified) return offset;
      parts.push_back(std::move(offset.region));
    }
    for (const Bridge& bridge : drape_.bridges) parts.push_back(reach_of(bridge, border_cm()));
    return {.region = parts.size() == 1 ? std::move(parts.front()) : geometry::unite(parts),
            .verified = true};
  }

  std::vector<geometry::Point> covered_points() const {
    std::vector<geometry::Point> points = geometry::outer_points(wounds_);
    for (const Bridge& bridge : drape_.bridges) {
      std::ranges::copy(geometry::outer_points(bridge.strip), std::back_inserter(points));
    }
    return points;
  }

  void cut_outline() {
    geometry::Offset offset = all_within_border();
    if (!offset.verified) {
      add(Severity::stop, "film-not-verified",
          say("The film's outline did not pass its own check ({1}) and is not shown. Trace the "
              "outline again, or change the border slightly.",
              {offset.doubt}),
          own_rule(), drape_.centroid_cm);
      return;
    }
    drape_.required_outline_cm = std::move(offset.region);
    drape_.outline_cm = no_film_.empty() ? drape_.required_outline_cm
                                         : geometry::subtract(drape_.required_outline_cm, no_film_);
    drape_.area_cm2 = geometry::area(drape_.outline_cm);
    if (drape_.outline_cm.size() > drape_.required_outline_cm.size()) {
      add(Severity::warning, "film-in-parts",
          say("Anatomy cuts the film for {1} into {2} parts: a part that does not reach the wound "
              "seals nothing.",
              {joined(drape_.wounds), drape_.outline_cm.size()}),
          source_of_rule("film-on-skin"), drape_.outline_cm.back().outer.front());
    }
  }

  void leave_border() {
    const BorderLeft left =
        border_left(wounds_, no_film_, border_cm(), drape_.centroid_cm, value_.head_direction_deg);
    drape_.least_border = {left.least_cm,
                           left.least_line ? value_.dressing.tracing_error_mm / 10 : 0};
    drape_.least_border_line = left.least_line;
    drape_.border_by_clock_cm = left.by_clock_cm;
    const BorderLimits limits = border_limits(value_);
    drape_.border_enough_cm = limits.enough_cm;
    drape_.border_stretches = border_stretches(wounds_, no_film_, limits);
    if (left.least_line) report_short_border(left);
  }

  /// " Of 20.4 cm of edge, 6.2 cm have too little and 1.0 cm none."
  std::string edge_in_words() const {
    const auto& stretches = drape_.border_stretches;
    const double short_cm = length_of(stretches, BorderKind::too_short);
    const double none_cm = length_of(stretches, BorderKind::none);
    if (short_cm + none_cm == 0) return {};
    double whole_cm = 0;
    for (const BorderStretch& stretch : stretches) whole_cm += stretch.length_cm;
    const std::string whole = format_number(whole_cm, 1);
    const std::string little = format_number(short_cm, 1);
    const std::string enough = format_short(drape_.border_enough_cm, 2);
    if (none_cm == 0) {
      return " " + say("Of {1} cm of edge, {2} cm have under {3} cm.", {whole, little, enough});
    }
    return " " + say("Of {1} cm of edge, {2} cm have under {3} cm, {4} cm none.",
                     {whole, little, enough, format_number(none_cm, 1)});
  }

  void report_short_border(const BorderLeft& left) {
    const geometry::Point where = left.least_line->from;
    if (left.least_cm <= tolerance::contact_cm) {
      add(Severity::stop, "no-border",
          say("Film cannot cover the wound's edge here: what takes no film reaches it. No seal can "
              "be had this way.") +
              edge_in_words(),
          source_of_rule("film-on-skin"), where);
      return;
    }
    const practice::Limit& limit = practice::limit("border_cm");
    const double error_cm = value_.dressing.tracing_error_mm / 10;
    const bool short_of_practice = left.least_cm < *limit.usual_minimum;
    const bool in_doubt = !short_of_practice && left.least_cm - error_cm < *limit.usual_minimum;
    std::string hours;
    for (std::size_t hour = 0; hour < 12; ++hour) {
      if (left.by_clock_cm[hour] >= std::min(*limit.usual_minimum, border_cm())) continue;
      hours += (hours.empty() ? "" : ", ") + std::to_string(hour + 1);
    }
    std::string text = say("Anatomy leaves a film border of {1} cm here, of the {2} cm wanted.",
                           {format_number(left.least_cm, 2), format_short(border_cm(), 2)});
    if (!hours.empty()) text += " " + say("Short at o'clock: {1}.", {hours});
    if (in_doubt) {
      text += " " + say("An edge drawn up to {1} cm off means that it may be under {2} cm.",
                        {format_short(error_cm, 2), format_short(*limit.usual_minimum, 2)});
    }
    text += edge_in_words();
    add(short_of_practice || in_doubt ? Severity::warning : Severity::note, "border-short", text,
        source_of_limit("border_cm"), where);
  }

  /// One note for the stretch with the least border: what helps there.
  void advise_on_border() {
    const BorderStretch* worst = nullptr;
    for (BorderStretch& stretch : drape_.border_stretches) {
      if (stretch.kind == BorderKind::enough) continue;
      stretch.advice = advice_for(stretch, wounds_, no_film_, drape_.border_enough_cm,
                                  value_.dressing.film_overlap_cm);
      if (!worst || stretch.least.value < worst->least.value) worst = &stretch;
    }
    if (!worst) return;
    add(Severity::note, "border-help",
        strip_in_words(*worst) + way_round_in_words(*worst) + spare_in_words(*worst) + " " +
            say("Whether such material may be used here is for local policy and the device's "
                "instructions."),
        source_of_rule("film-on-skin"), worst->least_line.from);
  }

  static std::string strip_in_words(const BorderStretch& stretch) {
    const BorderAdvice& advice = *stretch.advice;
    const std::string length = format_number(advice.strip_length_cm, 1);
    return advice.strip_width_cm > tolerance::contact_cm
               ? say("What helps at a short border: seal this edge first, with a strip of skin "
                     "protection or film {1} cm long and, at the narrowest, {2} cm wide.",
                     {length, format_number(advice.strip_width_cm, 1)})
               : say("What helps at a short border: no strip of film finds skin here; only sealing "
                     "paste along the edge, {1} cm long, can close it.",
                     {length});
  }

  std::string way_round_in_words(const BorderStretch& stretch) const {
    if (!stretch.advice->reach_round_cm) return {};
    return " " + say("Or extend the film on the far side: where it reaches {1} cm from the wound, "
                     "it goes all round what takes no film and holds on {2} cm of skin beyond.",
                     {format_number(*stretch.advice->reach_round_cm, 1),
                      format_short(drape_.border_enough_cm, 2)});
  }

  std::string spare_in_words(const BorderStretch& stretch) const {
    if (drape_.sheets.size() != 1) return {};
    const geometry::Point across = drape_.centroid_cm - stretch.least_line.from;
    const double away_deg = geometry::degrees(std::atan2(across.y, across.x));
    const auto spare = spare_film(drape_.sheets.front(), drape_.outline_cm, away_deg);
    if (!spare) return {};
    const double angle = geometry::radians(spare->towards_deg);
    const int hour = geometry::clock_sector({}, geometry::Point{std::cos(angle), std::sin(angle)},
                                            value_.head_direction_deg);
    return " " + say("Or move the sheet: it has {1} cm to spare; left on towards {2} o'clock they "
                     "hold more skin there.",
                     {format_number(spare->spare_cm, 1), hour});
  }

  void choose_sheet() {
    if (drape_.outline_cm.empty()) return;
    const auto film_points = geometry::outer_points(drape_.outline_cm);
    drape_.rectangle = geometry::smallest_enclosing_rectangle(film_points);
    if (auto sheet = shelf_.take(covered_points(), border_cm(), film_points)) {
      drape_.sheets.push_back(std::move(*sheet));
      return;
    }
    const double overlap_cm = value_.dressing.film_overlap_cm;
    if (auto cover = cover_with_sheets(drape_.outline_cm, overlap_cm, shelf_)) {
      drape_.sheets = std::move(cover->sheets);
      drape_.seams = std::move(cover->seams);
      report_several_sheets();
    } else {
      report_no_sheets();
    }
  }

  std::string rectangle_in_words() const {
    return format_number(drape_.rectangle.length_cm, 1) + " x " +
           format_number(drape_.rectangle.width_cm, 1) + " cm";
  }

  void report_several_sheets() {
    const int count = static_cast<int>(drape_.sheets.size());
    const int least = std::max(2, least_possible_sheets(drape_.area_cm2, shelf_));
    const std::string certainty = count == least
                                      ? say("Fewer are not possible.")
                                      : say("No way with fewer was found; by area alone {1} would "
                                            "be the least.",
                                            {least});
    add(Severity::note, "several-film-sheets",
        say("No single film sheet in stock holds this film ({1}): it takes {2} that overlap by {3} "
            "cm.",
            {rectangle_in_words(), count, format_short(value_.dressing.film_overlap_cm, 2)}) +
            " " + certainty + " " + say("Every overlap is a place to look for leaks."),
        source_of_limit("film_overlap_cm"), drape_.rectangle.centre);
  }

  void report_no_sheets() {
    add(Severity::warning, "film-sheets-lacking",
        say("The film sheets in stock do not cover this film ({1}), not even overlapping. The "
            "number "
            "of sheets is an estimate by area.",
            {rectangle_in_words()}),
        source_of_limit("film_overlap_cm"), drape_.rectangle.centre);
  }

  /// Film under the bridges, so that no filler lies on bare skin.
  void protect_skin() {
    for (const Bridge& bridge : drape_.bridges) {
      if (bridge.skin_protection.empty()) continue;
      if (auto sheet = shelf_.take(geometry::outer_points(bridge.skin_protection))) {
        drape_.protection_sheets.push_back(std::move(*sheet));
        continue;
      }
      add(Severity::warning, "bridge-film-lacking",
          say("No film sheet in stock is large enough to protect the skin under a bridge: lay it "
              "from "
              "several."),
          source_of_limit("skin_protection_margin_cm"), bridge.line.front());
    }
  }

  Drape& drape_;
  const geometry::Region& wounds_;
  const Maps& maps_;
  const geometry::Region& no_film_;
  const wound::Case& value_;
  FilmShelf& shelf_;
  FindingList& findings_;
};

}  // namespace

void cut_film(Drape& drape, const geometry::Region& wounds, const Maps& maps,
              const geometry::Region& no_film, const wound::Case& value, FilmShelf& shelf,
              FindingList& findings) {
  FilmCutter(drape, wounds, maps, no_film, value, shelf, findings).cut();
}

}  // namespace drapewright::dressing
