#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/extra_members.h"
#include "core/picture/picture.h"
#include "core/practice/body_sites.h"
#include "core/supplies/stock_item.h"
#include "core/wound/wound.h"

namespace drapewright::wound {

/// What was seen on one day.
struct Assessment {
  std::string date;  ///< YYYY-MM-DD
  std::vector<Wound> wounds;
  std::vector<SkinZone> skin_zones;
  std::optional<double> exudate_ml_per_day;
  std::optional<picture::Picture> picture;  ///< the photograph that it was traced from
  ExtraMembers extra;
  friend bool operator==(const Assessment&, const Assessment&) = default;
};

/// How the wound is to be dressed. Defaults are those of the file format; bounds and sources are
/// in core/practice.
struct DressingSettings {
  double inset_cm = 0.3;
  double border_cm = 5;
  double filler_thickness_cm = 3;
  double film_overlap_cm = 1;
  double aperture_diameter_cm = 2;
  double port_base_diameter_cm = 5;
  double bridge_width_cm = 3;
  double piece_gap_cm = 0.3;
  double pressure_mmhg = -125;
  double change_every_h = 72;
  double course_days = 14;
  double canister_ml = 300;
  double canister_max_days = 7;
  double battery_days = 7;
  double tracing_error_mm = 1;  ///< how far the drawn edge may lie from the true one
  bool bridge_wanted = false;   ///< lead a bridge to the port even where it could sit on the wound
  std::vector<geometry::Point> port_places_cm;  ///< chosen by the user; each serves the wounds
                                                ///< that it lies within border_cm of
  std::vector<std::string> filler_items;  ///< the filler sheets to cut from; empty: all in stock
  ExtraMembers extra;
  friend bool operator==(const DressingSettings&, const DressingSettings&) = default;
};

/// One dressing that was put on.
struct Application {
  std::string date;
  int pieces_placed = 0;
  std::optional<int> pieces_removed;
  std::string note;
  ExtraMembers extra;
  friend bool operator==(const Application&, const Application&) = default;
};

/// What was answered when the cautions were gone through.
struct CautionReview {
  bool reviewed = false;             ///< somebody went through the whole list
  std::vector<std::string> present;  ///< ids (core/practice) of those that apply, in table order
  ExtraMembers extra;
  friend bool operator==(const CautionReview&, const CautionReview&) = default;
};

/// One wound case, as its file holds it.
struct Case {
  std::string label;                    ///< a pseudonym, 1 to 80 characters; never a name
  std::string body_site;                ///< free text, may be empty
  std::string body_site_id;             ///< chosen from practice::body_sites, or empty
  std::optional<double> limb_girth_cm;  ///< where the wound is on a limb
  double head_direction_deg = 90;       ///< of 12 o'clock; on the foot that is the heel (site_of)
  std::vector<Assessment> assessments;  ///< oldest first, never empty; the last is planned
  DressingSettings dressing;
  std::optional<supplies::StockList> supplies;  ///< nothing: the built-in catalogue
  std::vector<Application> applications;
  CautionReview cautions;
  ExtraMembers extra;
  friend bool operator==(const Case&, const Case&) = default;

  /// The assessment that is planned. @pre assessments is not empty
  const Assessment& current() const { return assessments.back(); }
  Assessment& current() { return assessments.back(); }
};

/// Checks what no file reader can leave to chance: every number finite and within its bounds
/// (core/wound knows those of shapes and clock hours; settings are checked against core/practice
/// by the dressing room), ids unique, at least one wound, outlines and islands faultless.
/// `pointer` in the error is the JSON pointer of the member at fault.
/// @throws InputError for the first fault found
void check(const Case& value);
/// The shape part of `check` for one wound or zone; `pointer` is where it stands.
void check_outline(const geometry::Ring& outline, const std::vector<geometry::Ring>& islands,
                   const std::string& pointer);

/// The place of the body: the one chosen, or where none was the one that the free text names.
/// nullptr where it is not in the table.
const practice::BodySite* site_of(const Case& value);

/// The stock that a case is planned with: its own, or the built-in catalogue.
const supplies::StockList& stock_of(const Case& value);

}  // namespace drapewright::wound
