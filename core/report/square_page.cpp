#include "core/report/square_page.h"

#include <string>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/page.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr double apart_mm = 12;
constexpr double above_label_mm = 5;

constexpr const char* how_to_use = term(
    "Measure the check bars and one square with a ruler before you use them. Cut a square out with "
    "a rim of paper round it, lay it flat beside the wound and as high as the wound's edge, and "
    "photograph both from straight above. In the program, click the four corners, on the middle of "
    "the line, and type the side. A square that is small beside the wound makes lengths far from "
    "it doubtful: take the largest that fits. Paper that touched a patient is used once.");

void draw_square(Page& page, Point at, double side_mm, const PrinterCorrection& printer) {
  const Point far = at + Point{printer.width_on_page(side_mm), printer.height_on_page(side_mm)};
  page.box(Box{at, far}, LayerKind::check_bar);
  page.text({at.x, far.y + above_label_mm}, format_short(side_mm / 10) + " cm");
}

void draw_squares(Page& page, Point at, const PrinterCorrection& printer) {
  const auto& [large, middle, small] = square_sides_mm;
  const double beside = at.x + printer.width_on_page(large) + apart_mm;
  draw_square(page, at, large, printer);
  draw_square(page, {beside, at.y}, middle, printer);
  draw_square(page, {beside, at.y + printer.height_on_page(middle) + apart_mm}, small, printer);
}

}  // namespace

Document square_page(const PageOptions& options, const PrinterCorrection& printer) {
  check(printer);
  Page page(size_of(options.paper));
  const std::string printed =
      options.today.empty() ? std::string() : say("printed {1}", {options.today});
  const Box frame_room = frame(page, {say("Squares for photographs, life size 1:1"), printed});
  const Box room = draw_check_bars(page, frame_room, printer);
  const double below = page.paragraph(room.low, room.width(), say(how_to_use));
  draw_squares(page, {room.low.x, below + apart_mm / 2}, printer);
  Document out{.title = say("Squares for photographs"), .date = options.today};
  out.pages.push_back(
      page.finish(out.title, say("Squares of 10, 5 and 2 cm to give a photograph its scale, and "
                                 "two check bars of 100 mm.")));
  number_pages(out);
  return out;
}

}  // namespace drapewright::report
