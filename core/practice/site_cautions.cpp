#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

#include "core/base/say.h"
#include "core/practice/body_sites.h"

namespace drapewright::practice {
namespace {

constexpr Source common{Standing::common_practice, ""};
constexpr Source fda_table_2{
    Standing::published,
    term("US FDA, public health notification on negative pressure wound therapy, 2009, table 2")};
// The notice names what may lie exposed, not where in the body that is likely.
constexpr Source near_what_fda_names{
    Standing::common_practice,
    term("where it lies close is anatomy; that it is a risk is published: US FDA 2009, table 2")};
constexpr Source pennsylvania{Standing::published,
                              term("Pennsylvania Patient Safety Authority advisory on pressures")};
constexpr Source nice{Standing::published, "NICE interventional procedures guidance IPG467"};

constexpr bool warning = true;
constexpr bool note = false;

constexpr std::array table{
    // What lies beneath.
    SiteCaution{"large-vessels",
                term("Large blood vessels run close beneath. Ask the prescriber whether they are "
                     "covered well enough, and watch the canister for blood."),
                warning, near_what_fda_names},
    SiteCaution{
        "large-vessels-knee",
        term("Large blood vessels run close beneath the hollow of the knee. For a wound there, "
             "ask the prescriber first and watch the canister for blood."),
        note, near_what_fda_names},
    SiteCaution{
        "vagus-nerve",
        term("The vagus nerve runs in the neck. Ask the prescriber how the heart rate is to be "
             "watched."),
        warning, fda_table_2},
    SiteCaution{
        "organs-beneath",
        term("Heart, lungs and vessels lie beneath. If the wound reaches bone or deeper, do "
             "not dress it before the prescriber has said how they are protected."),
        warning, near_what_fda_names},
    SiteCaution{"open-abdomen",
                term("If the abdomen is open: only by staff specifically trained for it, as the "
                     "prescriber orders."),
                note, nice},
    SiteCaution{
        "tendon-near",
        term("Tendon lies close under the skin. Look for it in the wound bed; if it shows, ask "
             "the prescriber how it is to be protected."),
        note, near_what_fda_names},
    SiteCaution{
        "blood-flow",
        term("Blood flow is often poor here. Ask the prescriber whether it was assessed; -75 "
             "to -100 mmHg is used where blood flow or pain asks for it."),
        note, pennsylvania},
    SiteCaution{
        "bone-near",
        term("Bone lies close under the skin. Keep port and tubing off it: mark it as a zone "
             "that takes no port."),
        note, common},

    // What presses on it.
    SiteCaution{
        "sat-on",
        term("The patient sits on it. Neither port nor tubing where it bears weight: mark it "
             "as a zone that takes no port, and lead a bridge away from it."),
        note, common},
    SiteCaution{
        "lain-on",
        term("The patient lies on it. Neither port nor tubing where it bears weight: mark it "
             "as a zone that takes no port, and lead a bridge away from it."),
        note, common},
    SiteCaution{
        "stood-on",
        term("The patient stands on it. Neither port nor tubing on the sole: lead a bridge to "
             "the top of the foot or the leg, and keep the weight off."),
        note, common},

    SiteCaution{
        "heel-weight",
        term("The heel bears weight in bed and on foot. Neither port nor tubing where it does: "
             "mark it as a zone that takes no port, lead a bridge away, keep the heel off the "
             "bed."),
        note, common},

    // What makes the film leak.
    SiteCaution{
        "cleft",
        term("The cleft runs close by and film spans it: leaks start there. Spread and dry "
             "the skin, press the film into the cleft, patch it, and look at it at each turn."),
        note, common},
    SiteCaution{
        "soiling",
        term("Urine and stool reach the film from below. Seal that side with care, and look at "
             "it after each soiling."),
        note, common},
    SiteCaution{
        "creases",
        term("Skin folds here when the patient moves. Stretch it flat before the film goes on; "
             "neither port nor tubing in a fold."),
        note, common},
    SiteCaution{"moves",
                term("A joint moves beneath. Lay the film with the joint as it will rest, without "
                     "pull; neither port nor tubing where it bends."),
                note, common},
    SiteCaution{"breathing",
                term("Skin moves with each breath. Lay the film without pull, from the middle "
                     "outwards."),
                note, common},
    SiteCaution{
        "hollow",
        term("The skin is hollow here and film spans it like a tent. Press it down from the "
             "middle outwards, and patch what stands off."),
        note, common},
    SiteCaution{
        "rounded",
        term("Film pleats over what is round. Cut it in from the edge or lay it in strips, and "
             "flatten every fold: leaks start there."),
        note, common},
    SiteCaution{
        "moist",
        term("Skin stays moist here. Film sticks only to dry skin: dry it well, and allow for "
             "a shorter hold."),
        note, common},
    SiteCaution{
        "hair",
        term("Hair keeps film off the skin. Clip it close where the film goes, before the skin "
             "is cleaned and dried."),
        note, common},
    SiteCaution{
        "stoma",
        term("If there is a stoma close by: mark it, with the room for its bag, as a zone that "
             "takes no film."),
        note, common},
    SiteCaution{
        "eyes-nose-mouth",
        term("Eyes, nose and mouth take no film. Mark each as a zone that takes no film, with "
             "room round it."),
        note, common},
    SiteCaution{"digits",
                term("Film must not close round a finger or a toe. Keep them apart, their tips in "
                     "sight, and look at their colour."),
                note, common},
};

}  // namespace

std::span<const SiteCaution> site_cautions() { return table; }

const SiteCaution& site_caution(std::string_view id) {
  const auto row = std::ranges::find(table, id, &SiteCaution::id);
  if (row == table.end()) throw std::logic_error("no site's caution is called " + std::string(id));
  return *row;
}

}  // namespace drapewright::practice
