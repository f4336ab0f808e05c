#include "core/report/section_drawing.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/annotate.h"
#include "core/report/legend.h"
#include "core/report/rulers.h"
#include "core/report/scale_map.h"
#include "core/report/section_sketch.h"
#include "core/report/text_size.h"

namespace drapewright::report {
namespace {

using geometry::Box;
using geometry::Point;

constexpr double edge_mm = 4;  ///< around everything
constexpr DrawingSize usual_room{190, 130};
/// Below this a depth of 2 cm is not seen any more.
constexpr double smallest_mm_per_cm = 0.5;
constexpr double life_size_mm_per_cm = 10;

class SectionPage {
 public:
  SectionPage(const dressing::Section& section, const Sketch& sketch,
              const SectionDrawingOptions& options)
      : section_(section),
        sketch_(sketch),
        for_screen_(options.for_screen),
        headed_(options.drawing.headed),
        explained_(options.explained && !options.for_screen),
        text_(options.drawing.text_mm) {
    const DrawingSize room = options.drawing.room_mm.value_or(usual_room);
    map_.mm_per_cm = options.drawing.mm_per_cm.value_or(0);
    if (!options.drawing.mm_per_cm) map_.mm_per_cm = largest_scale(room);
    lay_out();
  }

  Drawing draw(const std::string& title) {
    Drawing drawing;
    drawing.title = say("{1}, section A to B", {title});
    drawing.layers = draw_grid(map_, field_);
    for (const SketchLayer& layer : sketch_.layers) drawing.layers.push_back(drawn(layer));
    Annotations words = annotate(sketch_, map_, {widened(field_, -0.3 * text_), {}, text_});
    std::ranges::move(words.layers, std::back_inserter(drawing.layers));
    drawing.layers.push_back(rulers());
    if (headed_) drawing.layers.push_back({LayerKind::panel, {}, {}, {heading(drawing.title)}});
    LegendBlock legend = legend_with(words.left_out);
    drawing.width_mm = width_mm_;
    drawing.height_mm = legend_top() + legend.height_mm + edge_mm;
    drawing.layers.push_back(std::move(legend.layer));
    drawing.scale = map_.mm_per_cm / 10;
    drawing.description = describe_section(section_);
    return drawing;
  }

 private:
  double band() const { return 3 * text_; }  ///< rulers
  double heading_mm() const { return !headed_ ? 0 : (for_screen_ ? 1 : 2.6) * text_; }
  double around() const { return 1.2 * text_; }  ///< inside the frame, round the sketch
  double below() const { return 2 * text_; }     ///< for the words under the deepest floor
  double legend_top() const { return field_.high.y + text_; }

  double field_height(double mm_per_cm) const {
    return sketch_.extent.height() * mm_per_cm + 2 * around() + below();
  }

  /// The largest of the round scales at which it fits the room; else as large as the width allows.
  double largest_scale(const DrawingSize& room) {
    const double width = room.width_mm - 2 * edge_mm - band() - 2 * around();
    const double legend_mm = explained_ ? 9 * text_ : for_screen_ ? 0 : 4 * text_;
    const double height = room.height_mm - 2 * edge_mm - heading_mm() - band() - legend_mm;
    for (const double reduction : round_reductions()) {
      if (for_screen_) break;
      const double scale = 10 / reduction;
      if (sketch_.extent.width() * scale <= width && field_height(scale) <= height) return scale;
    }
    const double fitting = std::min(width / sketch_.extent.width(),
                                    (height - 2 * around() - below()) / sketch_.extent.height());
    return std::clamp(fitting, smallest_mm_per_cm, life_size_mm_per_cm);
  }

  void lay_out() {
    const Point corner{edge_mm + band(), edge_mm + heading_mm() + band()};
    const double width = sketch_.extent.width() * map_.mm_per_cm + 2 * around();
    field_ = {corner, {corner.x + width, corner.y + field_height(map_.mm_per_cm)}};
    map_.origin_mm = {corner.x + around() - map_.mm_per_cm * sketch_.extent.low.x,
                      corner.y + around() + map_.mm_per_cm * sketch_.extent.high.y};
    width_mm_ = std::max(field_.high.x + edge_mm, 2 * edge_mm + 40 * text_);
  }

  DrawnLayer drawn(const SketchLayer& layer) const {
    DrawnLayer result{layer.kind, {}, {}, {}};
    for (const auto& polygon : layer.areas)
      result.areas.push_back({{map_.to_mm(polygon)}, layer.kind});
    for (const Chain& chain : layer.chains) {
      result.strokes.push_back({map_.to_mm(chain.points), layer.kind, false, chain.arrow_at_end});
    }
    return result;
  }

  /// Depths count downwards from the skin, so the rulers' figures lose their sign.
  DrawnLayer rulers() const {
    DrawnLayer layer = draw_rulers(map_, field_, band(), 0.9 * text_);
    for (Label& label : layer.labels) {
      if (label.text.starts_with("-")) label.text.erase(0, 1);
    }
    return layer;
  }

  Label heading(const std::string& title) const {
    const std::string text =
        fitted(title + ", " + scale_in_words(map_.mm_per_cm), width_mm_ - 2 * edge_mm, text_, true);
    return {.at = {edge_mm, edge_mm + 1.2 * text_},
            .text = text,
            .size_mm = text_,
            .layer = LayerKind::panel,
            .bold = true};
  }

  LegendBlock legend_with(const std::vector<std::string>& left_out) const {
    std::vector<std::string> notes;
    if (!for_screen_) notes = section_notes(section_);
    for (const std::string& caption : left_out) notes.push_back(say("not shown: {1}", {caption}));
    const double width = width_mm_ - 2 * edge_mm;
    return draw_legend(explained_ ? legend_layers(sketch_) : std::vector<LayerKind>{}, notes,
                       {edge_mm, legend_top()}, width, 0.9 * text_);
  }

  const dressing::Section& section_;
  const Sketch& sketch_;
  bool for_screen_, headed_, explained_;
  double text_;
  double width_mm_ = 0;
  Box field_;
  ScaleMap map_;
};

}  // namespace

Drawing draw_section(const dressing::Section& section, const std::string& title, double border_cm,
                     const SectionDrawingOptions& options) {
  check(options.drawing);
  if (!(section.length_cm > 0)) throw std::invalid_argument("the section's line has no length");
  const Sketch sketch = sketch_section(section, border_cm);
  Drawing drawing = SectionPage(section, sketch, options).draw(title);
  join_layers(drawing);
  return drawing;
}

std::string describe_section(const dressing::Section& section) {
  std::string text = say("Section along a line of {1} cm.", {format_number(section.length_cm, 1)});
  for (const auto& cavity : section.cavities) {
    const std::vector<Insert> inserts{cavity.wound, format_number(cavity.span.length_cm(), 1),
                                      format_short(cavity.depth_cm, 2)};
    text += " " + (cavity.depth_given
                       ? say("Wound {1} is open over {2} cm, {3} cm deep.", inserts)
                       : say("Wound {1} is open over {2} cm, depth not given.", inserts));
  }
  for (const auto& pocket : section.pockets) {
    text += " " + say("Undermined under the skin over {1} cm.",
                      {format_number(pocket.span.length_cm(), 1)});
  }
  text += " " + count_of(static_cast<int>(section.filler.size()), "{1} piece of filler on it.",
                         "{1} pieces of filler on it.");
  for (const auto& side : section.borders) {
    text += " " + say("Film border along the line {1}.", {border_in_words(side.span.length_cm())});
  }
  return text;
}

}  // namespace drapewright::report
