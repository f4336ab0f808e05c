#include "core/report/page.h"

#include <utility>

#include "core/base/say.h"
#include "core/report/text_size.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr TextLook kind_look{.size_mm = 4.6, .bold = true};
constexpr double number_room_mm = 34;  ///< for "page 12 of 34"

Point moved(Point p, Point by) { return p + by; }

void move(geometry::Ring& ring, Point by) {
  for (Point& p : ring) p = moved(p, by);
}

void move(Area& area, Point by) {
  for (geometry::Polygon& polygon : area.region) {
    move(polygon.outer, by);
    for (geometry::Ring& hole : polygon.holes) move(hole, by);
  }
}

}  // namespace

Page::Page(DrawingSize size) : size_(size) {
  drawing_.width_mm = size.width_mm;
  drawing_.height_mm = size.height_mm;
}

DrawnLayer& Page::layer(LayerKind kind) {
  for (DrawnLayer& layer : drawing_.layers) {
    if (layer.kind == kind) return layer;
  }
  return drawing_.layers.emplace_back(DrawnLayer{kind, {}, {}, {}});
}

void Page::line(std::vector<Point> points, LayerKind kind) {
  layer(kind).strokes.push_back({std::move(points), kind});
}

void Page::arrow(Point from, Point to, LayerKind kind) {
  layer(kind).strokes.push_back(
      {.points = {from, to}, .layer = kind, .arrow_at_start = false, .arrow_at_end = true});
}

void Page::box(const Box& box, LayerKind kind) {
  const auto& [a, b] = box;
  line({a, {b.x, a.y}, b, {a.x, b.y}, a}, kind);
}

void Page::area(const geometry::Polygon& polygon, LayerKind kind) {
  layer(kind).areas.push_back({{polygon}, kind});
}

void Page::tick_box(Point at) {
  constexpr double side_mm = 3.4, below_mm = 0.4;
  box({{at.x, at.y - side_mm + below_mm}, {at.x + side_mm, at.y + below_mm}});
}

void Page::text(Point at, std::string words, const TextLook& look) {
  layer(LayerKind::panel)
      .labels.push_back({.at = at,
                         .text = std::move(words),
                         .size_mm = look.size_mm,
                         .anchor = look.anchor,
                         .layer = LayerKind::panel,
                         .bold = look.bold});
}

double Page::paragraph(Point upper_left, double width_mm, const std::string& words,
                       const TextLook& look) {
  double y = upper_left.y;
  for (std::string& line : wrapped(words, width_mm, look.size_mm, look.bold)) {
    text({upper_left.x, y + look.size_mm}, std::move(line), look);
    y += line_pitch * look.size_mm;
  }
  return y;
}

void Page::insert(const Drawing& drawing, Point upper_left) {
  for (const DrawnLayer& part : drawing.layers) {
    DrawnLayer& into = layer(part.kind);
    for (Area area : part.areas) {
      move(area, upper_left);
      into.areas.push_back(std::move(area));
    }
    for (Stroke stroke : part.strokes) {
      move(stroke.points, upper_left);
      into.strokes.push_back(std::move(stroke));
    }
    for (Label label : part.labels) {
      label.at = moved(label.at, upper_left);
      into.labels.push_back(std::move(label));
    }
  }
}

Drawing Page::finish(std::string title, std::string description) {
  drawing_.title = std::move(title);
  drawing_.description = std::move(description);
  join_layers(drawing_);
  return std::move(drawing_);
}

double paragraph_height(double width_mm, const std::string& words, const TextLook& look) {
  return line_pitch * look.size_mm *
         static_cast<double>(wrapped(words, width_mm, look.size_mm, look.bold).size());
}

Box frame(Page& page, const PageHeading& heading) {
  const double left = page_margin_mm, right = page.size().width_mm - page_margin_mm;
  double y = page.paragraph({left, page_margin_mm}, right - left - number_room_mm, heading.kind,
                            kind_look);
  y = page.paragraph({left, y}, right - left, heading.case_line, {.bold = true});
  page.line({{left, y + 0.5}, {right, y + 0.5}});
  const double foot = page.size().height_mm - page_margin_mm;
  const std::string reminder =
      say("A planning aid: the prescriber, local policy and the device's instructions decide.");
  const double rule = foot - 0.8 - paragraph_height(right - left, reminder);
  page.paragraph({left, rule + (line_pitch - 1) * page_text_mm}, right - left, reminder);
  page.line({{left, rule}, {right, rule}});
  return {{left, y + 2}, {right, rule - 1}};
}

void number_pages(Document& document) {
  const auto pages = static_cast<int>(document.pages.size());
  int number = 0;
  for (Drawing& page : document.pages) {
    page.layers.push_back({LayerKind::panel,
                           {},
                           {},
                           {{.at = {page.width_mm - page_margin_mm, page_margin_mm + page_text_mm},
                             .text = say("page {1} of {2}", {++number, pages}),
                             .size_mm = page_text_mm,
                             .anchor = Label::Anchor::end,
                             .layer = LayerKind::panel}}});
    join_layers(page);
  }
}

std::string case_line(const std::string& label, const std::string& assessed,
                      const std::string& today) {
  return today.empty() ? say("{1}, assessed {2}", {label, assessed})
                       : say("{1}, assessed {2}, printed {3}", {label, assessed, today});
}

}  // namespace drapewright::report
