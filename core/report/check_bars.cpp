#include "core/report/check_bars.h"

#include <stdexcept>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr double column_mm = 14;  ///< for the upright bar and its length in words

constexpr const char* what_to_do = term(
    "Both bars must measure 100.0 mm. If they do not: print at 100 % (actual size), with no "
    "fitting to the page. If they still differ, give both lengths as the printer's correction and "
    "print again. Cut by no page whose bars are wrong.");

std::string in_words(const PrinterCorrection& correction) {
  if (correction.bar_across_mm == check_bar_mm && correction.bar_down_mm == check_bar_mm) return {};
  return " " +
         say("Corrected for a printer whose bars measured {1} mm across and {2} mm down: for "
             "that printer alone.",
             {format_short(correction.bar_across_mm, 2), format_short(correction.bar_down_mm, 2)});
}

/// A line between two ticks, whose middles are the bar's ends.
void draw_bar(Page& page, Point a, Point b) {
  constexpr double tick_mm = 2;
  const Point across = a.y == b.y ? Point{0, tick_mm} : Point{tick_mm, 0};
  for (const auto& [from, to] :
       {std::pair{a, b}, std::pair{a - across, a + across}, std::pair{b - across, b + across}}) {
    page.line({from, to}, LayerKind::check_bar);
  }
}

void check_one(double mm) {
  if (mm >= least_bar_mm && mm <= longest_bar_mm) return;
  throw std::invalid_argument(say("a check bar must measure {1} to {2} mm",
                                  {format_short(least_bar_mm), format_short(longest_bar_mm)}));
}

}  // namespace

void check(const PrinterCorrection& correction) {
  check_one(correction.bar_across_mm);
  check_one(correction.bar_down_mm);
}

Box draw_check_bars(Page& page, Box room, const PrinterCorrection& correction) {
  const std::string words = say(what_to_do) + in_words(correction);
  double y = room.high.y - paragraph_height(room.width(), words);
  page.paragraph({room.low.x, y}, room.width(), words);
  y -= 3;
  const double right = room.low.x + correction.width_on_page(check_bar_mm);
  draw_bar(page, {room.low.x, y}, {right, y});
  page.text({right + 3, y + 1}, "100 mm");
  const double x = room.high.x - 2.5;
  const double foot = room.low.y + correction.height_on_page(check_bar_mm);
  draw_bar(page, {x, room.low.y}, {x, foot});
  page.text({room.high.x, foot + 1.6 * page_text_mm}, "100 mm", {.anchor = Label::Anchor::end});
  return {room.low, {room.high.x - column_mm, y - 4}};
}

}  // namespace drapewright::report
