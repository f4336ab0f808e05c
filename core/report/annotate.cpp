#include "core/report/annotate.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/report/label_placer.h"
#include "core/report/text_size.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;
using geometry::Segment;

namespace {

constexpr double plate_margin_mm = 0.6;
constexpr double leader_from_mm = 3.0;  ///< a caption farther off its place gets a leader
constexpr std::array dimension_gaps_mm{8.0, 14.0, 20.0, 26.0};
constexpr double off_line_mm = 0.8;  ///< between a short dimension line and its text
constexpr std::array places_along{0.5, 0.35, 0.65, 0.2, 0.8};

bool within(const Box& box, Point p) {
  return p.x >= box.low.x && p.x <= box.high.x && p.y >= box.low.y && p.y <= box.high.y;
}

Point nearest_in(const Box& box, Point p) {
  return {std::clamp(p.x, box.low.x, box.high.x), std::clamp(p.y, box.low.y, box.high.y)};
}

/// Lays out one sketch; keeps the placer and the layers while captions and dimensions go in.
class Annotator {
 public:
  Annotator(const ScaleMap& map, const AnnotationField& room)
      : map_(map), room_(room), placer_(room.field) {
    for (const Box& box : room.taken) placer_.block(box);
  }

  void avoid(const SketchLayer& layer);
  void block(const geometry::Circle& circle);
  void add(const Dimension& dimension);
  void add(const Caption& caption);
  Annotations finish() { return std::move(result_); }

 private:
  struct Laid {
    Segment line;
    Box text;
    int lines_under = 0;
  };

  DrawnLayer& layer(LayerKind kind);
  std::optional<Laid> with_text(const Segment& line, const std::string& text) const;
  std::optional<Laid> lay_beside(const Dimension& dimension, bool opposite, double gap_mm) const;
  std::optional<Laid> lay(const Dimension& dimension) const;
  void put_text(LayerKind kind, const Box& box, const std::string& text, bool bold);
  void put_leader(const Caption& caption, Point place, const Box& box);
  double width_of(const std::string& text, bool bold) const {
    return text_width_mm(text, room_.text_mm, bold) + 2 * plate_margin_mm;
  }
  double height() const {
    return (text_ascent + text_descent) * room_.text_mm + 2 * plate_margin_mm;
  }

  const ScaleMap& map_;
  const AnnotationField& room_;
  LabelPlacer placer_;
  Annotations result_;
};

DrawnLayer& Annotator::layer(LayerKind kind) {
  const auto found = std::ranges::find(result_.layers, kind, &DrawnLayer::kind);
  if (found != result_.layers.end()) return *found;
  return result_.layers.emplace_back(DrawnLayer{kind, {}, {}, {}});
}

void Annotator::avoid(const SketchLayer& layer) {
  if (layer.kind == LayerKind::film_required) return;  // mostly runs along the film's own edge
  for (const geometry::Polygon& polygon : layer.areas) {
    if (polygon.outer.empty()) continue;
    geometry::Ring ring = map_.to_mm(polygon.outer);
    ring.push_back(ring.front());
    placer_.avoid(ring);
  }
  for (const Chain& chain : layer.chains) placer_.avoid(map_.to_mm(chain.points));
}

/// No word may stand on an aperture or on the cross through it.
void Annotator::block(const geometry::Circle& circle) {
  const Point centre = map_.to_mm(circle.centre);
  const double half = 1.25 * circle.radius_cm * map_.mm_per_cm;
  placer_.block({{centre.x - half, centre.y - half}, {centre.x + half, centre.y + half}});
}

/// Text on its dimension line; beside the line where that is too short to carry it.
std::optional<Annotator::Laid> Annotator::with_text(const Segment& line,
                                                    const std::string& text) const {
  const double length = geometry::distance(line.from, line.to);
  const Point along = length > 0 ? (1 / length) * (line.to - line.from) : Point{1, 0};
  const Point half{width_of(text, false) / 2, height() / 2};
  const double covered = 2 * std::min(half.x / std::max(std::abs(along.x), 1e-9),
                                      half.y / std::max(std::abs(along.y), 1e-9));
  const bool on_line = covered + 3 * arrow_length_mm < length;
  const double off = std::abs(along.y) * half.x + std::abs(along.x) * half.y + off_line_mm;
  const Point normal{along.y, -along.x};
  std::optional<Laid> best;
  const auto consider = [&](Point middle) {
    const Box box{middle - half, middle + half};
    if (!placer_.is_free(box)) return;
    const int lines = placer_.lines_under(box);
    if (!best || lines < best->lines_under) best = Laid{line, box, lines};
  };
  for (const double part : places_along) {
    const double to_end = std::min(part, 1 - part) * length;
    if (on_line && to_end < covered / 2 + arrow_length_mm) continue;  // on an arrow's head
    const Point on = line.from + part * (line.to - line.from);
    if (on_line) {
      consider(on);
    } else {
      consider(on + off * normal);
      consider(on - off * normal);
    }
  }
  return best;
}

std::optional<Annotator::Laid> Annotator::lay_beside(const Dimension& dimension, bool opposite,
                                                     double gap_mm) const {
  const Segment& base = opposite ? dimension.opposite_base : dimension.base;
  const double sign = opposite ? -1 : 1;
  const Point shift{sign * gap_mm * dimension.away.x, -sign * gap_mm * dimension.away.y};
  const Segment line{map_.to_mm(base.from) + shift, map_.to_mm(base.to) + shift};
  if (!within(room_.field, line.from) || !within(room_.field, line.to)) return std::nullopt;
  return with_text(line, dimension.text);
}

std::optional<Annotator::Laid> Annotator::lay(const Dimension& dimension) const {
  const bool in_place = dimension.away == Point{};
  std::optional<Laid> best;
  for (const double gap : dimension_gaps_mm) {
    for (const bool opposite : {false, true}) {
      const auto laid = lay_beside(dimension, opposite, in_place ? 0 : gap);
      if (laid && (!best || laid->lines_under < best->lines_under)) best = laid;
      if (best && best->lines_under == 0) return best;
    }
    if (in_place) break;
  }
  return best;
}

void Annotator::add(const Dimension& dimension) {
  const auto laid = lay(dimension);
  if (!laid) {  // no room for the line: the figure alone is still worth reading
    add(Caption{LayerKind::measures, dimension.measured.to, dimension.text});
    return;
  }
  DrawnLayer& measures = layer(LayerKind::measures);
  if (dimension.away != Point{}) {
    measures.strokes.push_back(
        {{map_.to_mm(dimension.measured.from), laid->line.from}, LayerKind::measures});
    measures.strokes.push_back(
        {{map_.to_mm(dimension.measured.to), laid->line.to}, LayerKind::measures});
  }
  measures.strokes.push_back({{laid->line.from, laid->line.to}, LayerKind::measures, true, true});
  placer_.block(laid->text);
  placer_.avoid({laid->line.from, laid->line.to});
  put_text(LayerKind::measures, laid->text, dimension.text, false);
}

void Annotator::put_text(LayerKind kind, const Box& box, const std::string& text, bool bold) {
  Label label{.at = {(box.low.x + box.high.x) / 2,
                     box.low.y + plate_margin_mm + text_ascent * room_.text_mm},
              .text = text,
              .size_mm = room_.text_mm,
              .anchor = Label::Anchor::middle,
              .layer = kind,
              .bold = bold,
              .plate = true};
  layer(kind).labels.push_back(std::move(label));
}

void Annotator::put_leader(const Caption& caption, Point place, const Box& box) {
  const Point end = nearest_in(box, place);
  if (geometry::distance(place, end) < leader_from_mm) return;
  layer(caption.layer).strokes.push_back({{place, end}, LayerKind::measures});
  placer_.avoid({place, end});
}

void Annotator::add(const Caption& caption) {
  const Point place = map_.to_mm(caption.at_cm);
  if (!within(room_.field, place)) return;
  const auto box =
      placer_.place(place, width_of(caption.text, caption.bold), height(), caption.where);
  if (!box) {
    result_.left_out.push_back(caption.text);
    return;
  }
  put_leader(caption, place, *box);
  put_text(caption.layer, *box, caption.text, caption.bold);
}

}  // namespace

Annotations annotate(const Sketch& sketch, const ScaleMap& map, const AnnotationField& room,
                     const std::vector<LayerKind>& hidden) {
  const auto shown = [&](LayerKind kind) { return !std::ranges::count(hidden, kind); };
  Annotator annotator(map, room);
  for (const geometry::Circle& circle : sketch.keep_clear) annotator.block(circle);
  for (const SketchLayer& layer : sketch.layers) {
    if (shown(layer.kind)) annotator.avoid(layer);
  }
  if (shown(LayerKind::measures)) {
    for (const Dimension& dimension : sketch.dimensions) annotator.add(dimension);
  }
  for (const Caption& caption : sketch.captions) {
    if (shown(caption.layer)) annotator.add(caption);
  }
  return annotator.finish();
}

}  // namespace drapewright::report
