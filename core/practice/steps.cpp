#include "core/practice/steps.h"

#include <array>

#include "core/base/say.h"

namespace drapewright::practice {
namespace {

constexpr Source common{Standing::common_practice, ""};
constexpr Source counted{
    Standing::published,
    term("nursing conference abstract on retained filler, 2012; US FDA notices, 2009 and 2011")};
constexpr Source pressures{Standing::published,
                           term("Pennsylvania Patient Safety Authority advisory on pressures")};

constexpr std::array table{
    Step{"hands", term("Hands washed, gloves on, a clean field laid out, everything at hand."),
         common},
    Step{"old-out", term("Old dressing off; every piece of filler counted out."), counted},
    Step{"wound",
         term("Wound rinsed and looked at: still as planned? If not, measure and plan again."),
         common},
    Step{"skin", term("Skin round the wound clean and dry, hair clipped, fragile skin protected."),
         common},
    Step{"cut", term("Filler cut well clear of the open wound; loose crumbs rubbed off."), common},
    Step{"count-in",
         term("Filler laid in without force, none of it on skin; every piece counted in."),
         counted},
    Step{"film",
         term("Film trimmed with its backing on, laid from the middle outwards, border flat."),
         common},
    Step{"aperture", term("Aperture cut, wholly over filler."), common},
    Step{"port", term("Port stuck on over the aperture, its tube led away from bone and creases."),
         common},
    Step{"clamps", term("All clamps open, no tube kinked or lain upon."), common},
    Step{"pressure", term("Pressure set as ordered, therapy started."), pressures},
    Step{"seal", term("Seal seen: the film is drawn down hard onto the filler."), common},
    Step{"leak", term("Leak check: edge, folds, port and seams felt and listened to."), common},
    Step{"label", term("Label on the dressing: number of pieces, date, next change."), counted},
};

}  // namespace

std::span<const Step> steps() { return table; }

}  // namespace drapewright::practice
