#include <algorithm>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/sketch.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {

namespace {

std::string join(const std::vector<std::string>& parts, const std::string& between) {
  std::string joined;
  for (const std::string& part : parts) joined += (joined.empty() ? "" : between) + part;
  return joined;
}

std::string describe_wound(const dressing::WoundMeasures& wound) {
  return "Wound " + wound.id + " is " + format_number(wound.length.value, 1) + " cm long and " +
         format_number(wound.width.value, 1) + " cm wide, " + format_number(wound.area.value, 1) +
         " cm\u00b2.";
}

std::string describe_port(const dressing::Port& port) {
  if (!port.centre_cm) return "No place for the port.";
  const std::string place = "at x " + format_number(port.centre_cm->x, 1) + ", y " +
                            format_number(port.centre_cm->y, 1) + " cm";
  return port.fits ? "The aperture fits " + place + "."
                   : "The aperture does not fit; the widest filler lies " + place + ".";
}

std::string describe_bridges(const dressing::Drape& drape) {
  std::vector<std::string> lengths;
  for (const dressing::Bridge& bridge : drape.bridges) {
    lengths.push_back(format_number(bridge.length_cm, 1) + " cm");
  }
  if (lengths.empty()) return "";
  return count_of(static_cast<int>(lengths.size()), "bridge", "bridges") + " of filler over skin, " +
         join(lengths, " and ") + " long" + (drape.port.on_bridge ? ", the last to the port" : "") +
         ". ";
}

std::string describe_drape(const dressing::Drape& drape) {
  std::vector<std::string> items;
  for (const dressing::FilmSheet& sheet : drape.sheets)
    items.push_back(supplies::shown_name(sheet.item));
  return "Film over " + join(drape.wounds, ", ") + ": least border " +
         border_in_words(drape.least_border.value) + ", " +
         (items.empty() ? "no single sheet holds it" : "from " + join(items, ", ")) + ". " +
         describe_bridges(drape) + describe_port(drape.port);
}

}  // namespace

std::string describe_drawing(const wound::Case& value, const dressing::Plan* plan) {
  std::vector<std::string> sentences;
  if (!plan) {
    const auto count = static_cast<int>(value.current().wounds.size());
    sentences.push_back("Outlines of " + count_of(count, "wound", "wounds") + ", not planned yet.");
    return join(sentences, " ");
  }
  sentences.push_back("Dressing plan on a centimetre grid.");
  for (const dressing::WoundMeasures& wound : plan->wounds) {
    sentences.push_back(describe_wound(wound));
  }
  sentences.push_back(count_of(plan->fill.piece_count, "piece", "pieces") + " of filler.");
  for (const dressing::Drape& drape : plan->drapes) sentences.push_back(describe_drape(drape));
  return join(sentences, " ");
}

}  // namespace drapewright::report
