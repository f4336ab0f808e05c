#include "core/practice/body_sites.h"

#include <algorithm>
#include <cctype>
#include <string>

#include "core/base/say.h"

namespace drapewright::practice {
namespace {

constexpr Twelve head = Twelve::head;
constexpr Twelve heel = Twelve::heel;
constexpr bool limb = true;
constexpr bool trunk = false;

const std::vector<BodySite> table = {
    {"head",
     term("Head, scalp"),
     {"head", "scalp", "back of head", "occiput", "forehead", "temple", "kopf", "kopfhaut",
      "hinterkopf", "stirn", "schläfe"},
     trunk,
     head,
     {"hair", "rounded", "bone-near"}},
    {"face",
     term("Face"),
     {"face", "cheek", "chin", "nose", "ear", "lip", "eyelid", "gesicht", "wange", "kinn", "nase",
      "ohr", "lippe", "augenlid"},
     trunk,
     head,
     {"eyes-nose-mouth", "hair", "creases"}},
    {"neck",
     term("Neck"),
     {"neck", "throat", "nape", "hals", "nacken", "kehle"},
     trunk,
     head,
     {"large-vessels", "vagus-nerve", "creases", "moves", "hair"}},
    {"shoulder",
     term("Shoulder"),
     {"shoulder", "shoulder blade", "scapula", "schulter", "schulterblatt"},
     trunk,
     head,
     {"moves", "bone-near"}},
    {"axilla",
     term("Armpit"),
     {"armpit", "axilla", "achsel", "achselhöhle"},
     trunk,
     head,
     {"large-vessels", "hollow", "moist", "hair", "moves"}},
    {"chest",
     term("Chest"),
     {"chest", "breastbone", "sternum", "thorax", "ribs", "brustkorb", "brustbein", "rippen"},
     trunk,
     head,
     {"organs-beneath", "breathing", "bone-near", "hair"}},
    {"breast",
     term("Breast"),
     {"breast", "under breast", "mastectomy", "brust", "mamma"},
     trunk,
     head,
     {"moist", "creases", "rounded"}},
    {"abdomen",
     term("Abdomen"),
     {"abdomen", "belly", "navel", "umbilicus", "laparotomy", "bauch", "nabel"},
     trunk,
     head,
     {"open-abdomen", "stoma", "creases", "breathing", "hair"}},
    {"flank",
     term("Flank"),
     {"flank", "waist", "loin", "flanke", "taille", "lende"},
     trunk,
     head,
     {"stoma", "creases", "breathing"}},
    {"back",
     term("Back"),
     {"back", "lower back", "upper back", "spine", "rücken", "wirbelsäule"},
     trunk,
     head,
     {"lain-on", "bone-near"}},
    {"sacrum",
     term("Sacrum, tail bone"),
     {"sacrum", "sacral", "coccyx", "tail bone", "tailbone", "kreuzbein", "sakrum", "steißbein",
      "steiß"},
     trunk,
     head,
     {"lain-on", "cleft", "soiling", "bone-near"}},
    {"buttock",
     term("Buttock"),
     {"buttock", "buttocks", "gluteal", "gesäß", "po"},
     trunk,
     head,
     {"sat-on", "cleft", "soiling"}},
    {"ischium",
     term("Sitting bone"),
     {"sitting bone", "ischium", "ischial", "seat bone", "sitzbein"},
     trunk,
     head,
     {"sat-on", "soiling", "creases", "bone-near"}},
    {"hip",
     term("Hip"),
     {"hip", "trochanter", "hüfte"},
     trunk,
     head,
     {"lain-on", "bone-near", "moves"}},
    {"groin",
     term("Groin"),
     {"groin", "inguinal", "leiste"},
     trunk,
     head,
     {"large-vessels", "creases", "moist", "hair", "soiling", "moves"}},
    {"perineum",
     term("Perineum"),
     {"perineum", "perineal", "perianal", "scrotum", "vulva", "damm", "hodensack"},
     trunk,
     head,
     {"soiling", "cleft", "moist", "hair", "sat-on"}},
    {"upper-arm", term("Upper arm"), {"upper arm", "arm", "oberarm"}, limb, head, {"rounded"}},
    {"elbow",
     term("Elbow"),
     {"elbow", "olecranon", "ellenbogen", "ellbogen"},
     limb,
     head,
     {"moves", "bone-near", "rounded"}},
    {"forearm",
     term("Forearm"),
     {"forearm", "lower arm", "unterarm"},
     limb,
     head,
     {"tendon-near", "rounded"}},
    {"hand",
     term("Hand, wrist"),
     {"hand", "wrist", "finger", "fingers", "thumb", "palm", "back of hand", "handgelenk", "daumen",
      "handfläche", "handrücken"},
     limb,
     head,
     {"digits", "tendon-near", "moves"}},
    {"thigh",
     term("Thigh"),
     {"thigh", "upper leg", "oberschenkel"},
     limb,
     head,
     {"hair", "rounded"}},
    {"knee",
     term("Knee"),
     {"knee", "kneecap", "back of knee", "popliteal", "knie", "kniescheibe", "kniekehle"},
     limb,
     head,
     {"large-vessels-knee", "moves", "bone-near"}},
    {"lower-leg",
     term("Lower leg"),
     {"lower leg", "leg", "shin", "calf", "gaiter", "unterschenkel", "bein", "schienbein", "wade"},
     limb,
     head,
     {"blood-flow", "bone-near", "hair"}},
    {"stump",
     term("Stump"),
     {"stump", "amputation", "residual limb", "stumpf", "amputationsstumpf"},
     limb,
     head,
     {"blood-flow", "rounded", "bone-near"}},
    {"ankle",
     term("Ankle"),
     {"ankle", "malleolus", "knöchel", "sprunggelenk"},
     limb,
     head,
     {"blood-flow", "bone-near", "hollow", "moves", "tendon-near"}},
    {"heel",
     term("Heel"),
     {"heel", "back of heel", "ferse"},
     limb,
     heel,
     {"heel-weight", "blood-flow", "rounded", "bone-near"}},
    {"foot-sole",
     term("Sole of the foot"),
     {"sole", "sole of foot", "ball of foot", "plantar", "instep", "fußsohle", "sohle",
      "fußballen"},
     limb,
     heel,
     {"stood-on", "blood-flow"}},
    {"foot-top",
     term("Top of the foot"),
     {"top of foot", "back of foot", "dorsum of foot", "fußrücken"},
     limb,
     heel,
     {"blood-flow", "tendon-near", "bone-near"}},
    {"foot", term("Foot"), {"foot", "fuß"}, limb, heel, {"stood-on", "blood-flow", "tendon-near"}},
    {"toe",
     term("Toe"),
     {"toe", "toes", "big toe", "great toe", "zeh", "zehe", "zehen", "großzehe"},
     limb,
     heel,
     {"blood-flow", "digits", "stood-on"}},
};

/// A text in small letters, its words parted and framed by single blanks.
std::string words_of(std::string_view text) {
  std::string words = " ";
  std::string word;
  const auto end_word = [&] {
    const bool counts = word != "left" && word != "right" && word != "the" && !word.empty();
    if (counts) words += word + " ";
    word.clear();
  };
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x80 || std::isalnum(byte)) {
      word += static_cast<char>(byte < 0x80 ? std::tolower(byte) : byte);
    } else {
      end_word();
    }
  }
  end_word();
  return words;
}

struct NamedSite {
  std::string words;     ///< framed by blanks
  const BodySite* site;  ///< nullptr: words that sound like a site and are none
};

/// Every name of every site, the longest first.
const std::vector<NamedSite>& names() {
  static const std::vector<NamedSite> all = [] {
    std::vector<NamedSite> found{{" back of ", nullptr}};  // of a thigh, of a calf
    for (const BodySite& site : table) {
      for (const std::string_view name : site.words) found.push_back({words_of(name), &site});
    }
    std::ranges::stable_sort(found, std::ranges::greater{},
                             [](const NamedSite& name) { return name.words.size(); });
    return found;
  }();
  return all;
}

}  // namespace

std::string_view name_of(Twelve twelve) {
  return twelve == Twelve::heel ? term("heel") : term("head");
}

std::string_view opposite_of(Twelve twelve) {
  return twelve == Twelve::heel ? term("toes") : term("feet");
}

const Source& source_of_clock() {
  static constexpr Source source{
      Standing::published, term("the clock method as a wound care trade journal describes it")};
  return source;
}

std::span<const BodySite> body_sites() { return table; }

const BodySite* find_body_site(std::string_view id) {
  const auto row = std::ranges::find(table, id, &BodySite::id);
  return row == table.end() ? nullptr : &*row;
}

std::vector<const BodySite*> body_sites_named(std::string_view text) {
  std::string words = words_of(text);
  std::vector<const BodySite*> sites;
  for (const NamedSite& name : names()) {
    const auto at = words.find(name.words);
    if (at == std::string::npos) continue;
    words.replace(at, name.words.size(), " | ");  // "back of the heel" does not name the back
    const bool known = name.site == nullptr || std::ranges::count(sites, name.site) > 0;
    if (!known) sites.push_back(name.site);
  }
  return sites;
}

}  // namespace drapewright::practice
