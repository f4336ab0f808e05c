#include "core/report/template_pages.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/report/page.h"
#include "core/report/plan_words.h"
#include "core/report/scale_map.h"
#include "core/report/text_size.h"
#include "core/report/tiling.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;
using Points = std::vector<Point>;

namespace {

constexpr TextLook title_look{.size_mm = 3.8, .bold = true};
constexpr double arrow_column_mm = 15, arrow_mm = 9;
constexpr double between_mm = 7;  ///< templates side by side
constexpr double least_caption_mm = 62;
constexpr double cell_width_mm = 7, cell_height_mm = 5.5;  ///< of the key of tiles
constexpr double mark_arm_mm = 3, mark_radius_mm = 1.6;

constexpr const char* mirror_words = term(
    "MIRRORED: to be drawn on the back of the film's backing. Laid on the skin it is the right way "
    "round again.");

constexpr const char* join_words = term(
    "Larger than the page: hold the pages against the light, lay the crosses of one number on one "
    "another, tape them, then cut.");

/// A template in mm as it is printed, y down.
struct Print {
  const Template* source = nullptr;
  std::vector<std::pair<LayerKind, Points>> lines;
  std::vector<std::pair<Point, const TemplateWord*>> words;
  Box extent;

  std::vector<Points> chains() const {
    std::vector<Points> all;
    for (const auto& [kind, chain] : lines) all.push_back(chain);
    return all;
  }
};

Print print_of(const Template& source) {
  constexpr ScaleMap life_size{10, {}};
  Print print{&source, {}, {}, {}};
  Points all;
  for (const TemplateLine& line : source.lines) {
    Points chain = life_size.to_mm(line.points);
    all.insert(all.end(), chain.begin(), chain.end());
    print.lines.emplace_back(line.kind, std::move(chain));
  }
  for (const TemplateWord& word : source.words) {
    print.words.emplace_back(life_size.to_mm(word.at_cm), &word);
  }
  print.extent = geometry::bounding_box(all);
  return print;
}

DrawingSize across(DrawingSize size) { return {size.height_mm, size.width_mm}; }

/// Lays templates out on pages, one kind of part after the other.
class TemplatePages {
 public:
  TemplatePages(const dressing::Plan& plan, const TemplatePageOptions& options)
      : plan_(plan), options_(options) {
    document_.title = say("Cutting templates: {1}, {2}", {plan.label, plan.date});
    document_.date = options.page.today;
  }

  void add(const std::vector<Template>& templates) {
    for (const Template& source : templates) {
      if (source.lines.empty()) continue;
      if (page_ && source.mirrored != mirrored_) end_page();
      const Print print = print_of(source);
      if (fits_beside_others(print)) {
        flow(print);
      } else {
        end_page();
        spread(print);
      }
    }
  }

  Document finish() {
    end_page();
    if (document_.pages.empty()) {
      begin_page(upright(), false);
      page_->paragraph(room_.low, room_.width(),
                       say("There is nothing to cut for this plan: see its findings."));
      end_page();
    }
    number_pages(document_);
    return std::move(document_);
  }

 private:
  DrawingSize upright() const { return size_of(options_.page.paper); }
  /// A length of the whole on this page.
  double width_on_page(double mm) const { return options_.printer.width_on_page(mm); }
  double height_on_page(double mm) const { return options_.printer.height_on_page(mm); }

  /// Heading, foot and check bars. @returns the room that is left
  Box prepare(Page& page, bool mirrored) const {
    const Box room =
        frame(page, {mirrored ? say("Cutting templates, life size 1:1, MIRRORED")
                              : say("Cutting templates, life size 1:1"),
                     with_stops(case_line(plan_.label, plan_.date, options_.page.today), plan_)});
    return draw_check_bars(page, room, options_.printer);
  }

  void begin_page(DrawingSize size, bool mirrored) {
    page_.emplace(size);
    room_ = prepare(*page_, mirrored);
    mirrored_ = mirrored;
    words_.clear();
    cursor_ = room_.low;
    row_bottom_ = room_.low.y;
  }

  void end_page() {
    if (!page_) return;
    document_.pages.push_back(page_->finish(document_.title, description_));
    description_.clear();
    page_.reset();
  }

  // Captions: the arrow to 12 o'clock at the left, title and notes beside it.

  static std::string notes_of(const Template& source) {
    std::string words = source.mirrored ? say(mirror_words) : "";
    for (const auto& note : source.notes) words += (words.empty() ? "" : "\n") + note;
    return words;
  }

  static double arrow_column(const Template& source) {
    return source.twelve_deg ? arrow_column_mm : 0;
  }

  static double caption_height(const Template& source, const std::string& title, double width) {
    const double words = width - arrow_column(source);
    const double height =
        paragraph_height(words, title, title_look) + paragraph_height(words, notes_of(source));
    return std::max(height, source.twelve_deg ? arrow_mm + 2.2 * page_text_mm : 0) + 2;
  }

  void draw_caption(const Template& source, const std::string& title, Point corner, double width) {
    const double words = width - arrow_column(source);
    const Point at{corner.x + arrow_column(source), corner.y};
    const double y = page_->paragraph(at, words, title, title_look);
    page_->paragraph({at.x, y}, words, notes_of(source));
    if (source.twelve_deg) draw_twelve(source, corner);
  }

  void draw_twelve(const Template& source, Point corner) {
    const double half = 0.5 * arrow_mm, angle = geometry::radians(*source.twelve_deg);
    const Point middle{corner.x + half + 1.5, corner.y + half + 0.5};
    const Point reach{half * std::cos(angle), -half * std::sin(angle)};
    page_->arrow(middle - reach, middle + reach);
    page_->text({middle.x, corner.y + arrow_mm + 1.4 * page_text_mm},
                say(practice::name_of(source.twelve)), {.anchor = Label::Anchor::middle});
  }

  // Small templates, side by side.

  double block_width(const Print& print) const {
    return std::max(width_on_page(print.extent.width()), least_caption_mm);
  }
  double block_height(const Print& print) const {
    return caption_height(*print.source, print.source->title, block_width(print)) +
           height_on_page(print.extent.height());
  }

  /// Whether it fits an empty upright page.
  bool fits_beside_others(const Print& print) const {
    const Box room = room_on(upright());
    return block_width(print) <= room.width() && block_height(print) <= room.height();
  }

  void flow(const Print& print) {
    const double width = block_width(print), height = block_height(print);
    if (page_ && cursor_.x + width > room_.high.x) {
      cursor_ = {room_.low.x, row_bottom_ + between_mm};
    }
    if (page_ && cursor_.y + height > room_.high.y) end_page();
    if (!page_) begin_page(upright(), print.source->mirrored);
    draw_caption(*print.source, print.source->title, cursor_, width);
    const double caption = caption_height(*print.source, print.source->title, width);
    draw_part(print, print.extent, cursor_ + Point{0, caption});
    description_ += print.source->title + ". ";
    row_bottom_ = std::max(row_bottom_, cursor_.y + height);
    cursor_.x += width + between_mm;
  }

  /// The window of the whole, its upper left corner at a place on the page.
  void draw_part(const Print& print, const Box& window, Point corner) {
    const auto on_page = [&](Point p) {
      return corner + Point{width_on_page(p.x - window.low.x), height_on_page(p.y - window.low.y)};
    };
    for (const auto& [kind, chain] : print.lines) {
      for (Points& part : clipped(chain, window)) {
        for (Point& p : part) p = on_page(p);
        page_->line(std::move(part), kind);
      }
    }
    const Box room{corner, on_page(window.high)};
    for (const auto& [at, word] : print.words) draw_word(*word, on_page(at), room);
  }

  /// Left out where it would hang over the window's edge or lie over another: the caption names
  /// the template anyway, and the clock's ticks stay.
  void draw_word(const TemplateWord& word, Point at, const Box& room) {
    const double half = 0.5 * text_width_mm(word.text, page_text_mm, word.bold);
    const Box taken = widened(
        {{at.x - half, at.y - 0.6 * page_text_mm}, {at.x + half, at.y + 0.6 * page_text_mm}}, 0.3);
    const bool inside = taken.low.x >= room.low.x && taken.high.x <= room.high.x &&
                        taken.low.y >= room.low.y && taken.high.y <= room.high.y;
    if (!inside || std::ranges::any_of(words_, [&](const Box& other) {
          return geometry::gap_between(taken, other) == 0;
        })) {
      return;
    }
    words_.push_back(taken);
    page_->text({at.x, at.y + 0.35 * page_text_mm}, word.text,
                {.bold = word.bold, .anchor = Label::Anchor::middle});
  }

  // Larger ones, over several pages.

  /// Room for templates on an empty page of that size.
  Box room_on(DrawingSize size) const {
    Page empty(size);
    return prepare(empty, false);
  }

  static std::string tile_title(const Template& source, std::size_t tile, std::size_t tiles) {
    if (tiles == 1) return source.title;
    return say("{1}, tile {2} of {3}", {source.title, tile, tiles});
  }

  struct Spread {
    DrawingSize size;
    double caption_mm = 0;
    Tiling tiling;
  };

  Spread spread_on(const Print& print, DrawingSize size) const {
    const Box room = room_on(size);
    Spread spread{.size = size};
    // The key takes its own width from the caption's; how much is known only once it is tiled.
    Template with_joining = *print.source;
    with_joining.notes.push_back(say(join_words));
    double key_mm = 0;
    for (int pass = 0; pass < 2; ++pass) {
      spread.caption_mm =
          caption_height(with_joining, tile_title(*print.source, 99, 99), room.width() - key_mm);
      spread.tiling =
          tile(print.chains(), {room.width() / width_on_page(1),
                                (room.height() - spread.caption_mm) / height_on_page(1)});
      key_mm = spread.tiling.columns * cell_width_mm + between_mm;
      spread.caption_mm = std::max(spread.caption_mm, spread.tiling.rows * cell_height_mm + 2);
    }
    return spread;
  }

  void spread(const Print& print) {
    Spread best = spread_on(print, upright());
    Spread lying = spread_on(print, across(upright()));
    if (lying.tiling.tiles.size() < best.tiling.tiles.size()) best = std::move(lying);
    Template source = *print.source;
    if (best.tiling.tiles.size() > 1) source.notes.push_back(say(join_words));
    for (std::size_t i = 0; i < best.tiling.tiles.size(); ++i) {
      begin_page(best.size, source.mirrored);
      draw_tile(print, source, best, i);
      end_page();
    }
  }

  void draw_tile(const Print& print, const Template& source, const Spread& spread,
                 std::size_t index) {
    const Tiling& tiling = spread.tiling;
    const bool several = tiling.tiles.size() > 1;
    const std::string title = tile_title(source, index + 1, tiling.tiles.size());
    const double key_mm = several ? tiling.columns * cell_width_mm + between_mm : 0;
    draw_caption(source, title, room_.low, room_.width() - key_mm);
    if (several) draw_key(tiling, index);
    const Point corner{room_.low.x, room_.low.y + spread.caption_mm};
    for (const TileMark& mark : tiling.marks) {
      if (mark.first == static_cast<int>(index)) draw_mark(mark, tiling, corner, true);
      if (mark.second == static_cast<int>(index)) draw_mark(mark, tiling, corner, false);
    }
    draw_part(print, tiling.tiles[index].window, corner);
    description_ = title + ". ";
  }

  void draw_key(const Tiling& tiling, std::size_t index) {
    const Point corner{room_.high.x - tiling.columns * cell_width_mm, room_.low.y};
    for (std::size_t i = 0; i < tiling.tiles.size(); ++i) {
      const Tile& tile = tiling.tiles[i];
      const Point low{corner.x + tile.column * cell_width_mm, corner.y + tile.row * cell_height_mm};
      const Box cell{low, {low.x + cell_width_mm, low.y + cell_height_mm}};
      if (i == index) {
        page_->area({{low, {cell.high.x, low.y}, cell.high, {low.x, cell.high.y}}, {}},
                    LayerKind::tile_here);
      } else {
        page_->box(cell);
      }
      page_->text({low.x + 0.5 * cell_width_mm, low.y + 0.5 * cell_height_mm + 0.35 * page_text_mm},
                  std::to_string(i + 1), {.anchor = Label::Anchor::middle});
    }
  }

  /// A cross in a ring, its number towards the middle of the tile.
  void draw_mark(const TileMark& mark, const Tiling& tiling, Point corner, bool is_first) {
    const std::size_t index = static_cast<std::size_t>(is_first ? mark.first : mark.second);
    const Box& window = tiling.tiles[index].window;
    const Point at{corner.x + width_on_page(mark.at.x - window.low.x),
                   corner.y + height_on_page(mark.at.y - window.low.y)};
    const Point right{mark_arm_mm, 0}, down{0, mark_arm_mm};
    page_->line({at - right, at + right}, LayerKind::registration);
    page_->line({at - down, at + down}, LayerKind::registration);
    Points ring;
    for (int k = 0; k <= 24; ++k) {
      const double angle = k * geometry::pi / 12;
      ring.push_back(at + mark_radius_mm * Point{std::cos(angle), std::sin(angle)});
    }
    page_->line(std::move(ring), LayerKind::registration);
    words_.push_back({at - Point{2.5 * mark_arm_mm, mark_arm_mm + 1},
                      at + Point{2.5 * mark_arm_mm, mark_arm_mm}});
    const bool to_left = mark.side_by_side && is_first;
    page_->text({at.x + (to_left ? -1 : 1) * (mark_arm_mm + 0.8), at.y - 1},
                std::to_string(mark.number),
                {.bold = true, .anchor = to_left ? Label::Anchor::end : Label::Anchor::start});
  }

  const dressing::Plan& plan_;
  const TemplatePageOptions& options_;
  Document document_;
  std::optional<Page> page_;
  bool mirrored_ = false;   ///< the page that is being filled
  std::vector<Box> words_;  ///< on its templates
  std::string description_;
  Box room_;
  Point cursor_;
  double row_bottom_ = 0;
};

}  // namespace

Document template_pages(const wound::Case& value, const dressing::Plan& plan,
                        const TemplatePageOptions& options) {
  check(options.printer);
  TemplatePages pages(plan, options);
  for (const TemplatePart part : options.parts) {
    std::vector<Template> all = templates(value, plan, part);
    if (part == TemplatePart::film && options.mirror_film) {
      for (Template& one : all) one = mirrored(std::move(one));
    }
    pages.add(all);
  }
  return pages.finish();
}

}  // namespace drapewright::report
