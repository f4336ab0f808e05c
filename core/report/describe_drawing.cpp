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
  return say("Wound {1} is {2} cm long and {3} cm wide, {4}.",
             {wound.id, format_number(wound.length.value, 1), format_number(wound.width.value, 1),
              format_number(wound.area.value, 1) + " cm\u00b2"});
}

std::string describe_port(const dressing::Port& port) {
  if (!port.centre_cm) return say("No place for the port.");
  const std::vector<Insert> place{format_number(port.centre_cm->x, 1),
                                  format_number(port.centre_cm->y, 1)};
  return port.fits
             ? say("The aperture fits at x {1}, y {2} cm.", place)
             : say("The aperture does not fit; the widest filler lies at x {1}, y {2} cm.", place);
}

std::string describe_bridges(const dressing::Drape& drape) {
  std::vector<std::string> lengths;
  for (const dressing::Bridge& bridge : drape.bridges) {
    lengths.push_back(format_number(bridge.length_cm, 1) + " cm");
  }
  if (lengths.empty()) return "";
  std::string all = lengths.front();
  for (std::size_t i = 1; i < lengths.size(); ++i) all = say("{1} and {2}", {all, lengths[i]});
  const auto count = static_cast<int>(lengths.size());
  return (drape.port.on_bridge
              ? count_of(count, "{1} bridge of filler over skin, {2} long, the last to the port.",
                         "{1} bridges of filler over skin, {2} long, the last to the port.", {all})
              : count_of(count, "{1} bridge of filler over skin, {2} long.",
                         "{1} bridges of filler over skin, {2} long.", {all})) +
         " ";
}

std::string describe_drape(const dressing::Drape& drape) {
  std::vector<std::string> items;
  for (const dressing::FilmSheet& sheet : drape.sheets)
    items.push_back(supplies::shown_name(sheet.item));
  const std::vector<Insert> inserts{join(drape.wounds, ", "),
                                    border_in_words(drape.least_border.value), join(items, ", ")};
  return (items.empty() ? say("Film over {1}: least border {2}, no single sheet holds it.", inserts)
                        : say("Film over {1}: least border {2}, from {3}.", inserts)) +
         " " + describe_bridges(drape) + describe_port(drape.port);
}

}  // namespace

std::string describe_drawing(const wound::Case& value, const dressing::Plan* plan) {
  if (!plan) {
    const auto count = static_cast<int>(value.current().wounds.size());
    return count_of(count, "Outlines of {1} wound, not planned yet.",
                    "Outlines of {1} wounds, not planned yet.");
  }
  std::vector<std::string> sentences{say("Dressing plan on a centimetre grid.")};
  for (const dressing::WoundMeasures& wound : plan->wounds) {
    sentences.push_back(describe_wound(wound));
  }
  sentences.push_back(
      count_of(plan->fill.piece_count, "{1} piece of filler.", "{1} pieces of filler."));
  for (const dressing::Drape& drape : plan->drapes) sentences.push_back(describe_drape(drape));
  return join(sentences, " ");
}

}  // namespace drapewright::report
