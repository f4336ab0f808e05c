#include "core/report/plan_page.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/clock.h"
#include "core/practice/cautions.h"
#include "core/report/column_flow.h"
#include "core/report/cut_words.h"
#include "core/report/plan_words.h"
#include "core/report/section_drawing.h"
#include "core/report/text_size.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {

using dressing::Plan;
using dressing::Severity;
using geometry::Point;

namespace {

/// Heights of the room for the drawing that are tried.
constexpr std::array drawing_rooms_mm{95.0, 108.0, 118.0, 130.0, 145.0, 160.0, 180.0};
/// Of the largest scale that a page allows; a drawing below it is not taken to save a page.
constexpr double least_share = 0.65;

/// A port nearer to the wounds' middle than this is said to sit over it.
constexpr double at_the_middle_cm = 0.5;

constexpr const char* who_decides = term(
    "This plan was worked out from a drawn outline. It looks at nothing but what was drawn and "
    "typed. Whoever applies the dressing looks at the wound again; the prescriber, local policy "
    "and the device's instructions decide.");

/// Nothing where the room is too small for it.
std::optional<Drawing> drawing_within(const wound::Case& value, const Plan& plan,
                                      DrawingSize room) {
  try {
    return draw_plan(
        value, plan,
        {.room_mm = room, .text_mm = page_text_mm, .headed = false, .smallest_text = 1});
  } catch (const std::invalid_argument&) {
    return std::nullopt;
  }
}

class PlanPages {
 public:
  PlanPages(const wound::Case& value, const Plan& plan, const dressing::Section& section,
            const PageOptions& options)
      : value_(value), plan_(plan), section_(section), options_(options) {}

  Document laid_out(const Drawing& drawing) {
    Document document{.title = say("Plan sheet: {1}, {2}", {plan_.label, plan_.date}),
                      .date = options_.today};
    flow_.emplace(
        document, options_.paper,
        PageHeading{say("Plan sheet"), case_line(plan_.label, plan_.date, options_.today)}, 2);
    add_stops();
    add_drawings(drawing);
    for (const auto& wound : plan_.wounds) add_wound(wound);
    add_filler();
    for (const auto& drape : plan_.drapes) add_drape(drape);
    add_therapy();
    add_materials();
    add_findings();
    add_cautions();
    add_signatures();
    flow_->finish();
    number_pages(document);
    return document;
  }

 private:
  /// Before anything else: in a frame across the page.
  void add_stops() {
    for (const auto& finding : plan_.findings) {
      if (finding.severity != Severity::stop) continue;
      flow_->framed(say("STOP. {1}", {of_wound(finding)}));
    }
  }

  void add_drawings(const Drawing& drawing) {
    const auto put = [&](const Drawing& part) {
      flow_->across(part.height_mm, [&](Page& page, Point at) { page.insert(part, at); });
    };
    put(drawing);
    if (!(section_.length_cm > 0)) return;
    const Drawing section = section_at(10 * drawing.scale);
    flow_->across(line_pitch * page_text_mm, [&](Page& page, Point at) {
      page.text({at.x + 4, at.y + page_text_mm},
                say("Section A to B, scale {1}", {scale_in_words(10 * section.scale)}),
                {.bold = true});
    });
    put(section);
  }

  /// At the drawing's scale, or the nearest smaller one at which it is no wider than the page.
  Drawing section_at(double mm_per_cm) const {
    const auto drawn = [&](double scale) {
      return draw_section(
          section_, {}, value_.dressing.border_cm,
          {.drawing = {.text_mm = page_text_mm, .mm_per_cm = scale, .headed = false},
           .explained = false});
    };
    for (const double reduction : round_reductions()) {
      if (10 / reduction > mm_per_cm + 1e-9) continue;
      Drawing section = drawn(10 / reduction);
      if (section.width_mm <= flow_->page_width()) return section;
    }
    return drawn(10 / round_reductions().back());
  }

  /// Its text, with the wound that it is about where there are several.
  std::string of_wound(const dressing::Finding& finding) const {
    if (plan_.wounds.size() < 2 || finding.wound.empty()) return finding.text;
    return say("Wound {1}: {2}", {finding.wound, finding.text});
  }

  void add_wound(const dressing::WoundMeasures& wound) {
    flow_->heading(say("Wound {1}", {wound.id}));
    flow_->row(say("Area"),
               say("{1}, edges {2}", {in_words(wound.area, "cm2"),
                                      glued(one_decimal(wound.perimeter.value) + " cm")}));
    flow_->row(say("Length"), in_words(wound.length, "cm") + ", " +
                                  along_clock(wound.length_direction_deg, plan_));
    flow_->row(say("Width"), say("{1}, at right angles", {in_words(wound.width, "cm")}));
    const bool on_foot = plan_.twelve == practice::Twelve::heel;
    flow_->row(on_foot ? say("Heel to toes") : say("Head to foot"),
               say("{1}, side to side {2}",
                   {in_words(wound.head_to_foot, "cm"), in_words(wound.side_to_side, "cm")}));
    add_depth(wound);
    flow_->keep();
  }

  void add_depth(const dressing::WoundMeasures& measures) {
    const auto& wounds = value_.current().wounds;
    const auto seen = std::ranges::find(wounds, measures.id, &wound::Wound::id);
    if (seen == wounds.end()) return;
    std::string words = seen->depth_cm > 0 ? glued(format_short(seen->depth_cm, 2) + " cm")
                                           : say("not measured, or not deep");
    if (measures.volume.value > 0) {
      words = say("{1}, volume {2}", {words, in_words(measures.volume, "cm3")});
    }
    flow_->row(say("Depth"), words);
    for (const auto& pocket : seen->undermining) {
      flow_->row(say("Undermined"),
                 say("{1} to {2} o'clock, {3}",
                     {format_short(pocket.from_clock, 2), format_short(pocket.to_clock, 2),
                      glued(format_short(pocket.extent_cm, 2) + " cm")}));
    }
    for (const auto& tunnel : seen->tunnels) {
      const std::vector<Insert> inserts{format_short(tunnel.clock, 2),
                                        glued(format_short(tunnel.length_cm, 2) + " cm")};
      flow_->row(say("Tunnel"), tunnel.explored ? say("{1} o'clock, {2}, explored", inserts)
                                                : say("{1} o'clock, {2}, NOT explored", inserts));
    }
  }

  void add_filler() {
    flow_->heading(count_of(plan_.fill.piece_count, "Filler: {1} piece", "Filler: {1} pieces"));
    flow_->row(say("Count"), say("in {1}, written on the dressing; the same number must come out",
                                 {plan_.fill.piece_count}));
    for (const auto& layer : plan_.fill.layers) add_layer(layer);
    for (const auto& strip : plan_.fill.strips) {
      flow_->row(say("Strip"), say("tunnel at {1} o'clock, {2}",
                                   {format_short(strip.clock, 2),
                                    glued(one_decimal(strip.length_cm) + " x " +
                                          format_short(strip.width_cm, 2) + " cm")}));
    }
    for (const auto& sheets : plan_.sheet_comparison) {
      for (const auto& choice : sheets.choices) {
        if (choice.chosen) flow_->row(say("To open"), opened_in_words(choice));
      }
    }
    flow_->keep();
  }

  void add_layer(const dressing::Layer& layer) {
    const std::string depth =
        glued(say("{1} to {2} cm",
                  {one_decimal(layer.top_cm), one_decimal(layer.top_cm + layer.thickness_cm)}));
    flow_->row(plan_.wounds.size() > 1 ? say("{1}, layer {2}", {layer.wound, layer.index})
                                       : say("Layer {1}", {layer.index}),
               count_of(static_cast<int>(layer.pieces.size()), "{1} piece, depth {2}, sheet {3}",
                        "{1} pieces, depth {2}, sheet {3}",
                        {depth, glued(format_short(layer.sheet_thickness_cm, 2) + " cm")}));
  }

  void add_drape(const dressing::Drape& drape) {
    flow_->heading(plan_.drapes.size() > 1 ? say("Film over {1}", {joined(drape.wounds)})
                                           : say("Film"));
    flow_->row(say("Outline"),
               say("{1}, within {2}", {glued(one_decimal(drape.area_cm2) + " cm2"),
                                       glued(one_decimal(drape.rectangle.length_cm) + " x " +
                                             one_decimal(drape.rectangle.width_cm) + " cm")}));
    std::vector<std::string> items;
    for (const auto& sheet : drape.sheets) items.push_back(supplies::shown_name(sheet.item));
    flow_->row(say("Sheets"),
               items.empty() ? say("the stock has not enough: see the findings") : joined(items));
    flow_->row(say("Border"),
               say("asked for {1}, least {2}", {glued(format_short(plan_.border_cm, 2) + " cm"),
                                                in_words(drape.least_border, "cm")}));
    add_clock(drape);
    for (const auto& bridge : drape.bridges) {
      flow_->row(say("Bridge"), say("{1} over film that protects the skin",
                                    {glued(one_decimal(bridge.length_cm) + " x " +
                                           format_short(bridge.width_cm, 2) + " cm")}));
    }
    add_port(drape);
    flow_->keep();
  }

  /// Twelve borders under their hours, in two rows.
  void add_clock(const dressing::Drape& drape) {
    constexpr double first_mm = 33, step_mm = 9.5;
    for (const int start : {0, 6}) {
      std::vector<ColumnFlow::Cell> hours{{0, say("o'clock"), Label::Anchor::start, true}};
      std::vector<ColumnFlow::Cell> borders{{0, say("border, cm"), Label::Anchor::start, true}};
      for (int i = 0; i < 6; ++i) {
        const int hour = start + i;
        const double at = first_mm + i * step_mm;
        hours.push_back({at, std::to_string(hour + 1), Label::Anchor::end, true});
        borders.push_back({at,
                           one_decimal(drape.border_by_clock_cm[static_cast<std::size_t>(hour)]),
                           Label::Anchor::end});
      }
      flow_->cells(hours);
      flow_->cells(borders);
    }
  }

  void add_port(const dressing::Drape& drape) {
    const auto& port = drape.port;
    if (!port.centre_cm) {
      flow_->row(say("Port"), say("there is no filler that it may sit on: see the findings"));
      return;
    }
    const double off_cm = geometry::distance(drape.centroid_cm, *port.centre_cm);
    const int hour =
        geometry::clock_sector(drape.centroid_cm, *port.centre_cm, plan_.head_direction_deg);
    std::string place = off_cm < at_the_middle_cm ? say("over the middle")
                                                  : say("{1} from the middle, at {2} o'clock",
                                                        {glued(one_decimal(off_cm) + " cm"), hour});
    if (port.on_bridge) place += ", " + say("on the bridge's pad");
    flow_->row(say("Port"), say("{1}; base {2}",
                                {place, glued(format_short(port.base_diameter_cm, 2) + " cm")}));
    add_aperture(port);
  }

  void add_aperture(const dressing::Port& port) {
    const std::vector<Insert> inserts{glued(format_short(port.aperture_diameter_cm, 2) + " cm"),
                                      glued(format_short(port.aperture_limit_cm, 2) + " cm"),
                                      in_words(port.room, "cm")};
    flow_->row(say("Aperture"),
               port.fits ? say("{1} across (usual limit {2}); room {3}: it fits", inserts)
                         : say("{1} across (usual limit {2}); room {3}: it does NOT fit", inserts));
  }

  void add_therapy() {
    const auto& dressing = value_.dressing;
    flow_->heading(say("Course"));
    const auto names = parted(say("Pressure|Change"));
    flow_->row(names.at(0), glued(format_short(dressing.pressure_mmhg, 1) + " mmHg"));
    flow_->row(names.at(1),
               count_of(plan_.applications, "every {2} over {3}: {1} application",
                        "every {2} over {3}: {1} applications",
                        {glued(format_short(dressing.change_every_h, 1) + " h"),
                         glued(say("{1} days", {format_short(dressing.course_days, 1)}))}));
    flow_->keep();
  }

  void add_materials() {
    flow_->heading(say("Consumables"));
    constexpr double each = 9, course = 24, names = 27;
    const auto titles = parted(say("each|course|item"));
    flow_->cells({{each, titles.at(0), Label::Anchor::end, true},
                  {course, titles.at(1), Label::Anchor::end, true},
                  {names, titles.at(2), Label::Anchor::start, true}});
    for (const auto& item : plan_.consumables) {
      const auto lines =
          wrapped(item.estimate ? say("{1} (estimate)", {supplies::shown_name(item.item)})
                                : supplies::shown_name(item.item),
                  flow_->column_width() - names, page_text_mm);
      for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i > 0) {
          flow_->cells({{names, lines[i]}});
        } else {
          flow_->cells({{each, format_short(item.per_application, 2), Label::Anchor::end},
                        {course, format_short(item.per_course, 2), Label::Anchor::end},
                        {names, lines[i]}});
        }
      }
    }
    flow_->keep();
  }

  void add_findings() {
    flow_->heading(say("Findings"));
    if (plan_.findings.empty()) flow_->paragraph(say("None."));
    for (const auto& finding : plan_.findings) {
      const std::string severity = upper(say(dressing::name_of(finding.severity)));
      flow_->paragraph(severity + ": " + of_wound(finding));
      if (!finding.source.empty()) flow_->paragraph("[" + finding.source + "]", {}, 4);
      flow_->keep();
    }
  }

  void add_cautions() {
    flow_->heading(say("Cautions"));
    if (!value_.cautions.reviewed) {
      flow_->paragraph(say("The list of cautions was not gone through."));
    } else if (value_.cautions.present.empty()) {
      flow_->paragraph(say("The list was gone through; none was ticked."));
    }
    for (const auto& id : value_.cautions.present) {
      const practice::Caution* caution = practice::find_caution(id);
      flow_->paragraph(caution ? say(caution->text) + ". " + say(caution->advice)
                               : say("{1} (not known to this version)", {id}));
    }
    flow_->keep();
  }

  void add_signatures() {
    const double width = flow_->page_width();
    const std::string reminder = say(who_decides);
    const double words = paragraph_height(width, reminder);
    flow_->across(words + 17, [&](Page& page, Point at) {
      page.paragraph({at.x, at.y + 2}, width, reminder);
      const double y = at.y + words + 11, each = width / 3;
      const std::array names{say("Planned by"), say("Checked by"), say("Date, time")};
      for (std::size_t i = 0; i < names.size(); ++i) {
        const double x = at.x + static_cast<double>(i) * each;
        page.line({{x, y}, {x + each - 6, y}});
        page.text({x, y + 1.3 * page_text_mm}, names[i]);
      }
    });
  }

  const wound::Case& value_;
  const Plan& plan_;
  const dressing::Section& section_;
  const PageOptions& options_;
  std::optional<ColumnFlow> flow_;
};

}  // namespace

Document plan_pages(const wound::Case& value, const Plan& plan, const dressing::Section& section,
                    const PageOptions& options) {
  const double width_mm = size_of(options.paper).width_mm - 2 * page_margin_mm;
  std::vector<Drawing> drawings;
  for (const double height_mm : drawing_rooms_mm) {
    auto drawing = drawing_within(value, plan, {width_mm, height_mm});
    const bool larger = drawing && (drawings.empty() || drawing->scale > drawings.back().scale);
    if (larger) drawings.push_back(std::move(*drawing));
  }
  if (drawings.empty()) throw std::invalid_argument("no room on the page holds the drawing");
  // The largest drawing with which all fits one page; else with which it takes the fewest, but none
  // that is much smaller than it could be.
  PlanPages pages(value, plan, section, options);
  std::optional<Document> best;
  for (const Drawing& drawing : drawings) {
    if (drawing.scale < least_share * drawings.back().scale) continue;
    Document document = pages.laid_out(drawing);
    if (!best || document.pages.size() <= best->pages.size()) best = std::move(document);
  }
  return std::move(*best);
}

}  // namespace drapewright::report
