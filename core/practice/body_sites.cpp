#include "core/practice/body_sites.h"

#include <algorithm>
#include <cctype>
#include <string>

namespace drapewright::practice {
namespace {

constexpr Twelve head = Twelve::head;
constexpr Twelve heel = Twelve::heel;
constexpr bool limb = true;
constexpr bool trunk = false;

const std::vector<BodySite> table = {
    {"head",
     "Head, scalp",
     {"head", "scalp", "back of head", "occiput", "forehead", "temple"},
     trunk,
     head,
     {"hair", "rounded", "bone-near"}},
    {"face",
     "Face",
     {"face", "cheek", "chin", "nose", "ear", "lip", "eyelid"},
     trunk,
     head,
     {"eyes-nose-mouth", "hair", "creases"}},
    {"neck",
     "Neck",
     {"neck", "throat", "nape"},
     trunk,
     head,
     {"large-vessels", "vagus-nerve", "creases", "moves", "hair"}},
    {"shoulder",
     "Shoulder",
     {"shoulder", "shoulder blade", "scapula"},
     trunk,
     head,
     {"moves", "bone-near"}},
    {"axilla",
     "Armpit",
     {"armpit", "axilla"},
     trunk,
     head,
     {"large-vessels", "hollow", "moist", "hair", "moves"}},
    {"chest",
     "Chest",
     {"chest", "breastbone", "sternum", "thorax", "ribs"},
     trunk,
     head,
     {"organs-beneath", "breathing", "bone-near", "hair"}},
    {"breast",
     "Breast",
     {"breast", "under breast", "mastectomy"},
     trunk,
     head,
     {"moist", "creases", "rounded"}},
    {"abdomen",
     "Abdomen",
     {"abdomen", "belly", "navel", "umbilicus", "laparotomy"},
     trunk,
     head,
     {"open-abdomen", "stoma", "creases", "breathing", "hair"}},
    {"flank", "Flank", {"flank", "waist", "loin"}, trunk, head, {"stoma", "creases", "breathing"}},
    {"back",
     "Back",
     {"back", "lower back", "upper back", "spine"},
     trunk,
     head,
     {"lain-on", "bone-near"}},
    {"sacrum",
     "Sacrum, tail bone",
     {"sacrum", "sacral", "coccyx", "tail bone", "tailbone"},
     trunk,
     head,
     {"lain-on", "cleft", "soiling", "bone-near"}},
    {"buttock",
     "Buttock",
     {"buttock", "buttocks", "gluteal"},
     trunk,
     head,
     {"sat-on", "cleft", "soiling"}},
    {"ischium",
     "Sitting bone",
     {"sitting bone", "ischium", "ischial", "seat bone"},
     trunk,
     head,
     {"sat-on", "soiling", "creases", "bone-near"}},
    {"hip", "Hip", {"hip", "trochanter"}, trunk, head, {"lain-on", "bone-near", "moves"}},
    {"groin",
     "Groin",
     {"groin", "inguinal"},
     trunk,
     head,
     {"large-vessels", "creases", "moist", "hair", "soiling", "moves"}},
    {"perineum",
     "Perineum",
     {"perineum", "perineal", "perianal", "scrotum", "vulva"},
     trunk,
     head,
     {"soiling", "cleft", "moist", "hair", "sat-on"}},
    {"upper-arm", "Upper arm", {"upper arm", "arm"}, limb, head, {"rounded"}},
    {"elbow", "Elbow", {"elbow", "olecranon"}, limb, head, {"moves", "bone-near", "rounded"}},
    {"forearm", "Forearm", {"forearm", "lower arm"}, limb, head, {"tendon-near", "rounded"}},
    {"hand",
     "Hand, wrist",
     {"hand", "wrist", "finger", "fingers", "thumb", "palm", "back of hand"},
     limb,
     head,
     {"digits", "tendon-near", "moves"}},
    {"thigh", "Thigh", {"thigh", "upper leg"}, limb, head, {"hair", "rounded"}},
    {"knee",
     "Knee",
     {"knee", "kneecap", "back of knee", "popliteal"},
     limb,
     head,
     {"large-vessels-knee", "moves", "bone-near"}},
    {"lower-leg",
     "Lower leg",
     {"lower leg", "leg", "shin", "calf", "gaiter"},
     limb,
     head,
     {"blood-flow", "bone-near", "hair"}},
    {"stump",
     "Stump",
     {"stump", "amputation", "residual limb"},
     limb,
     head,
     {"blood-flow", "rounded", "bone-near"}},
    {"ankle",
     "Ankle",
     {"ankle", "malleolus"},
     limb,
     head,
     {"blood-flow", "bone-near", "hollow", "moves", "tendon-near"}},
    {"heel",
     "Heel",
     {"heel", "back of heel"},
     limb,
     heel,
     {"heel-weight", "blood-flow", "rounded", "bone-near"}},
    {"foot-sole",
     "Sole of the foot",
     {"sole", "sole of foot", "ball of foot", "plantar", "instep"},
     limb,
     heel,
     {"stood-on", "blood-flow"}},
    {"foot-top",
     "Top of the foot",
     {"top of foot", "back of foot", "dorsum of foot"},
     limb,
     heel,
     {"blood-flow", "tendon-near", "bone-near"}},
    {"foot", "Foot", {"foot"}, limb, heel, {"stood-on", "blood-flow", "tendon-near"}},
    {"toe",
     "Toe",
     {"toe", "toes", "big toe", "great toe"},
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

std::string_view name_of(Twelve twelve) { return twelve == Twelve::heel ? "heel" : "head"; }

std::string_view opposite_of(Twelve twelve) { return twelve == Twelve::heel ? "toes" : "feet"; }

const Source& source_of_clock() {
  static constexpr Source source{Standing::published,
                                 "the clock method as a wound care trade journal describes it"};
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
