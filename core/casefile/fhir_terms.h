#pragma once

#include <string_view>

#include "core/casefile/fhir_json.h"

namespace drapewright::casefile::fhir {

/// What an Observation is about. Codes as the draft HL7 guide for skin and wound has them.
struct Term {
  std::string_view key;    ///< in identifiers of this program's own
  std::string_view loinc;  ///< empty: none was found, and the text stands alone
  std::string_view text;
  std::string_view method;  ///< empty: nothing to say
  std::string_view category = "exam";
};

inline constexpr Unit cm{"cm", "cm"};
inline constexpr Unit cm2{"cm2", "cm2"};
inline constexpr Unit cm3{"cm3", "cm3"};
inline constexpr Unit ml_per_day{"mL/d", "mL/d"};
inline constexpr Unit mmhg{"mmHg", "mm[Hg]"};
inline constexpr Unit degree{"degrees", "deg"};

inline constexpr Term size_panel{"size", "72287-6", "Size of wound", ""};
inline constexpr Term length{"length", "39126-8", "Length of wound",
                             "Greatest distance between two points of the traced outline"};
inline constexpr Term width{"width", "39125-0", "Width of wound",
                            "Extent of the traced outline at right angles to its length"};
inline constexpr Term depth{"depth", "39127-6", "Depth of wound", "At the deepest point"};
inline constexpr Term area{"area", "89260-4", "Area of wound",
                           "Inside the traced outline, islands of skin left out"};
inline constexpr Term volume{"volume", "94083-3", "Volume of wound",
                             "From traced outline, depth and slope of the wall, undermined pockets "
                             "left out"};
inline constexpr Term undermining{"undermining", "72293-4", "Length of undermining",
                                  "Outwards from the wound's edge."};
inline constexpr Term undermining_clock{"", "72294-2", "Clock position of undermining", ""};
inline constexpr Term tunnel{"tunnel", "72296-7", "Length of tunnel", ""};
inline constexpr Term tunnel_clock{"", "72297-5", "Clock position of tunnel", ""};
inline constexpr Term exudate{"exudate", "72291-8", "Exudate, all wounds together", "Per day"};
inline constexpr Term pressure{"pressure", "", "Pressure set for negative-pressure therapy",
                               "Relative to the surrounding air", "therapy"};

}  // namespace drapewright::casefile::fhir
