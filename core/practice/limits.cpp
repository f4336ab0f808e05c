#include "core/practice/limits.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::practice {
namespace {

constexpr Source own{Standing::own_setting, ""};
constexpr Source common{Standing::common_practice, ""};
constexpr Source royal_marsden{
    Standing::published, term("Royal Marsden Manual of Clinical Nursing Procedures, chapter 18")};
constexpr Source pennsylvania{Standing::published,
                              term("Pennsylvania Patient Safety Authority advisory on pressures")};
constexpr Source bulstrode{Standing::own_setting,
                           term("larger than an edge drawn by eye, 0.24 mm on average and 0.44 mm "
                                "at most (Bulstrode et al, "
                                "Clin Sci 1986;71:437), to allow for the tracing itself")};
constexpr Source dealey{Standing::published, term("Dealey et al, J Wound Care 2006;15(4):149: 1.3 "
                                                  "g/cm2 in 24 h under therapy, 15 measurements "
                                                  "in 5 patients; 1 g is about 1 mL")};

// Hard bounds are the file format's where it has some. Where it leaves one side open, the bound
// here is this program's own: far beyond use, and there to catch a slipped unit or decimal point.
constexpr std::array table{
    // How the dressing is cut and laid.
    Limit{.id = "inset_cm",
          .title = term("Filler inset"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 2,
          .standard = 0.3,
          .source = own,
          .meaning =
              term("How far inside the wound's edge the filler is cut, so that none of it lies "
                   "on skin.")},
    Limit{.id = "border_cm",
          .title = term("Film border"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .standard = 5,
          .usual_minimum = 4,
          .usual_maximum = 5,
          .source = common,
          .meaning = term("How far the film reaches onto intact skin all round.")},
    Limit{.id = "filler_thickness_cm",
          .title = term("Filler sheet thickness"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .minimum_excluded = true,
          .standard = 3,
          .source = own,
          .meaning =
              term("How thick the sheets are that the filler is cut from; a deeper wound takes "
                   "several layers.")},
    Limit{.id = "aperture_diameter_cm",
          .title = term("Film aperture"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .minimum_excluded = true,
          .standard = 2,
          .usual_maximum = 2.0,
          .source = common,
          .meaning =
              term("How wide the hole is that is cut into the film under the port; it must lie "
                   "wholly over filler.")},
    Limit{.id = "port_base_diameter_cm",
          .title = term("Port base"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .minimum_excluded = true,
          .standard = 5,
          .source = own,
          .meaning = term("How wide the port's sticking base is.")},
    Limit{.id = "film_overlap_cm",
          .title = term("Film overlap"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 1,
          .source = own,
          .meaning = term("How far neighbouring film sheets lie over each other.")},
    Limit{
        .id = "bridge_width_cm",
        .title = term("Bridge width"),
        .unit = "cm",
        .minimum = 0,
        .maximum = 20,
        .minimum_excluded = true,
        .standard = 3,
        .source = own,
        .meaning = term("How wide the strip of filler is that leads to a port beside the wound.")},
    Limit{
        .id = "piece_gap_cm",
        .title = term("Gap between pieces"),
        .unit = "cm",
        .minimum = 0,
        .maximum = 5,
        .standard = 0.3,
        .source = own,
        .meaning = term("The least distance between pieces on a filler sheet, and from a piece to "
                        "the sheet's edge.")},

    // How therapy runs.
    Limit{.id = "pressure_mmhg",
          .title = term("Pressure"),
          .unit = "mmHg",
          .minimum = -300,
          .maximum = 0,
          .maximum_excluded = true,
          .standard = -125,
          .usual_minimum = -125,
          .usual_maximum = -50,
          .source = pennsylvania,
          .meaning = term("The pressure under the film, below that of the air; the prescriber sets "
                          "it.")},
    Limit{.id = "change_every_h",
          .title = term("Dressing change"),
          .unit = "h",
          .minimum = 0,
          .maximum = 720,
          .minimum_excluded = true,
          .standard = 72,
          .usual_minimum = 48,
          .usual_maximum = 72,
          .source = royal_marsden,
          .meaning = term("How long one dressing stays on.")},
    Limit{
        .id = "course_days",
        .title = term("Course"),
        .unit = term("days"),
        .minimum = 0,
        .maximum = 366,
        .minimum_excluded = true,
        .standard = 14,
        .usual_maximum = 14,
        .source = common,
        .meaning = term("How long therapy is to run; 14 days is the most on one disposable pump.")},
    Limit{.id = "canister_ml",
          .title = term("Canister"),
          .unit = "mL",
          .minimum = 0,
          .maximum = 5000,
          .minimum_excluded = true,
          .standard = 300,
          .source = own,
          .meaning = term("How much fluid one canister holds.")},
    Limit{.id = "canister_max_days",
          .title = term("Canister change"),
          .unit = term("days"),
          .minimum = 0,
          .maximum = 60,
          .minimum_excluded = true,
          .standard = 7,
          .usual_maximum = 7,
          .source = royal_marsden,
          .meaning = term("How long a canister stays at most, full or not.")},
    Limit{.id = "battery_days",
          .title = term("Battery life"),
          .unit = term("days"),
          .minimum = 0,
          .maximum = 366,
          .minimum_excluded = true,
          .standard = 7,
          .source = common,
          .meaning = term("How long one set of batteries drives the pump.")},
    Limit{
        .id = "tracing_error_mm",
        .title = term("Tracing error"),
        .unit = "mm",
        .minimum = 0,
        .maximum = 10,
        .standard = 1,
        .source = bulstrode,
        .meaning = term("How far the drawn edge may lie from the true one; it gives the spread of "
                        "every measure.")},

    // What was seen.
    Limit{.id = "outline_extent_cm",
          .title = term("Outline's extent"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 10,
          .source = own,
          .meaning = term("How far apart two points of an outline may lie; more is most likely a "
                          "wrong scale.")},
    Limit{.id = "length_cm",
          .title = term("Length"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 8,
          .source = own,
          .meaning = term("The wound's length as typed for an ellipse or a rectangle.")},
    Limit{.id = "width_cm",
          .title = term("Width"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 5,
          .source = own,
          .meaning = term("The wound's width as typed for an ellipse or a rectangle.")},
    Limit{
        .id = "depth_cm",
        .title = term("Depth"),
        .unit = "cm",
        .minimum = 0,
        .maximum = 30,
        .standard = 0,
        .source = own,
        .meaning = term("The wound's depth at its deepest point; 0 is not deep, or not measured.")},
    Limit{.id = "wall_run_in_cm",
          .title = term("Wall run-in"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 30,
          .standard = 0,
          .source = own,
          .meaning = term("How far the wall runs inward between skin edge and wound bed; 0 is a "
                          "straight wall.")},
    Limit{.id = "undermining_extent_cm",
          .title = term("Undermining"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 30,
          .minimum_excluded = true,
          .standard = 1,
          .source = own,
          .meaning = term("How far tissue is lifted off under the wound's edge.")},
    Limit{.id = "tunnel_length_cm",
          .title = term("Tunnel"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 50,
          .minimum_excluded = true,
          .standard = 1,
          .source = own,
          .meaning = term("How long a narrow passage is that leads away from the wound.")},
    Limit{.id = "limb_girth_cm",
          .title = term("Limb girth"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 300,
          .minimum_excluded = true,
          .standard = 30,
          .source = own,
          .meaning = term("How far it is round the limb at the wound.")},
    Limit{.id = "known_length_cm",
          .title = term("Known length"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 5,
          .source = own,
          .meaning =
              term("The length on a ruler, or the side of a square, that gives a photograph its "
                   "scale.")},
    Limit{
        .id = "click_error_px",
        .title = term("Click error"),
        .unit = "px",
        .minimum = 0,
        .maximum = 20,
        .standard = 1,
        .source = own,
        .meaning = term("How far a click in a photograph may lie from the place that it was meant "
                        "for.")},
    Limit{.id = "camera_distance_cm",
          .title = term("Camera distance"),
          .unit = "cm",
          .minimum = 5,
          .maximum = 500,
          .standard = 40,
          .source = own,
          .meaning = term("How far the lens was from the nearest skin of the limb.")},
    Limit{
        .id = "exudate_ml_per_day",
        .title = term("Exudate"),
        .unit = term("mL/day"),
        .minimum = 0,
        .maximum = 5000,
        .standard = 0,
        .usual_minimum = 20,
        .source = royal_marsden,
        .meaning = term("How much fluid the wound gives in a day; under 20 mL it is time to think "
                        "of stopping.")},

    // What the planner assumes.
    Limit{.id = "exudate_rate_ml_per_cm2_day",
          .title = term("Exudate by area"),
          .unit = term("mL/cm2/day"),
          .minimum = 0,
          .maximum = 10,
          .standard = 1.3,
          .source = dealey,
          .meaning = term("How much fluid is reckoned with where none was measured; a measured "
                          "figure always beats it.")},
    Limit{.id = "smallest_piece_cm2",
          .title = term("Smallest piece"),
          .unit = "cm2",
          .minimum = 0,
          .maximum = 100,
          .standard = 1,
          .source = own,
          .meaning = term("Pieces of filler smaller than this are easily lost in the wound and are "
                          "pointed out.")},
    Limit{
        .id = "thinnest_layer_cm",
        .title = term("Thinnest layer"),
        .unit = "cm",
        .minimum = 0,
        .maximum = 10,
        .standard = 0.5,
        .source = own,
        .meaning = term("Filler cannot be thinned below this by hand; a thinner layer stands proud "
                        "of the skin until it is drawn down.")},
    Limit{.id = "narrowest_neck_cm",
          .title = term("Narrowest neck"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 5,
          .standard = 0.5,
          .source = own,
          .meaning = term("Parts of a piece that are joined by less than this are likely to tear "
                          "apart.")},
    Limit{.id = "tunnel_strip_width_cm",
          .title = term("Tunnel strip"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 5,
          .minimum_excluded = true,
          .standard = 1,
          .source = own,
          .meaning = term("How wide the strip of filler is that goes into an explored tunnel.")},
    Limit{.id = "tunnel_tail_cm",
          .title = term("Tunnel strip's tail"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .standard = 3,
          .source = own,
          .meaning = term("How much of a tunnel's strip stays out in the wound, in sight and in "
                          "reach.")},
    Limit{.id = "pad_margin_cm",
          .title = term("Pad round the aperture"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 0.5,
          .source = own,
          .meaning = term("How far the end of a bridge reaches beyond the aperture on all sides.")},
    Limit{.id = "skin_protection_margin_cm",
          .title = term("Film under a bridge"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 1,
          .source = own,
          .meaning = term("How far the film under a bridge reaches beyond it on all sides.")},
    Limit{
        .id = "assessment_age_days",
        .title = term("Age of the assessment"),
        .unit = term("days"),
        .minimum = 0,
        .maximum = 366,
        .standard = 3,
        .usual_maximum = 3,
        .source = own,
        .meaning = term("How old the planned assessment may be before the plan says so; 3 days is "
                        "the longest usual time between changes.")},
    Limit{.id = "least_part_cm",
          .title = term("Narrowest part of a split piece"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 2,
          .source = own,
          .meaning =
              term("How wide every part is to be, at its widest, when a piece that fits no sheet "
                   "is cut apart: narrower ones are easily lost.")},
    Limit{.id = "least_off_cut_cm",
          .title = term("Narrowest off-cut"),
          .unit = "cm",
          .minimum = 0,
          .maximum = 50,
          .standard = 3,
          .source = own,
          .meaning = term("What is left of a sheet and is narrower than this is not shown as an "
                          "off-cut; 3 cm is the standard width of a bridge.")},
    Limit{.id = "largest_spread_share",
          .title = term("Spread of a figure"),
          .unit = "",
          .minimum = 0,
          .maximum = 10,
          .standard = 0.5,
          .usual_maximum = 0.5,
          .source = own,
          .meaning =
              term("How large the spread of a figure may be, as a share of it, before the plan "
                   "says that the figure is hardly worth reading.")},

    // What a forecast for the stores assumes.
    Limit{.id = "forecast_weeks",
          .title = term("Weeks ahead"),
          .unit = term("weeks"),
          .minimum = 1,
          .maximum = 104,
          .standard = 8,
          .source = own,
          .meaning = term("How far a forecast for the stores looks ahead.")},
    Limit{.id = "service_level_share",
          .title = term("Service level"),
          .unit = "",
          .minimum = 0.5,
          .maximum = 0.9999,
          .standard = 0.95,
          .source = own,
          .meaning = term("The chance with which the shelf is to last until the next "
                          "delivery.")},
    Limit{.id = "extra_dressings_per_week",
          .title = term("Extra dressings"),
          .unit = term("a week"),
          .minimum = 0,
          .maximum = 14,
          .standard = 0.5,
          .source = own,
          .meaning = term("Dressings changed out of turn for leaks and soiling, per "
                          "patient; put your own count in its place.")},
    Limit{.id = "early_end_per_week",
          .title = term("Courses ended early"),
          .unit = term("a week"),
          .minimum = 0,
          .maximum = 0.99,
          .standard = 0.05,
          .source = own,
          .meaning = term("The chance that a course ends before its time; put your own "
                          "count in its place.")},
    Limit{.id = "extension_share",
          .title = term("Courses extended"),
          .unit = "",
          .minimum = 0,
          .maximum = 1,
          .standard = 0.2,
          .source = own,
          .meaning = term("The chance that a course is extended at its end; put your own "
                          "count in its place.")},
    Limit{.id = "extension_days",
          .title = term("Extension"),
          .unit = term("days"),
          .minimum = 0,
          .maximum = 90,
          .standard = 7,
          .source = own,
          .meaning = term("By how long a course is extended.")},
    Limit{.id = "new_patients_per_week",
          .title = term("New patients"),
          .unit = term("a week"),
          .minimum = 0,
          .maximum = 1000,
          .standard = 0,
          .source = own,
          .meaning = term("Patients who start in a week, with the mix of the present "
                          "ones.")},
    Limit{.id = "area_change_per_week",
          .title = term("Change of area"),
          .unit = term("a week"),
          .minimum = -0.9,
          .maximum = 1,
          .standard = 0,
          .source = own,
          .meaning = term("By which share a wound's area changes in a week where its "
                          "assessments do not tell.")},
    Limit{.id = "fluid_change_per_week",
          .title = term("Change of fluid"),
          .unit = term("a week"),
          .minimum = -0.9,
          .maximum = 1,
          .standard = 0,
          .source = own,
          .meaning = term("By which share the fluid changes in a week of the course.")},
    Limit{.id = "review_days",
          .title = term("Shelf review"),
          .unit = term("days"),
          .minimum = 1,
          .maximum = 90,
          .standard = 7,
          .source = own,
          .meaning = term("How often the shelf is looked at and orders are placed.")},
};

std::string with_unit(double value, const Limit& limit) {
  const std::string number = format_short(value);
  return limit.unit.empty() ? number : number + " " + say(limit.unit);
}

}  // namespace

std::span<const Limit> limits() { return table; }

const Limit& limit(std::string_view id) {
  const auto row = std::ranges::find(table, id, &Limit::id);
  if (row == table.end()) throw std::logic_error("no limit is called " + std::string(id));
  return *row;
}

bool within_bounds(const Limit& limit, double value) {
  if (!std::isfinite(value)) return false;
  const bool too_low = limit.minimum_excluded ? value <= limit.minimum : value < limit.minimum;
  const bool too_high = limit.maximum_excluded ? value >= limit.maximum : value > limit.maximum;
  return !too_low && !too_high;
}

std::string bounds_in_words(const Limit& limit) {
  const std::string low = format_short(limit.minimum);
  const std::string high = with_unit(limit.maximum, limit);
  if (limit.minimum_excluded && limit.maximum_excluded) {
    return say("above {1} to below {2}", {low, high});
  }
  if (limit.minimum_excluded) return say("above {1} to {2}", {low, high});
  if (limit.maximum_excluded) return say("{1} to below {2}", {low, high});
  return say("{1} to {2}", {low, high});
}

std::string usual_in_words(const Limit& limit) {
  if (limit.usual_minimum && limit.usual_maximum) {
    return say("{1} to {2}",
               {format_short(*limit.usual_minimum), with_unit(*limit.usual_maximum, limit)});
  }
  if (limit.usual_minimum) return say("at least {1}", {with_unit(*limit.usual_minimum, limit)});
  if (limit.usual_maximum) return say("at most {1}", {with_unit(*limit.usual_maximum, limit)});
  return {};
}

}  // namespace drapewright::practice
