#include "core/report/cut_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/placed_seams.h"
#include "core/report/cut_words.h"
#include "core/report/inner_point.h"
#include "core/report/plan_drawing.h"
#include "core/report/rulers.h"
#include "core/report/scale_map.h"
#include "core/report/text_size.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {
namespace {

using dressing::CutSheet;
using dressing::PieceUse;
using geometry::Box;
using geometry::Point;

// Wound : paper, as for the plan. Never enlarged: it would be mistaken for a template.
constexpr std::array reductions{1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0};
constexpr double a4_width_mm = 210, a4_height_mm = 297;
constexpr double edge_mm = 4;

/// One sheet on the page: its caption above it.
struct Block {
  const CutSheet* sheet = nullptr;
  std::string title;
  Point upper_left;  ///< mm, of the caption
  double width_mm = 0;
  double height_mm = 0;
};

struct Flow {
  std::vector<Block> blocks;
  double width_mm = 0;  ///< of all, edges left out
  double height_mm = 0;
};

class CutPage {
 public:
  CutPage(const dressing::Plan& plan, const CutDrawingOptions& options)
      : plan_(plan),
        text_(options.text_mm),
        brief_(options.brief),
        several_(plan.wounds.size() > 1),
        room_width_(options.width_mm.value_or(a4_width_mm)),
        room_height_(options.height_mm.value_or(a4_height_mm)) {
    choose_scale(options);
  }

  Drawing draw() {
    Drawing drawing;
    const std::vector<Insert> what{plan_.label, plan_.date};
    drawing.title = plan_.film_layout.empty() ? say("Filler sheets: {1}, {2}", what)
                                              : say("Filler and film sheets: {1}, {2}", what);
    drawing.scale = scale_ / 10;
    drawing.width_mm = std::max(room_width_, flow_.width_mm + 2 * edge_mm);
    if (flow_.blocks.empty()) drawing.width_mm = std::min(room_width_, 60 * text_);
    for (const Block& block : flow_.blocks) draw_block(block);
    const double foot = draw_frame(drawing);
    drawing.height_mm = foot + edge_mm;
    drawing.description = description();
    for (DrawnLayer* layer :
         {&fine_, &grid_, &films_, &pieces_, &bridges_, &seams_, &measures_, &panel_}) {
      if (layer->areas.empty() && layer->strokes.empty() && layer->labels.empty()) continue;
      drawing.layers.push_back(std::move(*layer));
    }
    return drawing;
  }

 private:
  double heading_mm() const { return (brief_ ? 2.5 : 5) * text_; }
  double caption_mm() const { return 3.6 * text_; }
  double between_mm() const { return 2 * text_; }
  double notes_mm(double width_mm) const {
    return 1.5 * text_ * static_cast<double>(note_lines(width_mm).size() + 1) + text_;
  }

  void choose_scale(const CutDrawingOptions& options) {
    for (const double reduction : reductions) {
      scale_ = options.mm_per_cm.value_or(10 / reduction);
      flow_ = flow();
      const double height =
          edge_mm + heading_mm() + flow_.height_mm + notes_mm(room_width_ - 2 * edge_mm) + edge_mm;
      if (flow_.width_mm + 2 * edge_mm <= room_width_ && height <= room_height_) return;
      if (options.mm_per_cm) return;
    }
  }

  /// Filler sheets, then the film sheets that several films share, each with its title.
  std::vector<std::pair<const CutSheet*, std::string>> sheets() const {
    std::vector<std::pair<const CutSheet*, std::string>> all;
    const auto add = [&](const std::vector<CutSheet>& layout, const char* title) {
      int number = 0;
      for (const CutSheet& sheet : layout) {
        all.emplace_back(&sheet, say(title, {++number, supplies::shown_name(sheet.item)}));
      }
    };
    add(plan_.cut_layout, term("Sheet {1}: {2}"));
    add(plan_.film_layout, term("Shared film sheet {1}: {2}"));
    return all;
  }

  /// Sheets side by side as far as the width goes, then below.
  Flow flow() const {
    Flow result;
    double x = 0, y = 0, row = 0;
    for (const auto& [cut, title] : sheets()) {
      const CutSheet& sheet = *cut;
      const double caption = text_width_mm(title, text_, true);
      const double width =
          std::max(sheet.length_cm * scale_, std::min(caption + 1, room_width_ - 2 * edge_mm));
      const double height = caption_mm() + sheet.width_cm * scale_;
      if (x > 0 && x + width > room_width_ - 2 * edge_mm) {
        x = 0;
        y += row + between_mm();
        row = 0;
      }
      result.blocks.push_back(
          {&sheet, title, {edge_mm + x, edge_mm + heading_mm() + y}, width, height});
      result.width_mm = std::max(result.width_mm, x + width);
      row = std::max(row, height);
      result.height_mm = y + row;
      x += width + between_mm();
    }
    return result;
  }

  static void append(DrawnLayer& to, DrawnLayer from) {
    std::ranges::move(from.areas, std::back_inserter(to.areas));
    std::ranges::move(from.strokes, std::back_inserter(to.strokes));
  }

  void write(Point at, const std::string& words, double width_mm, double size_mm,
             bool bold = false) {
    panel_.labels.push_back({.at = at,
                             .text = fitted(words, width_mm, size_mm, bold),
                             .size_mm = size_mm,
                             .layer = LayerKind::panel,
                             .bold = bold});
  }

  void draw_block(const Block& block) {
    const CutSheet& sheet = *block.sheet;
    const Point corner = block.upper_left;
    write({corner.x, corner.y + text_}, block.title, block.width_mm, text_, true);
    const std::string used = format_number(100 * sheet.used_fraction, 0);
    write({corner.x, corner.y + 2.5 * text_},
          sheet.off_cut ? say("{1} % used; off-cut {2}", {used, off_cut_in_words(*sheet.off_cut)})
                        : say("{1} % used", {used}),
          block.width_mm, 0.9 * text_);
    const Box field{
        {corner.x, corner.y + caption_mm()},
        {corner.x + sheet.length_cm * scale_, corner.y + caption_mm() + sheet.width_cm * scale_}};
    const ScaleMap map{scale_, {field.low.x, field.high.y}};
    std::vector<DrawnLayer> grid = draw_grid(map, field);
    for (DrawnLayer& layer : grid) {
      append(layer.kind == LayerKind::grid ? grid_ : fine_, std::move(layer));
    }
    const geometry::Ring edge{
        field.low, {field.high.x, field.low.y}, field.high, {field.low.x, field.high.y}, field.low};
    panel_.strokes.push_back({edge, LayerKind::panel});
    for (const auto& placement : sheet.placements) draw_piece(placement, map);
    if (sheet.off_cut) draw_off_cut(*sheet.off_cut, map);
  }

  DrawnLayer& layer_of(PieceUse use) {
    if (use == PieceUse::film || use == PieceUse::skin_protection) return films_;
    return use == PieceUse::bridge ? bridges_ : pieces_;
  }

  void draw_piece(const dressing::Placement& placement, const ScaleMap& map) {
    DrawnLayer& layer = layer_of(placement.use);
    layer.areas.push_back({{map.to_mm(placement.outline_cm)}, layer.kind});
    const Point middle = map.to_mm(inner_point(placement.outline_cm));
    layer.labels.push_back({.at = {middle.x, middle.y + 0.35 * text_},
                            .text = placement_name(placement, several_),
                            .size_mm = text_,
                            .anchor = Label::Anchor::middle,
                            .layer = layer.kind,
                            .bold = true,
                            .plate = true});
    for (const auto& seam : dressing::placed_seams(plan_.fill, placement)) {
      seams_.strokes.push_back({{map.to_mm(seam.from), map.to_mm(seam.to)}, LayerKind::seam});
    }
  }

  /// Crossed out, as drawings mark what is left over.
  void draw_off_cut(const Box& box, const ScaleMap& map) {
    const Point a = map.to_mm(box.low), c = map.to_mm(box.high);
    const Point b{c.x, a.y}, d{a.x, c.y};
    measures_.strokes.push_back({{a, b, c, d, a}, LayerKind::measures});
    measures_.strokes.push_back({{a, c}, LayerKind::measures});
    measures_.strokes.push_back({{b, d}, LayerKind::measures});
    const std::string words = say("off-cut");
    const Point middle = 0.5 * (a + c);
    const bool upright = std::fabs(c.x - a.x) < text_width_mm(words, text_) + text_;
    measures_.labels.push_back(
        {.at = {middle.x + (upright ? 0.35 * text_ : 0), middle.y + (upright ? 0 : 0.35 * text_)},
         .text = words,
         .size_mm = text_,
         .anchor = Label::Anchor::middle,
         .angle_deg = upright ? 90.0 : 0.0,
         .layer = LayerKind::measures,
         .plate = !upright});
  }

  std::vector<std::string> notes() const {
    if (plan_.cut_layout.empty() && plan_.film_layout.empty()) {
      return {say("No filler sheet is cut for this plan: see the findings.")};
    }
    if (brief_) {
      return {
          say("1.2: layer 1, piece 2. Turned, never turned over. Dashed: a seam. Crossed out: "
              "off-cut.")};
    }
    std::vector<std::string> result{
        say("1.2: layer 1, piece 2. Seen from the same side as the wound: pieces are turned, never "
            "turned over. The sheets of one application.")};
    if (!plan_.film_layout.empty()) {
      result.push_back(say("Film is trimmed along the lines while its backing is on."));
    }
    if (!plan_.fill.seams.empty()) {
      result.push_back(
          say("Dashed: a seam. What was cut apart there lies edge to edge in the wound."));
    }
    const auto left = [](const CutSheet& sheet) { return sheet.off_cut.has_value(); };
    if (std::ranges::any_of(plan_.cut_layout, left) ||
        std::ranges::any_of(plan_.film_layout, left)) {
      result.push_back(say("Crossed out: the largest rectangle left of the sheet.") + " " +
                       say(off_cut_advice));
    }
    return result;
  }

  std::vector<std::string> note_lines(double width_mm) const {
    std::vector<std::string> lines;
    for (const std::string& note : notes()) {
      std::ranges::move(wrapped(note, width_mm, 0.9 * text_), std::back_inserter(lines));
    }
    return lines;
  }

  /// Heading and notes. @returns where the last line ends
  double draw_frame(const Drawing& drawing) {
    const double width = drawing.width_mm - 2 * edge_mm;
    double y = edge_mm + 1.2 * text_;
    if (!brief_) {
      write({edge_mm, y}, drawing.title, width, 1.2 * text_, true);
      y += 1.8 * text_;
    }
    if (!flow_.blocks.empty()) {
      write({edge_mm, y}, say("Scale {1}, cm grid", {scale_in_words(scale_)}), width, text_);
      y = edge_mm + heading_mm() + flow_.height_mm + 2 * text_;
    }
    for (const std::string& line : note_lines(width)) {
      write({edge_mm, y}, line, width + text_, 0.9 * text_);
      y += 1.5 * text_;
    }
    return y - text_;
  }

  std::string description() const {
    std::string words = count_of(static_cast<int>(plan_.cut_layout.size()),
                                 "{1} filler sheet to open for one application.",
                                 "{1} filler sheets to open for one application.");
    if (!plan_.film_layout.empty()) {
      words += " " + count_of(static_cast<int>(plan_.film_layout.size()),
                              "{1} film sheet that several films are cut from.",
                              "{1} film sheets that several films are cut from.");
    }
    for (const Block& block : flow_.blocks) {
      words +=
          " " + say("{1}, holds: {2}.", {block.title, pieces_in_words(*block.sheet, several_)});
    }
    return words + " " + say("Drawn at scale {1}.", {scale_in_words(scale_)});
  }

  const dressing::Plan& plan_;
  double text_;
  bool brief_;
  bool several_;
  double room_width_, room_height_;
  double scale_ = 10;  ///< mm per cm
  Flow flow_;
  DrawnLayer fine_{LayerKind::fine_grid, {}, {}, {}}, grid_{LayerKind::grid, {}, {}, {}};
  DrawnLayer seams_{LayerKind::seam, {}, {}, {}}, pieces_{LayerKind::filler, {}, {}, {}};
  DrawnLayer films_{LayerKind::film, {}, {}, {}};
  DrawnLayer bridges_{LayerKind::bridge, {}, {}, {}}, measures_{LayerKind::measures, {}, {}, {}};
  DrawnLayer panel_{LayerKind::panel, {}, {}, {}};
};

void require_positive(std::optional<double> value, const char* name) {
  if (value && (!(*value > 0) || !std::isfinite(*value))) {
    throw std::invalid_argument(std::string(name) + " must be positive and finite");
  }
}

}  // namespace

Drawing draw_cut(const dressing::Plan& plan, const CutDrawingOptions& options) {
  require_positive(options.text_mm, "text_mm");
  require_positive(options.mm_per_cm, "mm_per_cm");
  require_positive(options.width_mm, "width_mm");
  require_positive(options.height_mm, "height_mm");
  return CutPage(plan, options).draw();
}

}  // namespace drapewright::report
