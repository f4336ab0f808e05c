#include "core/supplies/stock_item.h"

#include <algorithm>
#include <array>
#include <utility>

namespace drapewright::supplies {
namespace {

constexpr std::array<std::pair<Kind, std::string_view>, 6> kind_names = {{
    {Kind::filler_sheet, "filler_sheet"},
    {Kind::film_sheet, "film_sheet"},
    {Kind::port, "port"},
    {Kind::canister, "canister"},
    {Kind::battery, "battery"},
    {Kind::other, "other"},
}};

}  // namespace

std::string_view name_of(Kind kind) {
  return std::ranges::find(kind_names, kind, [](const auto& row) { return row.first; })->second;
}

std::optional<Kind> kind_named(std::string_view name) {
  const auto row = std::ranges::find(kind_names, name, [](const auto& r) { return r.second; });
  if (row == kind_names.end()) return std::nullopt;
  return row->first;
}

}  // namespace drapewright::supplies
