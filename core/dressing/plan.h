#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/progress.h"
#include "core/dressing/finding.h"
#include "core/geometry/measures.h"
#include "core/geometry/shape.h"
#include "core/practice/body_sites.h"
#include "core/supplies/stock_item.h"
#include "core/wound/case.h"

namespace drapewright::dressing {

/// A figure and by how much a tracing error may shift it either way (an upper bound).
struct Figure {
  double value = 0;
  double spread = 0;
  friend bool operator==(const Figure&, const Figure&) = default;
};

/// What a wound measures. Lengths in cm, areas in cm2, volumes in cm3.
struct WoundMeasures {
  std::string id;
  Figure area;       ///< outline less islands
  Figure perimeter;  ///< all edges; its spread is not bounded by tracing error and left 0
  Figure length;     ///< greatest distance between two points of the outline
  Figure width;      ///< extent at right angles to it
  Figure head_to_foot;
  Figure side_to_side;
  double rectangle_area_cm2 = 0;  ///< length x width, as a ruler gives it
  double ellipse_area_cm2 = 0;    ///< pi/4 of that
  Figure volume;                  ///< cavity by depth and run-in, undermined pockets left out
  double pocket_volume_cm3 = 0;   ///< pockets, taken as high as the lowest layer of filler
  double kundin_volume_cm3 = 0;   ///< 0.327 x length x width x depth: for comparison only
  double length_direction_deg = 0;
  geometry::Point centroid_cm;
  geometry::Segment length_line;  ///< where the length was measured, for the drawing
  geometry::Segment width_line;   ///< along the width, through its extreme points' extent
};

/// One layer of filler in one wound.
struct Layer {
  std::string wound;
  int index = 1;      ///< 1 lies next to the film
  double top_cm = 0;  ///< below the skin
  double thickness_cm = 0;
  double sheet_thickness_cm = 0;  ///< of the sheet that it is cut from; more: thin it
  double inset_cm = 0;  ///< from the outline: inset plus the wall's run-in at the underside
  bool reaches_into_pockets = false;  ///< the lowest layer of an undermined wound
  geometry::Region pieces;
};

/// A strip of filler for an explored tunnel: a piece of its own, counted as one.
struct TunnelStrip {
  std::string wound;
  double clock = 12;
  double length_cm = 0;  ///< of the tunnel and of the tail that stays in reach
  double width_cm = 0;
  int parts = 1;  ///< more where no sheet is long enough for it
};

/// A cut through a piece that fits no sheet, as it lies in the wound.
struct Seam {
  std::string wound;
  int layer = 1;  ///< 0: through a bridge
  geometry::Segment line;
};

struct Fill {
  std::vector<Layer> layers;
  std::vector<TunnelStrip> strips;
  std::vector<Seam> seams;    ///< between pieces that were one before they were cut to fit sheets
  int piece_count = 0;        ///< of layers, strips and bridges: what goes on and must come off
  double area_cm2 = 0;        ///< of all pieces of all layers: what is cut for the wounds
  double volume_cm3 = 0;      ///< the same pieces times their thickness
  double top_area_cm2 = 0;    ///< of the layers next to the film
  double unfilled_cm2 = 0;    ///< wound farther than inset + 0.05 cm from the top filler
  geometry::Region unfilled;  ///< where that is
};

struct FilmSheet {
  std::string item;
  geometry::Rectangle place;  ///< its sides are the sheet's own, centre and angle say where
  int shared =
      0;  ///< from 1: the sheet of Plan::film_layout that it is cut from; 0: one of its own
};

/// A strip of filler over film-protected skin, counted as a piece: to the port, or from one piece
/// of filler to the next.
struct Bridge {
  std::vector<geometry::Point> line;  ///< its middle, from filler to port or to the next filler
  double length_cm = 0;               ///< along that line
  double width_cm = 0;
  double pad_diameter_cm = 0;        ///< of the round end under the port; 0 when it only joins
  geometry::Region strip;            ///< the filler to cut
  bool crosses_no_port = false;      ///< it had to, as the wound itself lies in such a zone
  geometry::Region skin_protection;  ///< film under it, on skin only
};

struct Port {
  bool on_bridge = false;                    ///< it sits on the pad of the drape's last bridge
  bool chosen = false;                       ///< its place was chosen by the user
  std::optional<geometry::Point> centre_cm;  ///< nothing when no filler is left to sit on
  double aperture_diameter_cm = 0;
  double aperture_limit_cm = 0;
  Figure largest_aperture;  ///< diameter of the largest circle wholly on top filler, off no_port
  Figure room;        ///< diameter of the largest circle round its own centre: on that filler,
                      ///< or on the bridge's pad
  bool fits = false;  ///< the aperture is no larger than that room
  double base_diameter_cm = 0;

  /// Whether the aperture lies wholly over the wound's own filler, or would, were there no bridge.
  bool fits_on_wound() const {
    return on_bridge ? largest_aperture.value >= aperture_diameter_cm : fits;
  }
};

/// What film border is left along a part of the wounds' edge. `enough_cm` below is common
/// practice's least, or what was asked for where that is less.
enum class BorderKind {
  enough,        ///< at least enough_cm, the tracing error counted
  may_be_short,  ///< enough as drawn, but by less than the tracing error
  too_short,     ///< under enough_cm
  none,          ///< film cannot reach skin: what takes no film lies at the edge or on it
};
/// "enough", "may_be_short", "too_short", "none".
std::string_view name_of(BorderKind kind);

/// What helps where a border is not enough.
struct BorderAdvice {
  double strip_length_cm = 0;  ///< to seal the stretch by itself
  double strip_width_cm = 0;   ///< all the room there is at its narrowest; 0: none
  /// A film that reaches so far here goes all round what takes no film, with enough skin beyond.
  /// Nothing where that is too far to be of use.
  std::optional<double> reach_round_cm;
};

/// A longest part of the wounds' edge with one kind of border.
struct BorderStretch {
  BorderKind kind = BorderKind::enough;
  /// Along the edge, wound on the left; the first point is repeated at the end of a whole ring.
  std::vector<geometry::Point> line;
  double length_cm = 0;
  Figure least;                  ///< border on it, at most the one asked for
  geometry::Segment least_line;  ///< from wound edge to film edge; a point where film reaches as
                                 ///< far as was asked or not at all
  std::optional<BorderAdvice> advice;  ///< where the border is not enough
};

/// One film for one group of wounds, with its port.
struct Drape {
  std::vector<std::string> wounds;
  geometry::Region required_outline_cm;  ///< within border_cm of the group
  geometry::Region outline_cm;           ///< the same, clear of the no_film zones
  double area_cm2 = 0;
  geometry::Rectangle rectangle;  ///< the smallest that holds outline_cm
  Figure least_border;
  std::optional<geometry::Segment> least_border_line;  ///< wound edge to film edge, when cut short
  std::array<double, 12> border_by_clock_cm{};         ///< hours 1 to 12
  double border_enough_cm = 0;                         ///< what the stretches are held against
  std::vector<BorderStretch> border_stretches;         ///< the whole edge, ring by ring
  geometry::Point centroid_cm;                         ///< of the group: centre of that clock
  Port port;
  std::vector<FilmSheet> sheets;  ///< one, or several that overlap; empty when the stock has not
                                  ///< enough: see the findings
  std::vector<geometry::Segment> seams;  ///< middle of each overlap of several sheets
  std::vector<Bridge> bridges;           ///< between pieces of filler, then, if any, to the port
  std::vector<FilmSheet> protection_sheets;  ///< film under the bridges
};

/// What a piece that is cut from a sheet is: of filler, then of film.
enum class PieceUse { layer, strip, bridge, film, skin_protection };

/// One piece as it lies on its sheet, never turned over: the plan's piece, turned about the
/// drawing's origin and then shifted.
struct Placement {
  PieceUse use = PieceUse::layer;
  std::string wound;  ///< of a bridge: the first wound under its film
  int layer = 1;      ///< 0 for all that is in no layer
  int piece = 1;      ///< from 1: within the layer; else among the plan's strips, bridges, films or
                      ///< protection sheets
  int part = 0;       ///< from 1 where a strip or a bridge is cut in parts; 0: it is whole
  double angle_deg = 0;
  geometry::Point shift_cm;
  geometry::Polygon outline_cm;  ///< on the sheet: its corner at the origin, its length along x
};

/// One sheet to open, with what is cut from it. Film has no thickness.
struct CutSheet {
  std::string item;
  double length_cm = 0;
  double width_cm = 0;
  double thickness_cm = 0;
  double used_fraction = 0;  ///< area of the pieces in that of the sheet
  std::vector<Placement> placements;
  std::optional<geometry::Box> off_cut;  ///< the largest empty upright rectangle that is left
};

/// One way to cut the pieces of one thickness: from which stock, and what that takes.
struct SheetChoice {
  struct Count {
    std::string item;
    int sheets = 0;
  };
  std::vector<std::string> items;  ///< the stock that may be opened
  std::vector<Count> opened;       ///< what is opened, in the order of the stock list
  int sheets = 0;                  ///< all of it
  std::optional<double> cost;      ///< nothing where the stock list gives no costs
  double used_fraction = 0;
  int pieces = 0;  ///< after splitting
  int seams = 0;
  int missing = 0;                         ///< pieces that found no sheet
  std::optional<geometry::Box> off_cut;    ///< the largest of all sheets
  bool best_possible = false;              ///< nothing cheaper can hold these pieces
  int fewer_possible = 0;                  ///< no layout takes more than so many sheets fewer
  std::optional<double> cheaper_possible;  ///< and none is cheaper by more than this
  bool chosen = false;                     ///< the plan is cut this way
};

/// The ways to cut the pieces of one sheet thickness, side by side: all stock of that thickness
/// together first, then each size alone.
struct SheetComparison {
  double thickness_cm = 0;
  std::vector<SheetChoice> choices;  ///< one is chosen, unless there is no sheet at all
};

struct Consumable {
  std::string item;
  supplies::Kind kind = supplies::Kind::other;
  double per_application = 0;
  double per_course = 0;
  std::string basis;      ///< one sentence with the arithmetic
  bool estimate = false;  ///< not yet worked out piece by piece; the basis says how it was guessed
};

struct Plan {
  std::string label;
  std::string date;
  std::string body_site;           ///< id in core/practice; empty where it is not known
  double head_direction_deg = 90;  ///< of 12 o'clock
  practice::Twelve twelve = practice::Twelve::head;  ///< what 12 o'clock points to
  double tracing_error_cm = 0;
  double border_cm = 0;
  int applications = 0;  ///< over the course
  std::vector<WoundMeasures> wounds;
  Fill fill;
  std::vector<Drape> drapes;
  std::vector<CutSheet> cut_layout;               ///< the filler sheets to open, thickest first
  std::vector<CutSheet> film_layout;              ///< film sheets that several films share
  std::vector<SheetComparison> sheet_comparison;  ///< for each thickness, in that order
  std::vector<Consumable> consumables;
  std::vector<Finding> findings;  ///< stops first, then warnings, then notes
};

/// How long the cut layout is worked on. The first layout of every job is always finished.
struct CutEffort {
  std::uint64_t seed = 1;
  std::int64_t steps = 0;  ///< after the first layouts; a step moves one piece
  /// Whether this share (0 to 1) of the time there is has passed: the caller brings the clock.
  std::function<bool(double share)> out_of_time;
};

struct PlanOptions {
  std::string today;  ///< YYYY-MM-DD, to say how old the assessment is; empty: not said
  CutEffort cut;
  bool compare_sheets = false;  ///< each size alone, too; else what is chosen and all stock
  /// Told of every plan with a better cut layout than the one before, the last of them the result.
  std::function<void(const Plan&)> on_better;
};

/// Works out the whole plan of a case's last assessment. Deterministic, as long as `out_of_time`
/// is not given: equal cases give equal plans. More steps never make the cut layout worse.
/// @throws InputError when the case breaks its own format (bounds, shapes); what can be planned
///         with a doubt is planned, and the doubt is a finding
/// @throws Cancelled when `progress` was told to stop
Plan plan_dressing(const wound::Case& value, const Progress& progress = {},
                   const PlanOptions& options = {});

}  // namespace drapewright::dressing
