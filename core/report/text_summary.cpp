#include "core/report/text_summary.h"

#include <algorithm>
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
    paragraph("  " + left(name, 18), value);
  }

  void write_head() {
    const std::string title = "Plan for " + plan_.label + ", assessed on " + plan_.date;
    paragraph("", title);
    line(std::string(std::min(characters_of(title), line_width), '='));
    paragraph("",
              "A planning aid: the prescriber, local policy and the device's instructions decide.");
    paragraph("", "Figures with +/- allow for an edge drawn up to " +
                      format_short(10 * plan_.tracing_error_cm, 2) + " mm off.");
  }

  int count(dressing::Severity severity) const {
    return static_cast<int>(
        std::ranges::count(plan_.findings, severity, &dressing::Finding::severity));
  }

  void write_findings() {
    if (plan_.findings.empty()) {
      heading("Findings: none");
      return;
    }
    heading("Findings: " + count_of(count(dressing::Severity::stop), "stop", "stops") + ", " +
            count_of(count(dressing::Severity::warning), "warning", "warnings") + ", " +
            count_of(count(dressing::Severity::note), "note", "notes"));
    for (const auto& finding : plan_.findings) write_finding(finding);
  }

  void write_finding(const dressing::Finding& finding) {
    const bool several = plan_.wounds.size() > 1 && !finding.wound.empty();
    paragraph("  " + left(upper(say(dressing::name_of(finding.severity))), 9),
              (several ? "Wound " + finding.wound + ": " : "") + finding.text);
    std::string rest = finding.code;
    if (finding.where_cm) {
      rest += "; at " + in_words(*finding.where_cm);
    }
    if (!finding.source.empty()) rest += "; " + finding.source;
    paragraph("           ", "[" + rest + "]");
  }

  void write_measures(const dressing::WoundMeasures& wound) {
    heading("Wound " + wound.id);
    row("Area", in_words(wound.area, "cm2"));
    row("All edges", one_decimal(wound.perimeter.value) + " cm");
    row("Length",
        in_words(wound.length, "cm") + ", " + along_clock(wound.length_direction_deg, plan_));
    row("Width", in_words(wound.width, "cm") + ", at right angles to it");
    const bool on_foot = plan_.twelve == practice::Twelve::heel;
    row(on_foot ? "Heel to toes" : "Head to foot", in_words(wound.head_to_foot, "cm"));
    row("Side to side", in_words(wound.side_to_side, "cm"));
    row("By ruler", "length x width " + one_decimal(wound.rectangle_area_cm2) +
                        " cm2, as an ellipse " + one_decimal(wound.ellipse_area_cm2) + " cm2");
    write_volumes(wound);
  }

  void write_volumes(const dressing::WoundMeasures& wound) {
    if (wound.volume.value > 0) {
      row("Volume", in_words(wound.volume, "cm3") + "; by ruler (Kundin) " +
                        glued(one_decimal(wound.kundin_volume_cm3) + " cm3"));
    }
    if (wound.pocket_volume_cm3 > 0) {
      row("Pockets", glued(one_decimal(wound.pocket_volume_cm3) + " cm3") +
                         " more, undermined: as high as the lowest layer");
    }
  }

  void write_fill() {
    heading("Filler: " + count_of(plan_.fill.piece_count, "piece", "pieces") +
            " to put in, and to count out again");
    write_count();
    if (!plan_.fill.layers.empty()) {
      line("  Wound            Layer   Depth, cm  Sheet, cm  Inset, cm  Pieces  Area, cm2");
    }
    for (const auto& layer : plan_.fill.layers) write_layer(layer);
    for (const auto& layer : plan_.fill.layers) {
      if (layer.reaches_into_pockets) {
        row("Undermined", "wound " + layer.wound + ": layer " + std::to_string(layer.index) +
                              " reaches under the edge");
      }
    }
    if (plan_.fill.area_cm2 > 0) {
      row("Layers, all", glued(one_decimal(plan_.fill.area_cm2) + " cm2") + ", " +
                             glued(one_decimal(plan_.fill.volume_cm3) + " cm3"));
    }
    for (const auto& strip : plan_.fill.strips) write_strip(strip);
    if (plan_.fill.unfilled_cm2 > 0) {
      row("Without filler", glued(one_decimal(plan_.fill.unfilled_cm2) + " cm2") +
                                " of the wound lie farther from the top filler than the inset");
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
    if (in_layers > 0) parts.push_back(std::to_string(in_layers) + " in layers");
    if (strip_count > 0) parts.push_back(in_parts(strip_count, plan_.fill.strips.size(), "strip", "strips"));
    if (bridge_count > 0) parts.push_back(in_parts(bridge_count, bridges, "bridge", "bridges"));
    row("Count", joined(parts));
  }

  void write_strip(const dressing::TunnelStrip& strip) {
    row("Strip", "wound " + strip.wound + ", tunnel at " + format_short(strip.clock, 2) +
                     " o'clock: " + glued(one_decimal(strip.length_cm) + " cm") + " long, " +
                     glued(format_short(strip.width_cm, 2) + " cm") +
                     " wide; its tail stays in reach" +
                     (strip.parts > 1 ? "; cut in " + count_of(strip.parts, "part", "parts") : ""));
  }

  /// Which sheets to open for one application, and what else could be.
  void write_cut() {
    if (plan_.sheet_comparison.empty()) return;
    heading("Filler sheets to open, for one application");
    for (std::size_t i = 0; i < plan_.cut_layout.size(); ++i) {
      const auto& sheet = plan_.cut_layout[i];
      row("Sheet " + std::to_string(i + 1),
          supplies::shown_name(sheet.item) + ": " +
              pieces_in_words(sheet, plan_.wounds.size() > 1) +
              (sheet.off_cut ? "; leaves " + glued(off_cut_in_words(*sheet.off_cut)) : ""));
    }
    for (const auto& comparison : plan_.sheet_comparison) write_choices(comparison);
    for (std::size_t i = 0; i < plan_.film_layout.size(); ++i) {
      const auto& sheet = plan_.film_layout[i];
      row("Shared film " + std::to_string(i + 1),
          supplies::shown_name(sheet.item) + ": " +
              pieces_in_words(sheet, plan_.wounds.size() > 1));
    }
    paragraph("  ", std::string(cost_advice));
    paragraph("  ", std::string(off_cut_advice));
  }

  void write_choices(const dressing::SheetComparison& comparison) {
    line();
    write_choice(format_short(comparison.thickness_cm, 2) + " cm thick", choice_titles());
    for (const auto& choice : comparison.choices) {
      const ChoiceCells cells = cells_of(choice);
      write_choice((choice.chosen ? "> " : "  ") + cells[0], cells);
      const bool mixed = choice.items.size() > 1;
      paragraph("      ", (mixed ? opened_in_words(choice) + "; " : "") + off_cut_or_none(choice) +
                              "; " + cells[7]);
    }
    if (comparison.choices.empty()) line("  nothing in stock");
  }

  void write_choice(const std::string& name, const ChoiceCells& cells) {
    line("  " + left(name, 40) + right(cells[1], 7) + right(cells[2], 8) + right(cells[3], 7) +
         right(cells[4], 8) + right(cells[5], 7));
  }

  void write_layer(const dressing::Layer& layer) {
    double area_cm2 = 0;
    for (const auto& piece : layer.pieces) area_cm2 += geometry::area(piece);
    line("  " + left(layer.wound, 16) + right(std::to_string(layer.index), 6) +
         right(one_decimal(layer.top_cm) + " to " + one_decimal(layer.top_cm + layer.thickness_cm),
               12) +
         right(format_short(layer.sheet_thickness_cm, 2), 11) +
         right(format_number(layer.inset_cm, 2), 11) +
         right(std::to_string(layer.pieces.size()), 8) + right(one_decimal(area_cm2), 11));
  }

  void write_drape(const dressing::Drape& drape) {
    heading((drape.wounds.size() > 1 ? "Film over wounds " : "Film over wound ") +
            joined(drape.wounds));
    row("Area", one_decimal(drape.area_cm2) + " cm2, within " +
                    one_decimal(drape.rectangle.length_cm) + " x " +
                    one_decimal(drape.rectangle.width_cm) + " cm");
    row("Least border", in_words(drape.least_border, "cm") + "; asked for " +
                            format_short(plan_.border_cm, 2) + " cm");
    write_clock(drape);
    write_sheets(drape);
    write_bridges(drape);
    write_port(drape.port);
  }

  void write_bridges(const dressing::Drape& drape) {
    for (const auto& bridge : drape.bridges) {
      const bool to_port = drape.port.on_bridge && &bridge == &drape.bridges.back();
      std::string text = glued(one_decimal(bridge.length_cm) + " cm") + " long, " +
                         glued(format_short(bridge.width_cm, 2) + " cm") + " wide, ";
      if (to_port) text += "pad " + glued(format_short(bridge.pad_diameter_cm, 2) + " cm across, ");
      text += "from " + in_words(bridge.line.front()) + " to " +
              (to_port ? "the port" : in_words(bridge.line.back()));
      if (bridge.crosses_no_port) text += "; it crosses a zone that takes no port";
      row(to_port ? "Bridge to port" : "Bridge, joining", text);
    }
    write_protection(drape);
  }

  void write_protection(const dressing::Drape& drape) {
    for (const auto& sheet : drape.protection_sheets) {
      row("Under the bridge",
          supplies::shown_name(sheet.item) +
              (sheet.shared > 0 ? ", shared film sheet " + std::to_string(sheet.shared)
                                : std::string()) +
              ", cut to protect the skin");
    }
    const auto bare = std::ranges::count_if(
        drape.bridges, [](const auto& bridge) { return !bridge.skin_protection.empty(); });
    if (static_cast<std::size_t>(bare) > drape.protection_sheets.size()) {
      row("Under the bridge", "film: the stock has not enough, see the findings");
    }
  }

  void write_sheets(const dressing::Drape& drape) {
    if (drape.sheets.empty()) row("Sheet", "the stock has not enough: see the findings");
    for (const auto& sheet : drape.sheets) {
      if (sheet.shared > 0) {
        row("Sheet", supplies::shown_name(sheet.item) + ", shared film sheet " +
                         std::to_string(sheet.shared) + ": see the cut layout");
        continue;
      }
      const geometry::Point centre = sheet.place.centre;
      row("Sheet", supplies::shown_name(sheet.item) + ", " +
                       glued("middle at " + in_words(centre)) + ", longer side " +
                       along_clock(sheet.place.angle_deg, plan_));
    }
    if (drape.sheets.size() > 1) row("Seams", "look for leaks wherever sheets overlap");
  }

  void write_clock(const dressing::Drape& drape) {
    std::string hours, borders;
    for (std::size_t i = 0; i < drape.border_by_clock_cm.size(); ++i) {
      hours += right(std::to_string(i + 1), 5);
      borders += right(one_decimal(drape.border_by_clock_cm[i]), 5);
    }
    line("  " + left("Hour (12 = " + say(practice::name_of(plan_.twelve)) + ")", 16) +
         hours);
    line("  " + left("Border, cm", 16) + borders);
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
      const bool none = stretch.kind == dressing::BorderKind::none;
      const std::string kind = none ? "no border"
                               : stretch.kind == dressing::BorderKind::too_short
                                   ? "under " + enough
                                   : "may be under " + enough;
      // Along the line the wound is on the left: the outer edge is walked against the clock.
      row("Edge", glued(one_decimal(stretch.length_cm) + " cm") + ", " + hour(stretch.line.back()) +
                      " to " + hour(stretch.line.front()) + " o'clock: " + kind +
                      (none ? "" : "; least " + in_words(stretch.least, "cm")));
    }
  }

  void write_port(const dressing::Port& port) {
    if (!port.centre_cm) {
      row("Port", "there is no filler that it may sit on: see the findings");
      return;
    }
    row("Port", "centre at " + in_words(*port.centre_cm) +
                    (port.on_bridge ? ", beside the wound, on the bridge's pad" : "") +
                    (port.chosen ? ", a place chosen by hand" : ""));
    row("Aperture", format_short(port.aperture_diameter_cm, 2) + " cm across (usual limit " +
                        format_short(port.aperture_limit_cm, 2) + " cm); room at the port " +
                        in_words(port.room, "cm") + ": it " +
                        (port.fits ? "fits" : "does NOT fit"));
    if (port.room != port.largest_aperture && port.largest_aperture.value > 0) {
      row("Most room", in_words(port.largest_aperture, "cm") + " on the filler in the wound");
    }
  }

  void write_materials() {
    heading("Materials: " + count_of(plan_.applications, "application", "applications") + " over the course");
    if (plan_.consumables.empty()) return;
    line("    Each  Course  Item");
    for (const auto& item : plan_.consumables) {
      paragraph(right(format_short(item.per_application, 2), 8) +
                    right(format_short(item.per_course, 2), 8) + "  ",
                supplies::shown_name(item.item) + (item.estimate ? " (estimate)" : ""));
      paragraph(std::string(20, ' '), item.basis);
    }
  }

  const dressing::Plan& plan_;
  std::string out_;
};

}  // namespace

std::string text_summary(const dressing::Plan& plan) { return Summary(plan).write(); }

}  // namespace drapewright::report
