#include "core/report/plan_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/annotate.h"
#include "core/report/legend.h"
#include "core/report/rose.h"
#include "core/report/rulers.h"
#include "core/report/scale_map.h"
#include "core/report/text_size.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr std::array reductions{1.0, 1.5, 2.0,  2.5,  3.0,  4.0, 5.0,
                                6.0, 8.0, 10.0, 15.0, 20.0, 50.0};

constexpr double edge_mm = 4;  ///< around everything
constexpr DrawingSize a4{210, 297};

/// Sizes that follow from the text's size.
struct Measures {
  double text;
  bool headed;
  double band() const { return 3.2 * text; }                  ///< rulers
  double heading() const { return headed ? 3.2 * text : 0; }  ///< title and scale
  double around_plan() const { return 4 * text; }             ///< for dimension lines and captions
  double side_panel() const { return 18 * text; }
  double rose_radius() const { return 4.2 * text; }
  double rose_size() const { return 2 * rose_reach_mm(rose_radius(), text); }
  double scale_bar() const { return 5.5 * text; }
};

/// Where everything stands, once the scale is chosen.
struct Layout {
  Box field;    ///< the plan's frame
  Point panel;  ///< upper left of legend and rose
  double panel_width = 0;
  bool panel_beside = true;  ///< else below
  DrawingSize size;
};

/// Lays the panel beside or below a field of the given size.
Layout lay_out(double field_width, double field_height, bool beside, double panel_height,
               const Measures& m) {
  const Point corner{edge_mm + m.band(), edge_mm + m.heading() + m.band()};
  const Box field{corner, {corner.x + field_width, corner.y + field_height}};
  Layout layout{field, {}, 0, beside, {}};
  if (beside) {
    layout.panel = {field.high.x + m.text * 1.5, field.low.y};
    layout.panel_width = m.side_panel();
    layout.size = {layout.panel.x + layout.panel_width + edge_mm,
                   std::max(field.high.y, field.low.y + panel_height) + edge_mm};
  } else {
    layout.panel = {field.low.x, field.high.y + m.text * 1.5};
    layout.panel_width = field_width;
    layout.size = {field.high.x + edge_mm, layout.panel.y + panel_height + edge_mm};
  }
  return layout;
}

/// Draws one sketch on one page.
class Page {
 public:
  Page(const Sketch& sketch, const DrawingOptions& options)
      : sketch_(sketch),
        options_(options),
        m_{options.text_mm, options.headed},
        legend_(legend_layers(sketch)) {}

  void lay_out();
  void lay_out_words();
  std::size_t words_left_out() const { return left_out_.size(); }
  void draw_plan(Drawing& drawing);
  void draw_surroundings(Drawing& drawing, const std::string& heading);
  double mm_per_cm() const { return map_.mm_per_cm; }

 private:
  struct Arrangement {
    double mm_per_cm;
    bool beside;
  };
  std::optional<Arrangement> largest_that_fits() const;
  Arrangement arrange();
  bool fits(const Layout& layout) const;
  Layout layout_at(double mm_per_cm, bool beside) const;
  double panel_height(double width, bool beside) const;
  LegendBlock legend_at(Point upper_left, double width) const;
  DrawnLayer scale_bar(Point upper_left) const;
  Label heading_label(const std::string& heading) const;

  const Sketch& sketch_;
  const DrawingOptions& options_;
  Measures m_;
  std::vector<LayerKind> legend_;
  std::vector<std::string> left_out_;
  std::vector<DrawnLayer> words_;
  Layout layout_;
  ScaleMap map_;
};

LegendBlock Page::legend_at(Point upper_left, double width) const {
  std::vector<std::string> notes = legend_notes(sketch_);
  for (const std::string& caption : left_out_) notes.push_back(say("not shown: {1}", {caption}));
  return draw_legend(legend_, notes, upper_left, width, m_.text);
}

double Page::panel_height(double width, bool beside) const {
  const double legend_width = beside ? width : width - m_.rose_size() - 2 * m_.text;
  const double legend = legend_at({}, legend_width).height_mm;
  const double foot = m_.scale_bar();
  return beside ? m_.rose_size() + 2 * m_.text + legend + foot
                : std::max(m_.rose_size(), legend + foot);
}

Layout Page::layout_at(double mm_per_cm, bool beside) const {
  const double width = sketch_.extent.width() * mm_per_cm + 2 * m_.around_plan();
  const double height = sketch_.extent.height() * mm_per_cm + 2 * m_.around_plan();
  const double least_width = beside ? 0 : m_.rose_size() + 2 * m_.text + m_.side_panel();
  const double field_width = std::max(width, least_width);
  return report::lay_out(field_width, height, beside,
                         panel_height(beside ? m_.side_panel() : field_width, beside), m_);
}

bool Page::fits(const Layout& layout) const {
  const auto in = [&](double width, double height) {
    return layout.size.width_mm <= width && layout.size.height_mm <= height;
  };
  if (options_.room_mm) return in(options_.room_mm->width_mm, options_.room_mm->height_mm);
  return in(a4.width_mm, a4.height_mm) || in(a4.height_mm, a4.width_mm);
}

/// The largest scale that fits, with the panel beside where that does as well as below.
std::optional<Page::Arrangement> Page::largest_that_fits() const {
  for (const double reduction : reductions) {
    for (const bool beside : {true, false}) {
      if (fits(layout_at(10 / reduction, beside))) return Arrangement{10 / reduction, beside};
    }
  }
  return std::nullopt;
}

/// Where ordinary text leaves no room, smaller text is tried before giving up.
Page::Arrangement Page::arrange() {
  if (options_.mm_per_cm) return {*options_.mm_per_cm, true};
  for (const double smaller : {1.0, 0.85, 0.7}) {
    if (smaller < options_.smallest_text) break;
    m_.text = smaller * options_.text_mm;
    if (const auto found = largest_that_fits()) return *found;
  }
  throw std::invalid_argument("the room is too small for a drawing with its legend");
}

void Page::lay_out() {
  const auto [mm_per_cm, beside] = arrange();
  map_.mm_per_cm = mm_per_cm;
  layout_ = layout_at(map_.mm_per_cm, beside);
  const Box& extent = sketch_.extent;
  const Point middle = 0.5 * (extent.low + extent.high);
  const Point at = 0.5 * (layout_.field.low + layout_.field.high);
  map_.origin_mm = {at.x - map_.mm_per_cm * middle.x, at.y + map_.mm_per_cm * middle.y};
}

void Page::draw_plan(Drawing& drawing) {
  for (DrawnLayer& layer : draw_grid(map_, layout_.field)) {
    drawing.layers.push_back(std::move(layer));
  }
  for (const SketchLayer& layer : sketch_.layers) {
    DrawnLayer drawn{layer.kind, {}, {}, {}};
    for (const geometry::Polygon& polygon : layer.areas) {
      drawn.areas.push_back({{map_.to_mm(polygon)}, layer.kind});
    }
    for (const Chain& chain : layer.chains) {
      drawn.strokes.push_back({map_.to_mm(chain.points), layer.kind, false, chain.arrow_at_end});
    }
    drawing.layers.push_back(std::move(drawn));
  }
  for (DrawnLayer& layer : words_) drawing.layers.push_back(std::move(layer));
}

void Page::lay_out_words() {
  const AnnotationField room{widened(layout_.field, -0.5 * m_.text), {}, m_.text};
  Annotations annotations = annotate(sketch_, map_, room);
  left_out_ = std::move(annotations.left_out);
  words_ = std::move(annotations.layers);
}

/// A bar of 1, 2, 5 or 10 cm of the wound, about as long as the panel is wide.
DrawnLayer Page::scale_bar(Point at) const {
  double bar_cm = 1;
  for (const double length : {2.0, 5.0, 10.0, 20.0}) {
    if (length * map_.mm_per_cm <= 0.95 * m_.side_panel()) bar_cm = length;
  }
  const double length = bar_cm * map_.mm_per_cm;
  const double tick = 0.5 * m_.text;
  DrawnLayer bar{LayerKind::panel, {}, {}, {}};
  const double y = at.y + 3.4 * m_.text;
  bar.strokes.push_back(
      {{{at.x, y - tick}, {at.x, y}, {at.x + length, y}, {at.x + length, y - tick}},
       LayerKind::panel});
  bar.labels.push_back({.at = {at.x, at.y + m_.text},
                        .text = say("Scale {1}", {scale_in_words(map_.mm_per_cm)}),
                        .size_mm = m_.text,
                        .layer = LayerKind::panel,
                        .bold = true});
  bar.labels.push_back(
      {.at = {at.x, at.y + 2.5 * m_.text},
       .text = say("{1} cm ({2} mm on paper)", {format_short(bar_cm, 1), format_short(length, 1)}),
       .size_mm = m_.text,
       .layer = LayerKind::panel});
  return bar;
}

/// In one line: a long heading is set smaller, then cut.
Label Page::heading_label(const std::string& heading) const {
  const double room = layout_.size.width_mm - 2 * edge_mm;
  double size = 1.3 * m_.text;
  while (size > m_.text && text_width_mm(heading, size, true) > room) size -= 0.05 * m_.text;
  return {.at = {edge_mm, edge_mm + 1.3 * m_.text},
          .text = fitted(heading, room, size, true),
          .size_mm = size,
          .layer = LayerKind::panel,
          .bold = true};
}

void Page::draw_surroundings(Drawing& drawing, const std::string& heading) {
  const double band_text = 0.9 * m_.text;
  drawing.layers.push_back(draw_rulers(map_, layout_.field, m_.band(), band_text));
  const double legend_width =
      layout_.panel_width - (layout_.panel_beside ? 0 : m_.rose_size() + 2 * m_.text);
  const Point legend_corner =
      layout_.panel_beside ? Point{layout_.panel.x, layout_.panel.y + m_.rose_size() + 2 * m_.text}
                           : layout_.panel;
  LegendBlock legend = legend_at(legend_corner, legend_width);
  const double bar_top = legend_corner.y + legend.height_mm + m_.text;
  drawing.layers.push_back(scale_bar({legend_corner.x, bar_top}));
  drawing.layers.push_back(std::move(legend.layer));
  const double half_rose = 0.5 * m_.rose_size();
  const Point rose =
      layout_.panel_beside
          ? Point{layout_.panel.x + 0.5 * layout_.panel_width, layout_.panel.y + half_rose}
          : Point{layout_.field.high.x - half_rose, layout_.panel.y + half_rose};
  drawing.layers.push_back(
      draw_rose(rose, m_.rose_radius(), sketch_.head_direction_deg, band_text, sketch_.twelve));
  if (m_.headed) drawing.layers.push_back({LayerKind::panel, {}, {}, {heading_label(heading)}});
  drawing.width_mm = layout_.size.width_mm;
  drawing.height_mm = std::max(layout_.size.height_mm, bar_top + m_.scale_bar());
}

void require_positive(double value, const char* name) {
  if (!(value > 0) || !std::isfinite(value)) {
    throw std::invalid_argument(std::string(name) + " must be positive and finite");
  }
}

Drawing draw(const wound::Case& value, const dressing::Plan* plan, const DrawingOptions& options) {
  check(options);
  const Sketch sketch = plan ? sketch_plan(value, *plan) : sketch_case(value);
  Page page(sketch, options);
  page.lay_out();
  page.lay_out_words();
  // Once more, with room for a list of those left out; that room may cost others theirs.
  for (std::size_t listed = 0; page.words_left_out() > listed;) {
    listed = page.words_left_out();
    page.lay_out();
    page.lay_out_words();
  }
  Drawing drawing;
  drawing.title = value.label + ", " + value.current().date;
  page.draw_plan(drawing);
  page.draw_surroundings(drawing, drawing.title);
  drawing.scale = page.mm_per_cm() / 10;
  drawing.description = describe_drawing(value, plan) + " " +
                        say("Drawn at scale {1}.", {scale_in_words(page.mm_per_cm())});
  join_layers(drawing);
  return drawing;
}

}  // namespace

void check(const DrawingOptions& options) {
  require_positive(options.text_mm, "text_mm");
  if (options.mm_per_cm) require_positive(*options.mm_per_cm, "mm_per_cm");
  if (options.room_mm) {
    require_positive(options.room_mm->width_mm, "width_mm");
    require_positive(options.room_mm->height_mm, "height_mm");
  }
}

std::span<const double> round_reductions() { return reductions; }

void join_layers(Drawing& drawing) {
  std::vector<DrawnLayer> joined;
  const auto join = [&](const LayerStyle& style) {
    DrawnLayer whole{style.kind, {}, {}, {}};
    for (DrawnLayer& part : drawing.layers) {
      if (part.kind != style.kind) continue;
      std::ranges::move(part.areas, std::back_inserter(whole.areas));
      std::ranges::move(part.strokes, std::back_inserter(whole.strokes));
      std::ranges::move(part.labels, std::back_inserter(whole.labels));
    }
    if (!whole.areas.empty() || !whole.strokes.empty() || !whole.labels.empty()) {
      joined.push_back(std::move(whole));
    }
  };
  std::ranges::for_each(layer_styles(), join);
  std::ranges::for_each(paper_styles(), join);
  drawing.layers = std::move(joined);
}

std::string scale_in_words(double mm_per_cm) {
  const double reduction = 10 / mm_per_cm;
  if (std::abs(reduction - 1) < 1e-9) return say("1:1 (life size)");
  if (std::abs(reduction - 2) < 1e-9) return say("1:2 (half size)");
  return reduction > 1 ? "1:" + format_short(reduction, 2)
                       : say("{1}:1 (enlarged)", {format_short(mm_per_cm / 10, 2)});
}

Drawing draw_plan(const wound::Case& value, const dressing::Plan& plan,
                  const DrawingOptions& options) {
  return draw(value, &plan, options);
}

Drawing draw_case(const wound::Case& value, const DrawingOptions& options) {
  return draw(value, nullptr, options);
}

}  // namespace drapewright::report
