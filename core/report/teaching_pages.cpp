#include "core/report/teaching_pages.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/measures.h"
#include "core/report/page.h"
#include "core/report/plan_words.h"
#include "core/report/rulers.h"
#include "core/report/scale_map.h"
#include "core/report/sketch.h"
#include "core/report/text_size.h"

namespace drapewright::report {

using dressing::Plan;
using geometry::Box;
using geometry::Point;

namespace {

constexpr double between_mm = 6;
constexpr double title_mm = 7, row_mm = 5.4, name_mm = 40;
constexpr TextLook panel_look{.size_mm = 3.6, .bold = true};

/// A question with its answer; both short enough for a line.
struct Blank {
  std::string question;
  std::string answer;
};

/// One of the four fields: what is given, what is to be drawn, what is asked.
struct Panel {
  std::string title;
  std::vector<LayerKind> given, asked;
  std::vector<Blank> blanks;

  bool shows(LayerKind kind) const {
    return std::ranges::find(given, kind) != given.end() ||
           std::ranges::find(asked, kind) != asked.end();
  }
};

std::string cm(double value) { return format_short(value, 2) + " cm"; }

std::string of(const dressing::Figure& figure, const char* unit) {
  return one_decimal(figure.value) + " " + unit;
}

class TeachingPage {
 public:
  TeachingPage(const wound::Case& value, const Plan& plan, bool solved, const PageOptions& options)
      : value_(value),
        plan_(plan),
        solved_(solved),
        sketch_(sketch_plan(value, plan)),
        page_(size_of(options.paper)) {
    room_ = frame(page_, {solved ? say("Teaching sheet: solution") : say("Teaching sheet"),
                          case_line(plan.label, plan.date, options.today)});
  }

  Drawing draw() {
    const std::array panels{wound_panel(), filler_panel(), film_panel(), port_panel()};
    std::size_t most = 0;
    for (const Panel& panel : panels) most = std::max(most, panel.blanks.size());
    const double width = 0.5 * (room_.width() - between_mm);
    const double height = 0.5 * (room_.height() - intro_mm() - between_mm) - 1;
    const double field_mm = height - title_mm - static_cast<double>(most) * row_mm;
    choose_scale(panels, width, field_mm);
    draw_intro();
    for (std::size_t i = 0; i < panels.size(); ++i) {
      const Point corner{
          room_.low.x + static_cast<double>(i % 2) * (width + between_mm),
          room_.low.y + intro_mm() + static_cast<double>(i / 2) * (height + between_mm)};
      draw_panel(panels[i], corner, width, field_mm);
    }
    return page_.finish(title(), say("Four fields: wound, filler, film, port.") + " " +
                                     describe_drawing(value_, solved_ ? &plan_ : nullptr));
  }

  std::string title() const {
    const std::vector<Insert> what{plan_.label, plan_.date};
    return solved_ ? say("Solution: {1}, {2}", what) : say("Teaching sheet: {1}, {2}", what);
  }

 private:
  std::string intro() const {
    std::string depths;
    for (const auto& wound : value_.current().wounds) {
      depths += (depths.empty() ? "" : " ") + wound.id + ": " +
                (wound.depth_cm > 0 ? cm(wound.depth_cm) : say("not given"));
    }
    const std::vector<Insert> inserts{scale_in_words(map_scale_), depths};
    const std::string given =
        plan_.twelve == practice::Twelve::heel
            ? say("Scale {1}, cm grid, 12 o'clock to the heel (arrow). Depth {2}.", inserts)
            : say("Scale {1}, cm grid, 12 o'clock to the head (arrow). Depth {2}.", inserts);
    return given + " " +
           (solved_ ? say("Figures are the program's; a hand-drawn plan may differ by a few "
                          "millimetres and still be right.")
                    : say("Draw what is asked into each field, and fill in the blanks."));
  }
  double intro_mm() const { return 3 * line_pitch * page_text_mm; }

  void draw_intro() { page_.paragraph(room_.low, room_.width(), intro()); }

  /// The largest round scale at which all that is drawn fits a field.
  void choose_scale(const auto& panels, double width_mm, double height_mm) {
    std::vector<Point> points;
    for (const SketchLayer& layer : sketch_.layers) {
      if (!std::ranges::any_of(panels,
                               [&](const Panel& panel) { return panel.shows(layer.kind); })) {
        continue;
      }
      std::ranges::copy(geometry::outer_points(layer.areas), std::back_inserter(points));
      for (const Chain& chain : layer.chains) {
        std::ranges::copy(chain.points, std::back_inserter(points));
      }
    }
    extent_ = points.empty() ? sketch_.extent : geometry::bounding_box(points);
    for (const double reduction : round_reductions()) {
      map_scale_ = 10 / reduction;
      if (extent_.width() * map_scale_ + 4 <= width_mm &&
          extent_.height() * map_scale_ + 4 <= height_mm) {
        return;
      }
    }
  }

  void draw_panel(const Panel& panel, Point corner, double width, double field_mm) {
    page_.text({corner.x, corner.y + panel_look.size_mm}, panel.title, panel_look);
    const Box field{{corner.x, corner.y + title_mm},
                    {corner.x + width, corner.y + title_mm + field_mm}};
    draw_field(panel, field);
    double y = field.high.y + row_mm;
    for (const Blank& blank : panel.blanks) {
      page_.text({corner.x, y}, blank.question);
      const double at = corner.x + name_mm;
      if (solved_) {
        page_.text({at, y}, blank.answer, {.bold = true});
      } else {
        page_.line({{at, y + 0.6}, {corner.x + width, y + 0.6}});
      }
      y += row_mm;
    }
  }

  void draw_field(const Panel& panel, const Box& field) {
    const Point middle = 0.5 * (extent_.low + extent_.high);
    const Point at = 0.5 * (field.low + field.high);
    const ScaleMap map{map_scale_, {at.x - map_scale_ * middle.x, at.y + map_scale_ * middle.y}};
    Drawing inside;
    for (DrawnLayer& layer : draw_grid(map, field)) inside.layers.push_back(std::move(layer));
    for (const SketchLayer& layer : sketch_.layers) {
      const bool given = std::ranges::find(panel.given, layer.kind) != panel.given.end();
      if (given || (solved_ && panel.shows(layer.kind))) {
        inside.layers.push_back(drawn(layer, map));
      }
    }
    if (solved_ && panel.shows(LayerKind::measures)) inside.layers.push_back(measures(map));
    page_.insert(inside, {});
    page_.box(field);
    draw_twelve(field);
  }

  static DrawnLayer drawn(const SketchLayer& layer, const ScaleMap& map) {
    DrawnLayer result{layer.kind, {}, {}, {}};
    for (const auto& polygon : layer.areas)
      result.areas.push_back({{map.to_mm(polygon)}, layer.kind});
    for (const Chain& chain : layer.chains) {
      result.strokes.push_back({map.to_mm(chain.points), layer.kind, false, chain.arrow_at_end});
    }
    return result;
  }

  DrawnLayer measures(const ScaleMap& map) const {
    DrawnLayer layer{LayerKind::measures, {}, {}, {}};
    for (const auto& wound : plan_.wounds) {
      for (const geometry::Segment& line : {wound.length_line, wound.width_line}) {
        layer.strokes.push_back({.points = {map.to_mm(line.from), map.to_mm(line.to)},
                                 .layer = LayerKind::measures,
                                 .arrow_at_start = true,
                                 .arrow_at_end = true});
      }
    }
    return layer;
  }

  void draw_twelve(const Box& field) {
    constexpr double half = 4;
    const double angle = geometry::radians(plan_.head_direction_deg);
    const Point centre{field.low.x + half + 2, field.low.y + half + 2};
    const Point reach{half * std::cos(angle), -half * std::sin(angle)};
    page_.arrow(centre - reach, centre + reach);
  }

  Panel wound_panel() const {
    Panel panel{.title = say("1  The wound: draw length and width"),
                .given = seen(),
                .asked = {LayerKind::measures}};
    for (const auto& wound : plan_.wounds) {
      const std::string of_it = plan_.wounds.size() > 1 ? " " + wound.id : "";
      panel.blanks.push_back(
          {say("Length x width") + of_it, of(wound.length, "x ") + of(wound.width, "cm")});
      panel.blanks.push_back({say("Area: ruler, true") + of_it,
                              say("{1}, {2} cm2", {one_decimal(wound.rectangle_area_cm2),
                                                   one_decimal(wound.area.value)})});
    }
    return panel;
  }

  Panel filler_panel() const {
    int layers = 0;
    for (const auto& layer : plan_.fill.layers) layers = std::max(layers, layer.index);
    const auto questions = parted(say("Inset from the edge|Layers|Pieces to be counted"));
    return {.title = say("2  The filler: draw each layer"),
            .given = seen(),
            .asked = {LayerKind::filler, LayerKind::deeper_filler, LayerKind::seam,
                      LayerKind::unfilled},
            .blanks = {{questions.at(0), cm(value_.dressing.inset_cm)},
                       {questions.at(1), std::to_string(layers)},
                       {questions.at(2), std::to_string(plan_.fill.piece_count)}}};
  }

  Panel film_panel() const {
    Panel panel{.title = say("3  The film: draw its edge"),
                .given = seen(),
                .asked = {LayerKind::film, LayerKind::film_required}};
    panel.blanks.push_back({say("Border asked for"), cm(plan_.border_cm)});
    for (const auto& drape : plan_.drapes) {
      const std::string of_it = plan_.drapes.size() > 1 ? " " + drape.wounds.front() : "";
      panel.blanks.push_back(
          {say("Least border") + of_it, border_in_words(drape.least_border.value)});
      panel.blanks.push_back(
          {say("Sheet holds at least") + of_it, one_decimal(drape.rectangle.length_cm) + " x " +
                                                    one_decimal(drape.rectangle.width_cm) + " cm"});
    }
    return panel;
  }

  Panel port_panel() const {
    Panel panel{.title = say("4  The port: draw aperture and base"),
                .given = seen(),
                .asked = {LayerKind::port_base, LayerKind::aperture, LayerKind::bridge,
                          LayerKind::skin_protection}};
    panel.blanks.push_back({say("Aperture across"), cm(value_.dressing.aperture_diameter_cm)});
    for (const auto& drape : plan_.drapes) {
      const std::string of_it = plan_.drapes.size() > 1 ? " " + drape.wounds.front() : "";
      panel.blanks.push_back({say("Largest that fits") + of_it, of(drape.port.room, "cm")});
    }
    panel.blanks.push_back({say("Dressings in the course"), std::to_string(plan_.applications)});
    return panel;
  }

  /// What is given in every field.
  static std::vector<LayerKind> seen() {
    return {LayerKind::wound, LayerKind::island, LayerKind::undermining, LayerKind::no_film_zone,
            LayerKind::no_port_zone};
  }

  const wound::Case& value_;
  const Plan& plan_;
  bool solved_;
  Sketch sketch_;
  Page page_;
  Box room_;
  Box extent_;
  double map_scale_ = 10;
};

}  // namespace

Document teaching_pages(const wound::Case& value, const Plan& plan, bool solved,
                        const PageOptions& options) {
  TeachingPage page(value, plan, solved, options);
  Document document{.title = page.title(), .date = options.today};
  document.pages.push_back(page.draw());
  number_pages(document);
  return document;
}

}  // namespace drapewright::report
