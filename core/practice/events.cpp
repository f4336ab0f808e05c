#include "core/practice/events.h"

#include <array>

namespace drapewright::practice {
namespace {

constexpr Source common{Standing::common_practice, ""};
constexpr Source royal_marsden{Standing::published,
                               "Royal Marsden Manual of Clinical Nursing Procedures, chapter 18"};
constexpr Source fda{
    Standing::published_from_memory,
    "US FDA notices on negative pressure wound therapy, 2009 and 2011, which call "
    "bleeding the most serious complication; the order of the steps is from memory"};

constexpr std::array<std::string_view, 5> bleeding{
    "Stop the therapy at once.",
    "Leave the dressing where it is, and press on it with the flat hand.",
    "Call for help: this is an emergency. Do not leave the patient.",
    "Go on as local policy says for a sudden bleed.",
    "Say which blood thinners are taken. Therapy starts again only when the prescriber says so."};
constexpr std::array<std::string_view, 5> pause{
    "Note when the therapy stopped and why. A pause is to be short.",
    "Off for more than 2 hours without a break in sight: take off the whole dressing.",
    "Count the pieces of filler out, against the number on the dressing.",
    "Cover the wound with another dressing, as ordered, until therapy can go on.",
    "Tell the prescriber."};
constexpr std::array<std::string_view, 5> leak{
    "Listen and feel along the edge: leaks start at folds, creases, hair and damp skin.",
    "Press the film flat from the wound outwards; look at the port and where sheets overlap.",
    "Patch the place with a piece of film that reaches well beyond it on dry skin.",
    "Look at the joints of the tube and at the canister's seat.",
    "Start again: the film must draw down hard onto the filler. If it does not, change the "
    "dressing."};
constexpr std::array<std::string_view, 5> blockage{
    "See that every clamp is open, and no tube is kinked or lain upon.",
    "Look for thick fluid or clots in the tube and at the port.",
    "Blood in the tube: look for bleeding first.",
    "Not freed by that: change the port or the tube, or the whole dressing, as the device's "
    "instructions say.",
    "Fluid that stands under the film softens the skin: do not wait for the next change."};
constexpr std::array<std::string_view, 4> full{
    "Note how much there is and how fast it came; much blood or a sudden rise: tell the "
    "prescriber.",
    "Clamp both tubes before they are parted.",
    "Put in the new canister, open the clamps, start again, see that the film draws down.",
    "The full one is clinical waste, or as the care setting rules. Change it at least weekly."};

constexpr std::array table{
    Event{"bleeding", "Bleeding", "Fresh blood in the tube, the canister or under the film.",
          bleeding, fda},
    Event{"pause", "A pause over two hours", "The therapy is off, for whatever reason.", pause,
          royal_marsden},
    Event{"leak", "A leak",
          "Hissing; the film lifts or the filler swells; the device reports a leak.", leak, common},
    Event{"blockage", "A blockage",
          "The filler swells though nothing hisses; nothing flows; the device reports "
          "a blockage.",
          blockage, common},
    Event{"full-canister", "A full canister", "It is full, or has been in use for a week.", full,
          common},
};

}  // namespace

std::span<const Event> events() { return table; }

}  // namespace drapewright::practice
