#include "core/practice/cautions.h"

#include <algorithm>
#include <array>

#include "core/base/say.h"

namespace drapewright::practice {
namespace {

constexpr Source fda_table_1{
    Standing::published,
    term("US FDA, public health notification on negative pressure wound therapy, 2009, table 1")};
constexpr Source fda_table_2{
    Standing::published,
    term("US FDA, public health notification on negative pressure wound therapy, 2009, table 2")};
constexpr Source fda_update{
    Standing::published,
    term("US FDA, update on negative pressure wound therapy, 24 February 2011")};
constexpr Source nice{Standing::published, "NICE interventional procedures guidance IPG467"};

constexpr CautionKind contraindication = CautionKind::contraindication;
constexpr CautionKind risk_factor = CautionKind::risk_factor;

constexpr std::array table{
    Caution{"necrotic-tissue-with-eschar", contraindication, term("Necrotic tissue with eschar"),
            term("Do not dress. Ask the prescriber whether and how it is to be removed first."),
            fda_table_1},
    Caution{"untreated-osteomyelitis", contraindication, term("Untreated osteomyelitis"),
            term("Do not dress. Ask the prescriber about treating it first."), fda_table_1},
    Caution{"non-enteric-or-unexplored-fistula", contraindication,
            term("Non-enteric or unexplored fistula"),
            term("Do not dress. Ask the prescriber to have it explored."), fda_table_1},
    Caution{"malignancy-in-wound", contraindication, term("Malignancy in the wound"),
            term("Do not dress. Refer to the prescriber."), fda_table_1},
    Caution{"exposed-vessels", contraindication, term("Exposed blood vessels"),
            term("Do not dress: bleeding can kill. Refer to the prescriber at once."), fda_table_1},
    Caution{"exposed-nerves", contraindication, term("Exposed nerves"),
            term("Do not dress. Refer to the prescriber."), fda_table_1},
    Caution{"exposed-anastomosis", contraindication, term("Exposed anastomotic site"),
            term("Do not dress. Refer to the prescriber."), fda_table_1},
    Caution{"exposed-organs", contraindication, term("Exposed organs"),
            term("Do not dress. Refer to the prescriber."), fda_table_1},

    Caution{"bleeding-risk", risk_factor, term("High risk of bleeding"),
            term("Ask the prescriber whether therapy may go on, in which care setting, and how the "
                 "wound is to be watched for bleeding."),
            fda_table_2},
    Caution{
        "anticoagulants", risk_factor, term("Anticoagulants or platelet inhibitors"),
        term("Tell the prescriber which ones; agree how the wound is to be watched for bleeding."),
        fda_table_2},
    Caution{"friable-vessels", risk_factor, term("Friable or infected blood vessels"),
            term("Ask the prescriber whether they are covered well enough for therapy."),
            fda_table_2},
    Caution{"vascular-anastomosis", risk_factor, term("Vascular anastomosis"),
            term("Ask the prescriber whether it is covered well enough for therapy."), fda_table_2},
    Caution{"infected-wound", risk_factor, term("Infected wound"),
            term("Ask the prescriber about treatment and how often the dressing is to be changed."),
            fda_table_2},
    Caution{"osteomyelitis", risk_factor, term("Osteomyelitis under treatment"),
            term("Make sure with the prescriber that it is being treated."), fda_table_2},
    Caution{"exposed-tendon-or-ligament", risk_factor, term("Exposed tendon or ligament"),
            term("Ask the prescriber how it is to be protected. Exposed organs, vessels and nerves "
                 "stand in both tables of the notice; here they count as contraindications."),
            fda_table_2},
    Caution{
        "sharp-edges", risk_factor, term("Sharp edges in the wound, such as bone"),
        term("Ask the prescriber whether they are to be covered or smoothed first: they can open a "
             "vessel."),
        fda_table_2},
    Caution{"spinal-cord-injury", risk_factor, term("Spinal cord injury"),
            term("Ask the prescriber how the patient is to be watched for autonomic reactions."),
            fda_table_2},
    Caution{"enteric-fistula", risk_factor, term("Enteric fistula"),
            term("Ask the prescriber whether and how it may be dressed."), fda_table_2},
    Caution{"near-vagus-nerve", risk_factor, term("Wound near the vagus nerve"),
            term("Ask the prescriber how the heart rate is to be watched."), fda_table_2},
    Caution{
        "mri", risk_factor, term("MRI is planned"),
        term("Read the device's instructions and ask the prescriber how the scan is to be done."),
        fda_table_2},
    Caution{"hyperbaric-chamber", risk_factor, term("Treatment in a hyperbaric chamber is planned"),
            term("Read the device's instructions and ask the prescriber what to put in its place "
                 "meanwhile."),
            fda_table_2},
    Caution{
        "defibrillation", risk_factor, term("Defibrillation may be needed"),
        term("Note where the film lies and that it may have to come off; follow the prescriber and "
             "the device's instructions."),
        fda_table_2},
    Caution{
        "patient-size-and-weight", risk_factor,
        term("Patient's size and weight call for thought, such as very small or frail"),
        term("Ask the prescriber about pressure, fluid loss and how the patient is to be watched."),
        fda_table_2},
    Caution{"circumferential-dressing", risk_factor, term("Dressing goes round a limb"),
            term("Ask the prescriber; watch the blood flow beyond the dressing."), fda_table_2},
    Caution{"mode-of-therapy", risk_factor,
            term("Mode of therapy is other than continuous, or open"),
            term("Ask the prescriber for pressure and mode before dressing."), fda_table_2},
    Caution{"newborn-infant-or-child", risk_factor, term("Newborn, infant or child"),
            term("Safety and effect are not established. Only on the prescriber's explicit order."),
            fda_update},
    Caution{"open-abdomen", risk_factor, term("Open abdomen"),
            term("Only by staff specifically trained for it, as the prescriber orders."), nice},
};

}  // namespace

std::span<const Caution> cautions() { return table; }

const Caution* find_caution(std::string_view id) {
  const auto row = std::ranges::find(table, id, &Caution::id);
  return row == table.end() ? nullptr : &*row;
}

}  // namespace drapewright::practice
