#include "core/practice/rules.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

#include "core/base/say.h"

namespace drapewright::practice {
namespace {

constexpr Source common{Standing::common_practice, ""};
constexpr Source own{Standing::own_setting, ""};

constexpr std::array table{
    Rule{
        "filler-off-skin",
        term(
            "The filler follows the wound's outline and stays inside it: none of it lies on skin."),
        common},
    Rule{"fewest-pieces",
         term("Use the fewest pieces; count what goes in, write the number on the dressing, count "
              "what "
              "comes out."),
         {Standing::published, term("nursing conference abstract on retained filler, 2012; US FDA "
                                    "notices, 2009 and 2011")}},
    Rule{
        "unexplored-tunnel",
        term("No filler goes into a blind or unexplored tunnel; stop until it is explored."),
        {Standing::published,
         term(
             "US FDA, public health notification on negative pressure wound therapy, 2009, table 1 "
             "(unexplored fistula); for tunnels common practice")}},
    Rule{"aperture-over-filler", term("The aperture in the film lies wholly over filler."), common},
    Rule{"film-on-skin",
         term("Film sticks only to clean, dry, intact skin, and is trimmed clear of what it cannot "
              "cover."),
         common},
    Rule{"fluid-measured-first",
         term("A measured amount of fluid a day always beats the estimate by area."),
         {Standing::published, "Dealey et al, J Wound Care 2006;15(4):149"}},
    Rule{"plan-what-was-seen",
         term("A plan is only as good as its assessment: measure again before each dressing."),
         common},
    Rule{"drawn-once",
         term("Every part of the wound is drawn once, and every figure is worked out or "
              "left blank."),
         own},
};

}  // namespace

std::span<const Rule> rules() { return table; }

const Rule& rule(std::string_view id) {
  const auto row = std::ranges::find(table, id, &Rule::id);
  if (row == table.end()) throw std::logic_error("no rule is called " + std::string(id));
  return *row;
}

}  // namespace drapewright::practice
