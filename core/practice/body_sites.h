#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/practice/source.h"

namespace drapewright::practice {

/// What 12 o'clock points to.
enum class Twelve {
  head,  ///< to the patient's head, 6 to the feet
  heel,  ///< on the foot: to the heel, 6 to the toes
};
/// "head", "heel"; and what 6 o'clock points to: "foot", "toes".
std::string_view name_of(Twelve twelve);
std::string_view opposite_of(Twelve twelve);
/// What the clock method on the foot rests on.
const Source& source_of_clock();

/// What a place of the body asks for when film, filler and port are planned there.
struct SiteCaution {
  std::string_view id;    ///< "weight-bearing"; its finding is "site-weight-bearing"
  std::string_view text;  ///< what it means and what to do, in plain words
  bool warns = false;     ///< a warning; else a note
  Source source;
};

/// A place of the body in plain words.
struct BodySite {
  std::string_view id;                  ///< stored in the case: "foot-sole"
  std::string_view name;                ///< "Sole of the foot"
  std::vector<std::string_view> words;  ///< what it is called, in either language, in small letters
  bool on_limb = false;                 ///< film may close round it: its girth matters
  Twelve twelve = Twelve::head;         ///< the clock method's way there
  std::vector<std::string_view> cautions;  ///< ids, most important first
};

/// From head to foot.
std::span<const BodySite> body_sites();
/// nullptr for an id that is not in the table (a newer program's file).
const BodySite* find_body_site(std::string_view id);
/// The sites that a text in free words names, the longest name first: "left heel" is the heel,
/// "lower back" the back. Whole words, capitals, "left", "right" and "the" not counted.
std::vector<const BodySite*> body_sites_named(std::string_view text);

std::span<const SiteCaution> site_cautions();
/// @throws std::logic_error for an id that is not in the table
const SiteCaution& site_caution(std::string_view id);

}  // namespace drapewright::practice
