#include "core/practice/steps.h"

#include <array>

namespace drapewright::practice {
namespace {

constexpr Source common{Standing::common_practice, ""};
constexpr Source counted{
    Standing::published,
    "nursing conference abstract on retained filler, 2012; US FDA notices, 2009 and 2011"};
constexpr Source pressures{Standing::published,
                           "Pennsylvania Patient Safety Authority advisory on pressures"};

constexpr std::array table{
    Step{"hands", "Hands washed, gloves on, a clean field laid out, everything at hand.", common},
    Step{"old-out", "Old dressing off; every piece of filler counted out.", counted},
    Step{"wound", "Wound rinsed and looked at: still as planned? If not, measure and plan again.",
         common},
    Step{"skin", "Skin round the wound clean and dry, hair clipped, fragile skin protected.",
         common},
    Step{"cut", "Filler cut well clear of the open wound; loose crumbs rubbed off.", common},
    Step{"count-in", "Filler laid in without force, none of it on skin; every piece counted in.",
         counted},
    Step{"film", "Film trimmed with its backing on, laid from the middle outwards, border flat.",
         common},
    Step{"aperture", "Aperture cut, wholly over filler.", common},
    Step{"port", "Port stuck on over the aperture, its tube led away from bone and creases.",
         common},
    Step{"clamps", "All clamps open, no tube kinked or lain upon.", common},
    Step{"pressure", "Pressure set as ordered, therapy started.", pressures},
    Step{"seal", "Seal seen: the film is drawn down hard onto the filler.", common},
    Step{"leak", "Leak check: edge, folds, port and seams felt and listened to.", common},
    Step{"label", "Label on the dressing: number of pieces, date, next change.", counted},
};

}  // namespace

std::span<const Step> steps() { return table; }

}  // namespace drapewright::practice
