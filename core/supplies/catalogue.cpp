#include <algorithm>

#include "core/base/say.h"
#include "core/supplies/stock_item.h"

namespace drapewright::supplies {
namespace {

StockItem filler(const char* item, double length_cm, double width_cm, double thickness_cm,
                 double cost) {
  return {.item = item,
          .kind = Kind::filler_sheet,
          .length_cm = length_cm,
          .width_cm = width_cm,
          .thickness_cm = thickness_cm,
          .unit_cost = cost};
}

StockItem film(const char* item, double length_cm, double width_cm, double cost) {
  return {.item = item,
          .kind = Kind::film_sheet,
          .length_cm = length_cm,
          .width_cm = width_cm,
          .unit_cost = cost};
}

StockItem canister(const char* item, double capacity_ml, double cost) {
  return {.item = item, .kind = Kind::canister, .capacity_ml = capacity_ml, .unit_cost = cost};
}

}  // namespace

// Sizes are round numbers of our own, costs are invented: they only rank one choice above another.
const StockList& built_in_catalogue() {
  static const StockList list = {
      filler(term("Filler sheet 10 x 8 x 1.5 cm"), 10, 8, 1.5, 9),
      filler(term("Filler sheet 20 x 12 x 1.5 cm"), 20, 12, 1.5, 21),
      filler(term("Filler sheet 30 x 20 x 1.5 cm"), 30, 20, 1.5, 44),
      filler(term("Filler sheet 10 x 8 x 3 cm"), 10, 8, 3, 12),
      filler(term("Filler sheet 20 x 12 x 3 cm"), 20, 12, 3, 28),
      filler(term("Filler sheet 30 x 20 x 3 cm"), 30, 20, 3, 60),
      film(term("Film sheet 15 x 15 cm"), 15, 15, 4),
      film(term("Film sheet 20 x 20 cm"), 20, 20, 6),
      film(term("Film sheet 30 x 25 cm"), 30, 25, 10),
      film(term("Film sheet 40 x 30 cm"), 40, 30, 15),
      {.item = term("Port with tubing"), .kind = Kind::port, .unit_cost = 14},
      canister(term("Canister 300 mL"), 300, 18),
      canister(term("Canister 500 mL"), 500, 24),
      {.item = term("AA battery"), .kind = Kind::battery, .unit_cost = 1},
  };
  return list;
}

const std::vector<Sundry>& built_in_sundries() {
  static const std::vector<Sundry> list = {
      {term("Gloves, pair, clean"), 1, term("to take the old dressing off")},
      {term("Gloves, pair, sterile"), 1, term("to put the new one on")},
      {term("Saline for rinsing, 100 mL"), 1, term("to rinse the wound")},
      {term("Gauze swabs, pack"), 1, term("to dry the skin")},
      {term("Skin barrier wipe"), 2, term("to protect the skin under the film")},
      {term("Scissors, sterile"), 1, term("to cut filler and film, clear of the wound")},
      {term("Paper ruler"), 1, term("to measure the wound")},
      {term("Skin marker"), 1, term("to write the piece count and the date on the dressing")},
      {term("Waste bag, clinical"), 1, term("for the old dressing")},
  };
  return list;
}

std::string shown_name(std::string_view item) {
  const bool is_built_in =
      std::ranges::find(built_in_catalogue(), item, &StockItem::item) !=
          built_in_catalogue().end() ||
      std::ranges::find(built_in_sundries(), item, &Sundry::item) != built_in_sundries().end();
  return is_built_in ? say(item) : std::string(item);
}

}  // namespace drapewright::supplies
