#include "core/practice/limits.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "core/base/numbers.h"

namespace drapewright::practice {
namespace {

constexpr Source own{Standing::own_setting, ""};
constexpr Source common{Standing::common_practice, ""};
constexpr Source royal_marsden{Standing::published,
                               "Royal Marsden Manual of Clinical Nursing Procedures, chapter 18"};
constexpr Source pennsylvania{Standing::published,
                              "Pennsylvania Patient Safety Authority advisory on pressures"};
constexpr Source bulstrode{
    Standing::own_setting,
    "larger than an edge drawn by eye, 0.24 mm on average and 0.44 mm at most (Bulstrode et al, "
    "Clin Sci 1986;71:437), to allow for the tracing itself"};
constexpr Source dealey{
    Standing::published,
    "Dealey et al, J Wound Care 2006;15(4):149: 1.3 g/cm2 in 24 h under therapy, 15 measurements "
    "in 5 patients; 1 g is about 1 mL"};

// Hard bounds are the file format's where it has some. Where it leaves one side open, the bound
// here is this program's own: far beyond use, and there to catch a slipped unit or decimal point.
constexpr std::array table{
    // How the dressing is cut and laid.
    Limit{.id = "inset_cm",
          .title = "Filler inset",
          .unit = "cm",
          .minimum = 0,
          .maximum = 2,
          .standard = 0.3,
          .source = own,
          .meaning = "How far inside the wound's edge the filler is cut, so that none of it lies "
                     "on skin."},
    Limit{.id = "border_cm",
          .title = "Film border",
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .standard = 5,
          .usual_minimum = 4,
          .usual_maximum = 5,
          .source = common,
          .meaning = "How far the film reaches onto intact skin all round."},
    Limit{.id = "filler_thickness_cm",
          .title = "Filler sheet thickness",
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .minimum_excluded = true,
          .standard = 3,
          .source = own,
          .meaning = "How thick the sheets are that the filler is cut from; a deeper wound takes "
                     "several layers."},
    Limit{.id = "aperture_diameter_cm",
          .title = "Film aperture",
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .minimum_excluded = true,
          .standard = 2,
          .usual_maximum = 2.0,
          .source = common,
          .meaning = "How wide the hole is that is cut into the film under the port; it must lie "
                     "wholly over filler."},
    Limit{.id = "port_base_diameter_cm",
          .title = "Port base",
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .minimum_excluded = true,
          .standard = 5,
          .source = own,
          .meaning = "How wide the port's sticking base is."},
    Limit{.id = "film_overlap_cm",
          .title = "Film overlap",
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 1,
          .source = own,
          .meaning = "How far neighbouring film sheets lie over each other."},
    Limit{.id = "bridge_width_cm",
          .title = "Bridge width",
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .minimum_excluded = true,
          .standard = 3,
          .source = own,
          .meaning = "How wide the strip of filler is that leads to a port beside the wound."},
    Limit{.id = "piece_gap_cm",
          .title = "Gap between pieces",
          .unit = "cm",
          .minimum = 0,
          .maximum = 5,
          .standard = 0.3,
          .source = own,
          .meaning = "The least distance between pieces on a filler sheet, and from a piece to "
                     "the sheet's edge."},

    // How therapy runs.
    Limit{.id = "pressure_mmhg",
          .title = "Pressure",
          .unit = "mmHg",
          .minimum = -300,
          .maximum = 0,
          .maximum_excluded = true,
          .standard = -125,
          .usual_minimum = -125,
          .usual_maximum = -50,
          .source = pennsylvania,
          .meaning = "The pressure under the film, below that of the air; the prescriber sets "
                     "it."},
    Limit{.id = "change_every_h",
          .title = "Dressing change",
          .unit = "h",
          .minimum = 0,
          .maximum = 720,
          .minimum_excluded = true,
          .standard = 72,
          .usual_minimum = 48,
          .usual_maximum = 72,
          .source = royal_marsden,
          .meaning = "How long one dressing stays on."},
    Limit{.id = "course_days",
          .title = "Course",
          .unit = "days",
          .minimum = 0,
          .maximum = 366,
          .minimum_excluded = true,
          .standard = 14,
          .usual_maximum = 14,
          .source = common,
          .meaning = "How long therapy is to run; 14 days is the most on one disposable pump."},
    Limit{.id = "canister_ml",
          .title = "Canister",
          .unit = "mL",
          .minimum = 0,
          .maximum = 5000,
          .minimum_excluded = true,
          .standard = 300,
          .source = own,
          .meaning = "How much fluid one canister holds."},
    Limit{.id = "canister_max_days",
          .title = "Canister change",
          .unit = "days",
          .minimum = 0,
          .maximum = 60,
          .minimum_excluded = true,
          .standard = 7,
          .usual_maximum = 7,
          .source = royal_marsden,
          .meaning = "How long a canister stays at most, full or not."},
    Limit{.id = "battery_days",
          .title = "Battery life",
          .unit = "days",
          .minimum = 0,
          .maximum = 366,
          .minimum_excluded = true,
          .standard = 7,
          .source = common,
          .meaning = "How long one set of batteries drives the pump."},
    Limit{.id = "tracing_error_mm",
          .title = "Tracing error",
          .unit = "mm",
          .minimum = 0,
          .maximum = 10,
          .standard = 1,
          .source = bulstrode,
          .meaning = "How far the drawn edge may lie from the true one; it gives the spread of "
                     "every measure."},

    // What was seen.
    Limit{.id = "outline_extent_cm",
          .title = "Outline's extent",
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 10,
          .source = own,
          .meaning = "How far apart two points of an outline may lie; more is most likely a "
                     "wrong scale."},
    Limit{.id = "length_cm",
          .title = "Length",
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 8,
          .source = own,
          .meaning = "The wound's length as typed for an ellipse or a rectangle."},
    Limit{.id = "width_cm",
          .title = "Width",
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 5,
          .source = own,
          .meaning = "The wound's width as typed for an ellipse or a rectangle."},
    Limit{.id = "depth_cm",
          .title = "Depth",
          .unit = "cm",
          .minimum = 0,
          .maximum = 30,
          .standard = 0,
          .source = own,
          .meaning = "The wound's depth at its deepest point; 0 is not deep, or not measured."},
    Limit{.id = "wall_run_in_cm",
          .title = "Wall run-in",
          .unit = "cm",
          .minimum = 0,
          .maximum = 30,
          .standard = 0,
          .source = own,
          .meaning = "How far the wall runs inward between skin edge and wound bed; 0 is a "
                     "straight wall."},
    Limit{.id = "undermining_extent_cm",
          .title = "Undermining",
          .unit = "cm",
          .minimum = 0,
          .maximum = 30,
          .minimum_excluded = true,
          .standard = 1,
          .source = own,
          .meaning = "How far tissue is lifted off under the wound's edge."},
    Limit{.id = "tunnel_length_cm",
          .title = "Tunnel",
          .unit = "cm",
          .minimum = 0,
          .maximum = 50,
          .minimum_excluded = true,
          .standard = 1,
          .source = own,
          .meaning = "How long a narrow passage is that leads away from the wound."},
    Limit{.id = "limb_girth_cm",
          .title = "Limb girth",
          .unit = "cm",
          .minimum = 0,
          .maximum = 300,
          .minimum_excluded = true,
          .standard = 30,
          .source = own,
          .meaning = "How far it is round the limb at the wound."},
    Limit{.id = "known_length_cm",
          .title = "Known length",
          .unit = "cm",
          .minimum = 0,
          .maximum = 100,
          .minimum_excluded = true,
          .standard = 5,
          .source = own,
          .meaning = "The length on a ruler, or the side of a square, that gives a photograph its "
                     "scale."},
    Limit{.id = "click_error_px",
          .title = "Click error",
          .unit = "px",
          .minimum = 0,
          .maximum = 20,
          .standard = 1,
          .source = own,
          .meaning = "How far a click in a photograph may lie from the place that it was meant "
                     "for."},
    Limit{.id = "camera_distance_cm",
          .title = "Camera distance",
          .unit = "cm",
          .minimum = 5,
          .maximum = 500,
          .standard = 40,
          .source = own,
          .meaning = "How far the lens was from the nearest skin of the limb."},
    Limit{.id = "exudate_ml_per_day",
          .title = "Exudate",
          .unit = "mL/day",
          .minimum = 0,
          .maximum = 5000,
          .standard = 0,
          .usual_minimum = 20,
          .source = royal_marsden,
          .meaning = "How much fluid the wound gives in a day; under 20 mL it is time to think "
                     "of stopping."},

    // What the planner assumes.
    Limit{.id = "exudate_rate_ml_per_cm2_day",
          .title = "Exudate by area",
          .unit = "mL/cm2/day",
          .minimum = 0,
          .maximum = 10,
          .standard = 1.3,
          .source = dealey,
          .meaning = "How much fluid is reckoned with where none was measured; a measured "
                     "figure always beats it."},
    Limit{.id = "smallest_piece_cm2",
          .title = "Smallest piece",
          .unit = "cm2",
          .minimum = 0,
          .maximum = 100,
          .standard = 1,
          .source = own,
          .meaning = "Pieces of filler smaller than this are easily lost in the wound and are "
                     "pointed out."},
    Limit{.id = "thinnest_layer_cm",
          .title = "Thinnest layer",
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 0.5,
          .source = own,
          .meaning = "Filler cannot be thinned below this by hand; a thinner layer stands proud "
                     "of the skin until it is drawn down."},
    Limit{.id = "narrowest_neck_cm",
          .title = "Narrowest neck",
          .unit = "cm",
          .minimum = 0,
          .maximum = 5,
          .standard = 0.5,
          .source = own,
          .meaning = "Parts of a piece that are joined by less than this are likely to tear "
                     "apart."},
    Limit{.id = "tunnel_strip_width_cm",
          .title = "Tunnel strip",
          .unit = "cm",
          .minimum = 0,
          .maximum = 5,
          .minimum_excluded = true,
          .standard = 1,
          .source = own,
          .meaning = "How wide the strip of filler is that goes into an explored tunnel."},
    Limit{.id = "tunnel_tail_cm",
          .title = "Tunnel strip's tail",
          .unit = "cm",
          .minimum = 0,
          .maximum = 20,
          .standard = 3,
          .source = own,
          .meaning = "How much of a tunnel's strip stays out in the wound, in sight and in "
                     "reach."},
    Limit{.id = "pad_margin_cm",
          .title = "Pad round the aperture",
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 0.5,
          .source = own,
          .meaning = "How far the end of a bridge reaches beyond the aperture on all sides."},
    Limit{.id = "skin_protection_margin_cm",
          .title = "Film under a bridge",
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 1,
          .source = own,
          .meaning = "How far the film under a bridge reaches beyond it on all sides."},
    Limit{.id = "assessment_age_days",
          .title = "Age of the assessment",
          .unit = "days",
          .minimum = 0,
          .maximum = 366,
          .standard = 3,
          .usual_maximum = 3,
          .source = own,
          .meaning = "How old the planned assessment may be before the plan says so; 3 days is "
                     "the longest usual time between changes."},
    Limit{.id = "least_part_cm",
          .title = "Narrowest part of a split piece",
          .unit = "cm",
          .minimum = 0,
          .maximum = 10,
          .standard = 2,
          .source = own,
          .meaning = "How wide every part is to be, at its widest, when a piece that fits no sheet "
                     "is cut apart: narrower ones are easily lost."},
    Limit{.id = "least_off_cut_cm",
          .title = "Narrowest off-cut",
          .unit = "cm",
          .minimum = 0,
          .maximum = 50,
          .standard = 3,
          .source = own,
          .meaning = "What is left of a sheet and is narrower than this is not shown as an "
                     "off-cut; 3 cm is the standard width of a bridge."},
    Limit{.id = "largest_spread_share",
          .title = "Spread of a figure",
          .unit = "",
          .minimum = 0,
          .maximum = 10,
          .standard = 0.5,
          .usual_maximum = 0.5,
          .source = own,
          .meaning = "How large the spread of a figure may be, as a share of it, before the plan "
                     "says that the figure is hardly worth reading."},
};

std::string after_number(const Limit& limit) {
  return limit.unit.empty() ? "" : " " + std::string(limit.unit);
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
  return (limit.minimum_excluded ? "above " : "") + format_short(limit.minimum) + " to " +
         (limit.maximum_excluded ? "below " : "") + format_short(limit.maximum) +
         after_number(limit);
}

std::string usual_in_words(const Limit& limit) {
  const std::string unit = after_number(limit);
  if (limit.usual_minimum && limit.usual_maximum) {
    return format_short(*limit.usual_minimum) + " to " + format_short(*limit.usual_maximum) + unit;
  }
  if (limit.usual_minimum) return "at least " + format_short(*limit.usual_minimum) + unit;
  if (limit.usual_maximum) return "at most " + format_short(*limit.usual_maximum) + unit;
  return {};
}

}  // namespace drapewright::practice
