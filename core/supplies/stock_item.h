#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/extra_members.h"

namespace drapewright::supplies {

enum class Kind { filler_sheet, film_sheet, port, canister, battery, other };

/// "filler_sheet" and so on, as in the case file; and back (nothing for an unknown word).
std::string_view name_of(Kind kind);
std::optional<Kind> kind_named(std::string_view name);

/// One line of a stock list. What does not apply to a kind is left out.
struct StockItem {
  std::string item;  ///< a local stock code or a generic name; not empty
  Kind kind = Kind::other;
  std::optional<double> length_cm;
  std::optional<double> width_cm;
  std::optional<double> thickness_cm;  ///< filler sheets
  std::optional<double> capacity_ml;   ///< canisters
  std::optional<double> unit_cost;
  std::optional<int> available;  ///< nothing: as many as are needed
  ExtraMembers extra;
  friend bool operator==(const StockItem&, const StockItem&) = default;
};

using StockList = std::vector<StockItem>;

/// The catalogue that is planned with when a case brings no list of its own: generic sizes in
/// round numbers of our own, unit costs invented (and called so wherever they are shown). Its names
/// are the same in every language, so that files can be exchanged; what is shown is said.
const StockList& built_in_catalogue();

/// What else lies on a dressing trolley: `per_application` of it each time.
struct Sundry {
  std::string_view item;
  double per_application;
  std::string_view why;
};
const std::vector<Sundry>& built_in_sundries();

/// An item's name as people read it: the catalogue's and the sundries' own names in their language,
/// a stock's local name as it stands.
std::string shown_name(std::string_view item);

}  // namespace drapewright::supplies
