#include "core/dressing/film.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include "core/base/numbers.h"
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
  std::string text = ids.size() == 1 ? "wound " : "wounds ";
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (i > 0) text += i + 1 == ids.size() ? " and " : ", ";
    text += ids[i];
  }
  return text;
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
          "The film's outline did not pass its own check (" + offset.doubt +
              ") and is not shown. Trace the outline again, or change the border slightly.",
          own_rule(), drape_.centroid_cm);
      return;
    }
    drape_.required_outline_cm = std::move(offset.region);
    drape_.outline_cm = no_film_.empty() ? drape_.required_outline_cm
                                         : geometry::subtract(drape_.required_outline_cm, no_film_);
    drape_.area_cm2 = geometry::area(drape_.outline_cm);
    if (drape_.outline_cm.size() > drape_.required_outline_cm.size()) {
      add(Severity::warning, "film-in-parts",
          "Anatomy cuts the film for " + joined(drape_.wounds) + " into " +
              std::to_string(drape_.outline_cm.size()) +
              " parts: a part that does not reach the wound seals nothing.",
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
    return " Of " + format_number(whole_cm, 1) + " cm of edge, " + format_number(short_cm, 1) +
           " cm have under " + format_short(drape_.border_enough_cm, 2) + " cm" +
           (none_cm > 0 ? ", " + format_number(none_cm, 1) + " cm none" : "") + ".";
  }

  void report_short_border(const BorderLeft& left) {
    const geometry::Point where = left.least_line->from;
    if (left.least_cm <= tolerance::contact_cm) {
      add(Severity::stop, "no-border",
          "Film cannot cover the wound's edge here: what takes no film reaches it. No seal can be "
          "had this way." +
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
    std::string text = "Anatomy leaves a film border of " + format_number(left.least_cm, 2) +
                       " cm here, of the " + format_short(border_cm(), 2) + " cm wanted.";
    if (!hours.empty()) text += " Short at o'clock: " + hours + ".";
    if (in_doubt) {
      text += " An edge drawn up to " + format_short(error_cm, 2) +
              " cm off means that it may be " + "under " + format_short(*limit.usual_minimum, 2) +
              " cm.";
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
        "What helps at a short border: " + strip_in_words(*worst) + way_round_in_words(*worst) +
            spare_in_words(*worst) +
            " Whether such material may be used here is for local policy and the device's "
            "instructions.",
        source_of_rule("film-on-skin"), worst->least_line.from);
  }

  static std::string strip_in_words(const BorderStretch& stretch) {
    const BorderAdvice& advice = *stretch.advice;
    const std::string length = format_number(advice.strip_length_cm, 1) + " cm long";
    return advice.strip_width_cm > tolerance::contact_cm
               ? "seal this edge first, with a strip of skin protection or film " + length +
                     " and, at the narrowest, " + format_number(advice.strip_width_cm, 1) +
                     " cm wide."
               : "no strip of film finds skin here; only sealing paste along the edge, " + length +
                     ", can close it.";
  }

  std::string way_round_in_words(const BorderStretch& stretch) const {
    if (!stretch.advice->reach_round_cm) return {};
    return " Or extend the film on the far side: where it reaches " +
           format_number(*stretch.advice->reach_round_cm, 1) +
           " cm from the wound, it goes all round what takes no film and holds on " +
           format_short(drape_.border_enough_cm, 2) + " cm of skin beyond.";
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
    return " Or move the sheet: it has " + format_number(spare->spare_cm, 1) +
           " cm to spare; left on towards " + std::to_string(hour) +
           " o'clock they hold more skin there.";
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
                                      ? "Fewer are not possible."
                                      : "No way with fewer was found; by area alone " +
                                            std::to_string(least) + " would be the least.";
    add(Severity::note, "several-film-sheets",
        "No single film sheet in stock holds this film (" + rectangle_in_words() + "): it takes " +
            std::to_string(count) + " that overlap by " +
            format_short(value_.dressing.film_overlap_cm, 2) + " cm. " + certainty +
            " Every overlap is a place to look for leaks.",
        source_of_limit("film_overlap_cm"), drape_.rectangle.centre);
  }

  void report_no_sheets() {
    add(Severity::warning, "film-sheets-lacking",
        "The film sheets in stock do not cover this film (" + rectangle_in_words() +
            "), not even overlapping. The number of sheets is an estimate by area.",
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
          "No film sheet in stock is large enough to protect the skin under a bridge: lay it from "
          "several.",
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
