#include "core/report/text_summary.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <sstream>
#include <string_view>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/clock.h"
#include "core/geometry/measures.h"
#include "core/report/cut_words.h"
#include "core/report/plan_words.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {
namespace {

constexpr std::size_t line_width = 80;

std::size_t characters_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

std::string left(std::string text, std::size_t width) {
  const std::size_t used = characters_of(text);
  return text + std::string(used < width ? width - used : 0, ' ');
}
std::string right(const std::string& text, std::size_t width) {
  const std::size_t used = characters_of(text);
  return std::string(used < width ? width - used : 0, ' ') + text;
}

class Summary {
 public:
  explicit Summary(const dressing::Plan& plan) : plan_(plan) {}

  std::string write() {
    write_head();
    write_findings();
    for (const auto& wound : plan_.wounds) write_measures(wound);
    write_fill();
    write_cut();
    for (const auto& drape : plan_.drapes) write_drape(drape);
    write_materials();
    return out_;
  }

 private:
  void line(const std::string& text = {}) {
    std::string trimmed = text;
    for (auto at = trimmed.find(glue); at != std::string::npos; at = trimmed.find(glue, at)) {
      trimmed.replace(at, glue.size(), " ");
    }
    trimmed.erase(trimmed.find_last_not_of(' ') + 1);
    out_ += trimmed + "\n";
  }

  /// Words after `lead`, further lines indented by as much.
  void paragraph(const std::string& lead, const std::string& text) {
    const std::size_t indent = characters_of(lead);
    std::string current = lead;
    bool empty = true;
    std::istringstream words(text);
    for (std::string word; words >> word;) {
      if (!empty && characters_of(current) + 1 + characters_of(word) > line_width) {
        line(current);
        current = std::string(indent, ' ');
        empty = true;
      }
      current += (empty ? "" : " ") + word;
      empty = false;
    }
    line(current);
  }

  void heading(const std::string& text) {
    line();
    line(text);
    line(std::string(std::min(characters_of(text), line_width), '-'));
  }

  void row(const std::string& name, const std::string& value) {
    paragraph("  " + left(name, 17) + " ", value);
  }

  void write_head() {
    const std::string title = say("Plan for {1}, assessed on {2}", {plan_.label, plan_.date});
    paragraph("", title);
    line(std::string(std::min(characters_of(title), line_width), '='));
    paragraph("", say("A planning aid: the prescriber, local policy and the device's instructions "
                      "decide."));
    paragraph("", say("Figures with +/- allow for an edge drawn up to {1} mm off.",
                      {format_short(10 * plan_.tracing_error_cm, 2)}));
  }

  int count(dressing::Severity severity) const {
    return static_cast<int>(
        std::ranges::count(plan_.findings, severity, &dressing::Finding::severity));
  }

  void write_findings() {
    if (plan_.findings.empty()) {
      heading(say("Findings: none"));
      return;
    }
    heading(say("Findings: {1}, {2}, {3}",
                {count_of(count(dressing::Severity::stop), "stop", "stops"),
                 count_of(count(dressing::Severity::warning), "warning", "warnings"),
                 count_of(count(dressing::Severity::note), "note", "notes")}));
    for (const auto& finding : plan_.findings) write_finding(finding);
  }

  void write_finding(const dressing::Finding& finding) {
    const bool several = plan_.wounds.size() > 1 && !finding.wound.empty();
    const std::size_t name_width = severity_width();
    paragraph("  " + left(upper(say(dressing::name_of(finding.severity))), name_width),
              several ? say("Wound {1}: {2}", {finding.wound, finding.text}) : finding.text);
    std::string rest = finding.code;
    if (finding.where_cm) rest += "; " + say("at {1}", {in_words(*finding.where_cm)});
    if (!finding.source.empty()) rest += "; " + finding.source;
    paragraph(std::string(2 + name_width, ' '), "[" + rest + "]");
  }

  static std::size_t severity_width() {
    std::size_t widest = 0;
    for (const auto severity :
         {dressing::Severity::stop, dressing::Severity::warning, dressing::Severity::note}) {
      widest = std::max(widest, characters_of(say(dressing::name_of(severity))));
    }
    return widest + 2;
  }

  void write_measures(const dressing::WoundMeasures& wound) {
    heading(say("Wound {1}", {wound.id}));
    row(say("Area"), in_words(wound.area, "cm2"));
    row(say("All edges"), one_decimal(wound.perimeter.value) + " cm");
    row(say("Length"),
        in_words(wound.length, "cm") + ", " + along_clock(wound.length_direction_deg, plan_));
    row(say("Width"), say("{1}, at right angles to it", {in_words(wound.width, "cm")}));
    const bool on_foot = plan_.twelve == practice::Twelve::heel;
    row(on_foot ? say("Heel to toes") : say("Head to foot"), in_words(wound.head_to_foot, "cm"));
    row(say("Side to side"), in_words(wound.side_to_side, "cm"));
    row(say("By ruler"),
        say("length x width {1} cm2, as an ellipse {2} cm2",
            {one_decimal(wound.rectangle_area_cm2), one_decimal(wound.ellipse_area_cm2)}));
    write_volumes(wound);
  }

  void write_volumes(const dressing::WoundMeasures& wound) {
    if (wound.volume.value > 0) {
      row(say("Volume"), say("{1}; by ruler (Kundin) {2}",
                             {in_words(wound.volume, "cm3"),
                              glued(one_decimal(wound.kundin_volume_cm3) + " cm3")}));
    }
    if (wound.pocket_volume_cm3 > 0) {
      row(say("Pockets"), say("{1} more, undermined: as high as the lowest layer",
                              {glued(one_decimal(wound.pocket_volume_cm3) + " cm3")}));
    }
  }

  void write_fill() {
    heading(count_of(plan_.fill.piece_count, "Filler: {1} piece to put in, and to count out again",
                     "Filler: {1} pieces to put in, and to count out again"));
    write_count();
    if (!plan_.fill.layers.empty()) {
      line(say("  Wound            Layer   Depth, cm  Sheet, cm  Inset, cm  Pieces  Area, cm2"));
    }
    for (const auto& layer : plan_.fill.layers) write_layer(layer);
    for (const auto& layer : plan_.fill.layers) {
      if (layer.reaches_into_pockets) {
        row(say("Undermined"),
            say("wound {1}: layer {2} reaches under the edge", {layer.wound, layer.index}));
      }
    }
    if (plan_.fill.area_cm2 > 0) {
      row(say("Layers, all"), glued(one_decimal(plan_.fill.area_cm2) + " cm2") + ", " +
                                  glued(one_decimal(plan_.fill.volume_cm3) + " cm3"));
    }
    for (const auto& strip : plan_.fill.strips) write_strip(strip);
    if (plan_.fill.unfilled_cm2 > 0) {
      row(say("Without filler"),
          say("{1} of the wound lie farther from the top filler than the inset",
              {glued(one_decimal(plan_.fill.unfilled_cm2) + " cm2")}));
    }
  }

  /// "2 strips"; "2 strips in 3 parts" where any was cut apart.
  static std::string in_parts(int parts, std::size_t whole, std::string_view one,
                              std::string_view many) {
    const int count = static_cast<int>(whole);
    const std::string counted = count_of(count, one, many);
    if (parts <= count) return counted;
    return say("{1} in {2}", {counted, count_of(parts, "part", "parts")});
  }

  /// What the count is made of, where it is not of layers alone.
  void write_count() {
    int bridge_count = 0, strip_count = 0;
    std::size_t bridges = 0;
    for (const auto& drape : plan_.drapes) {
      bridges += drape.bridges.size();
      for (const auto& bridge : drape.bridges) {
        bridge_count += static_cast<int>(bridge.strip.size());
      }
    }
    for (const auto& strip : plan_.fill.strips) strip_count += strip.parts;
    if (strip_count + bridge_count == 0) return;
    std::vector<std::string> parts;
    const int in_layers = plan_.fill.piece_count - strip_count - bridge_count;
    if (in_layers > 0) parts.push_back(say("{1} in layers", {in_layers}));
    if (strip_count > 0)
      parts.push_back(in_parts(strip_count, plan_.fill.strips.size(), "strip", "strips"));
    if (bridge_count > 0) parts.push_back(in_parts(bridge_count, bridges, "bridge", "bridges"));
    row(say("Count"), joined(parts));
  }

  void write_strip(const dressing::TunnelStrip& strip) {
    const std::vector<Insert> inserts{strip.wound, format_short(strip.clock, 2),
                                      glued(one_decimal(strip.length_cm) + " cm"),
                                      glued(format_short(strip.width_cm, 2) + " cm")};
    std::string text = say(
        "wound {1}, tunnel at {2} o'clock: {3} long, {4} wide; its tail stays in reach", inserts);
    if (strip.parts > 1)
      text += "; " + count_of(strip.parts, "cut in {1} part", "cut in {1} parts");
    row(say("Strip"), text);
  }

  /// Which sheets to open for one application, and what else could be.
  void write_cut() {
    if (plan_.sheet_comparison.empty()) return;
    heading(say("Filler sheets to open, for one application"));
    for (std::size_t i = 0; i < plan_.cut_layout.size(); ++i) {
      const auto& sheet = plan_.cut_layout[i];
      const std::string left_over =
          sheet.off_cut ? "; " + say("leaves {1}", {glued(off_cut_in_words(*sheet.off_cut))}) : "";
      row(say("Sheet {1}", {i + 1}), supplies::shown_name(sheet.item) + ": " +
                                         pieces_in_words(sheet, plan_.wounds.size() > 1) +
                                         left_over);
    }
    for (const auto& comparison : plan_.sheet_comparison) write_choices(comparison);
    for (std::size_t i = 0; i < plan_.film_layout.size(); ++i) {
      const auto& sheet = plan_.film_layout[i];
      row(say("Shared film {1}", {i + 1}), supplies::shown_name(sheet.item) + ": " +
                                               pieces_in_words(sheet, plan_.wounds.size() > 1));
    }
    paragraph("  ", say(cost_advice));
    paragraph("  ", say(off_cut_advice));
  }

  void write_choices(const dressing::SheetComparison& comparison) {
    line();
    write_choice(say("{1} cm thick", {format_short(comparison.thickness_cm, 2)}), choice_titles());
    for (const auto& choice : comparison.choices) {
      const ChoiceCells cells = cells_of(choice);
      write_choice((choice.chosen ? "> " : "  ") + cells[0], cells);
      const bool mixed = choice.items.size() > 1;
      paragraph("      ", (mixed ? opened_in_words(choice) + "; " : "") + off_cut_or_none(choice) +
                              "; " + cells[7]);
    }
    if (comparison.choices.empty()) line("  " + say("nothing in stock"));
  }

  void write_choice(const std::string& name, const ChoiceCells& cells) {
    constexpr std::array<std::size_t, 5> least{7, 8, 7, 8, 7};
    const ChoiceCells titles = choice_titles();
    std::string text = "  " + left(name, 40);
    for (std::size_t i = 0; i < least.size(); ++i) {
      text += right(cells[i + 1], std::max(least[i], characters_of(titles[i + 1]) + 1));
    }
    line(text);
  }

  void write_layer(const dressing::Layer& layer) {
    double area_cm2 = 0;
    for (const auto& piece : layer.pieces) area_cm2 += geometry::area(piece);
    line("  " + left(layer.wound, 16) + right(std::to_string(layer.index), 6) +
         right(say("{1} to {2}",
                   {one_decimal(layer.top_cm), one_decimal(layer.top_cm + layer.thickness_cm)}),
               12) +
         right(format_short(layer.sheet_thickness_cm, 2), 11) +
         right(format_number(layer.inset_cm, 2), 11) +
         right(std::to_string(layer.pieces.size()), 8) + right(one_decimal(area_cm2), 11));
  }

  void write_drape(const dressing::Drape& drape) {
    heading(drape.wounds.size() > 1 ? say("Film over wounds {1}", {joined(drape.wounds)})
                                    : say("Film over wound {1}", {joined(drape.wounds)}));
    row(say("Area"), say("{1} cm2, within {2} x {3} cm",
                         {one_decimal(drape.area_cm2), one_decimal(drape.rectangle.length_cm),
                          one_decimal(drape.rectangle.width_cm)}));
    row(say("Least border"), say("{1}; asked for {2} cm", {in_words(drape.least_border, "cm"),
                                                           format_short(plan_.border_cm, 2)}));
    write_clock(drape);
    write_sheets(drape);
    write_bridges(drape);
    write_port(drape.port);
  }

  void write_bridges(const dressing::Drape& drape) {
    for (const auto& bridge : drape.bridges) {
      const bool to_port = drape.port.on_bridge && &bridge == &drape.bridges.back();
      std::string text = to_port ? port_bridge_in_words(bridge) : joining_bridge_in_words(bridge);
      if (bridge.crosses_no_port) text += "; " + say("it crosses a zone that takes no port");
      row(to_port ? say("Bridge to port") : say("Bridge, joining"), text);
    }
    write_protection(drape);
  }

  /// {5} is a blank at which the line is not broken.
  static std::string port_bridge_in_words(const dressing::Bridge& bridge) {
    return say("{1} long, {2} wide, pad {3}{5}across,{5}from {4} to the port",
               {glued(one_decimal(bridge.length_cm) + " cm"),
                glued(format_short(bridge.width_cm, 2) + " cm"),
                glued(format_short(bridge.pad_diameter_cm, 2) + " cm"),
                in_words(bridge.line.front()), glue});
  }

  static std::string joining_bridge_in_words(const dressing::Bridge& bridge) {
    return say("{1} long, {2} wide, from {3} to {4}",
               {glued(one_decimal(bridge.length_cm) + " cm"),
                glued(format_short(bridge.width_cm, 2) + " cm"), in_words(bridge.line.front()),
                in_words(bridge.line.back())});
  }

  void write_protection(const dressing::Drape& drape) {
    for (const auto& sheet : drape.protection_sheets) {
      const std::string name = supplies::shown_name(sheet.item);
      row(say("Under the bridge"),
          sheet.shared > 0
              ? say("{1}, shared film sheet {2}, cut to protect the skin", {name, sheet.shared})
              : say("{1}, cut to protect the skin", {name}));
    }
    const auto bare = std::ranges::count_if(
        drape.bridges, [](const auto& bridge) { return !bridge.skin_protection.empty(); });
    if (static_cast<std::size_t>(bare) > drape.protection_sheets.size()) {
      row(say("Under the bridge"), say("film: the stock has not enough, see the findings"));
    }
  }

  void write_sheets(const dressing::Drape& drape) {
    if (drape.sheets.empty()) row(say("Sheet"), say("the stock has not enough: see the findings"));
    for (const auto& sheet : drape.sheets) {
      if (sheet.shared > 0) {
        row(say("Sheet"), say("{1}, shared film sheet {2}: see the cut layout",
                              {supplies::shown_name(sheet.item), sheet.shared}));
        continue;
      }
      const geometry::Point centre = sheet.place.centre;
      row(say("Sheet"),
          say("{1}, {2}, longer side {3}",
              {supplies::shown_name(sheet.item), glued(say("middle at {1}", {in_words(centre)})),
               along_clock(sheet.place.angle_deg, plan_)}));
    }
    if (drape.sheets.size() > 1) row(say("Seams"), say("look for leaks wherever sheets overlap"));
  }

  void write_clock(const dressing::Drape& drape) {
    std::string hours, borders;
    for (std::size_t i = 0; i < drape.border_by_clock_cm.size(); ++i) {
      hours += right(std::to_string(i + 1), 5);
      borders += right(one_decimal(drape.border_by_clock_cm[i]), 5);
    }
    const std::string hour = say("Hour (12 = {1})", {say(practice::name_of(plan_.twelve))});
    line("  " + left(hour, 16) + hours);
    line("  " + left(say("Border, cm"), 16) + borders);
    write_edge(drape);
  }

  /// The wounds' edge by the border left; said where any of it falls short or may do so.
  void write_edge(const dressing::Drape& drape) {
    const std::string enough = glued(format_short(drape.border_enough_cm, 2) + " cm");
    for (const auto& stretch : drape.border_stretches) {
      if (stretch.kind == dressing::BorderKind::enough) continue;
      const auto hour = [&](geometry::Point p) {
        return std::to_string(
            geometry::clock_sector(drape.centroid_cm, p, plan_.head_direction_deg));
      };
      // Along the line the wound is on the left: the outer edge is walked against the clock.
      const std::vector<Insert> inserts{glued(one_decimal(stretch.length_cm) + " cm"),
                                        hour(stretch.line.back()), hour(stretch.line.front()),
                                        enough, in_words(stretch.least, "cm")};
      row(say("Edge"), edge_in_words(stretch.kind, inserts));
    }
  }

  static std::string edge_in_words(dressing::BorderKind kind, const std::vector<Insert>& inserts) {
    if (kind == dressing::BorderKind::none) {
      return say("{1}, {2} to {3} o'clock: no border", inserts);
    }
    return kind == dressing::BorderKind::too_short
               ? say("{1}, {2} to {3} o'clock: under {4}; least {5}", inserts)
               : say("{1}, {2} to {3} o'clock: may be under {4}; least {5}", inserts);
  }

  void write_port(const dressing::Port& port) {
    if (!port.centre_cm) {
      row(say("Port"), say("there is no filler that it may sit on: see the findings"));
      return;
    }
    std::string place = say("centre at {1}", {in_words(*port.centre_cm)});
    if (port.on_bridge) place += ", " + say("beside the wound, on the bridge's pad");
    if (port.chosen) place += ", " + say("a place chosen by hand");
    row(say("Port"), place);
    const std::vector<Insert> inserts{format_short(port.aperture_diameter_cm, 2),
                                      format_short(port.aperture_limit_cm, 2),
                                      in_words(port.room, "cm")};
    row(say("Aperture"),
        port.fits
            ? say("{1} cm across (usual limit {2} cm); room at the port {3}: it fits", inserts)
            : say("{1} cm across (usual limit {2} cm); room at the port {3}: it does NOT fit",
                  inserts));
    if (port.room != port.largest_aperture && port.largest_aperture.value > 0) {
      row(say("Most room"),
          say("{1} on the filler in the wound", {in_words(port.largest_aperture, "cm")}));
    }
  }

  void write_materials() {
    heading(count_of(plan_.applications, "Materials: {1} application over the course",
                     "Materials: {1} applications over the course"));
    if (plan_.consumables.empty()) return;
    line(say("    Each  Course  Item"));
    for (const auto& item : plan_.consumables) {
      paragraph(right(format_short(item.per_application, 2), 8) +
                    right(format_short(item.per_course, 2), 8) + "  ",
                item.estimate ? say("{1} (estimate)", {supplies::shown_name(item.item)})
                              : supplies::shown_name(item.item));
      paragraph(std::string(20, ' '), item.basis);
    }
  }

  const dressing::Plan& plan_;
  std::string out_;
};

}  // namespace

std::string text_summary(const dressing::Plan& plan) { return Summary(plan).write(); }

}  // namespace drapewright::report
