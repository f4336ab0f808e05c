#include "core/practice/events.h"

#include <array>

#include "core/base/say.h"

namespace drapewright::practice {
namespace {

constexpr Source common{Standing::common_practice, ""};
constexpr Source royal_marsden{
    Standing::published, term("Royal Marsden Manual of Clinical Nursing Procedures, chapter 18")};
constexpr Source fda{
    Standing::published_from_memory,
    term("US FDA notices on negative pressure wound therapy, 2009 and 2011, which call "
         "bleeding the most serious complication; the order of the steps is from memory")};

constexpr std::array<std::string_view, 5> bleeding{
    term("Stop the therapy at once."),
    term("Leave the dressing where it is, and press on it with the flat hand."),
    term("Call for help: this is an emergency. Do not leave the patient."),
    term("Go on as local policy says for a sudden bleed."),
    term("Say which blood thinners are taken. Therapy starts again only when the prescriber says "
         "so.")};
constexpr std::array<std::string_view, 5> pause{
    term("Note when the therapy stopped and why. A pause is to be short."),
    term("Off for more than 2 hours without a break in sight: take off the whole dressing."),
    term("Count the pieces of filler out, against the number on the dressing."),
    term("Cover the wound with another dressing, as ordered, until therapy can go on."),
    term("Tell the prescriber.")};
constexpr std::array<std::string_view, 5> leak{
    term("Listen and feel along the edge: leaks start at folds, creases, hair and damp skin."),
    term("Press the film flat from the wound outwards; look at the port and where sheets overlap."),
    term("Patch the place with a piece of film that reaches well beyond it on dry skin."),
    term("Look at the joints of the tube and at the canister's seat."),
    term("Start again: the film must draw down hard onto the filler. If it does not, change the "
         "dressing.")};
constexpr std::array<std::string_view, 5> blockage{
    term("See that every clamp is open, and no tube is kinked or lain upon."),
    term("Look for thick fluid or clots in the tube and at the port."),
    term("Blood in the tube: look for bleeding first."),
    term("Not freed by that: change the port or the tube, or the whole dressing, as the device's "
         "instructions say."),
    term("Fluid that stands under the film softens the skin: do not wait for the next change.")};
constexpr std::array<std::string_view, 4> full{
    term("Note how much there is and how fast it came; much blood or a sudden rise: tell the "
         "prescriber."),
    term("Clamp both tubes before they are parted."),
    term("Put in the new canister, open the clamps, start again, see that the film draws down."),
    term("The full one is clinical waste, or as the care setting rules. Change it at least "
         "weekly.")};

constexpr std::array table{
    Event{"bleeding", term("Bleeding"),
          term("Fresh blood in the tube, the canister or under the film."), bleeding, fda},
    Event{"pause", term("A pause over two hours"), term("The therapy is off, for whatever reason."),
          pause, royal_marsden},
    Event{"leak", term("A leak"),
          term("Hissing; the film lifts or the filler swells; the device reports a leak."), leak,
          common},
    Event{"blockage", term("A blockage"),
          term("The filler swells though nothing hisses; nothing flows; the device reports "
               "a blockage."),
          blockage, common},
    Event{"full-canister", term("A full canister"),
          term("It is full, or has been in use for a week."), full, common},
};

}  // namespace

std::span<const Event> events() { return table; }

}  // namespace drapewright::practice
