#include "core/report/section_sketch.h"

#include <algorithm>
#include <set>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/sketch_builder.h"

namespace drapewright::report {
namespace {

using dressing::Section;
using geometry::Point;
using geometry::Span;

// Heights above the skin and depths below it, in cm, of what is thinner than can be drawn.
constexpr double skin_cm = 0.35;
constexpr double film_low_cm = 0.1, film_high_cm = 0.22;
constexpr double bridge_low_cm = 0.3, bridge_high_cm = 0.8;
constexpr double over_bridge_cm = bridge_high_cm + 0.1 - film_low_cm;  ///< the film's rise there
constexpr double port_cm = 0.35;
constexpr double zone_cm = 0.12;
constexpr double border_line_cm = 1.0;  ///< height of the border's dimension line
constexpr double room_cm = 1.6;         ///< above the skin, for words

geometry::Polygon box(const Span& span, double low_cm, double high_cm) {
  return {{{span.from_cm, low_cm},
           {span.to_cm, low_cm},
           {span.to_cm, high_cm},
           {span.from_cm, high_cm}},
          {}};
}

/// What is left of the spans once the others are taken out. Both in order, without overlaps.
std::vector<Span> without(const std::vector<Span>& spans, const std::vector<Span>& taken) {
  std::vector<Span> left;
  for (Span span : spans) {
    for (const Span& hole : taken) {
      if (hole.to_cm <= span.from_cm || hole.from_cm >= span.to_cm) continue;
      if (hole.from_cm > span.from_cm) left.push_back({span.from_cm, hole.from_cm});
      span.from_cm = hole.to_cm;
    }
    if (span.length_cm() > 0) left.push_back(span);
  }
  return left;
}

template <typename Item>
std::vector<Span> spans_of(const std::vector<Item>& items) {
  std::vector<Span> spans;
  for (const Item& item : items) spans.push_back(item.span);
  std::ranges::sort(spans, {}, &Span::from_cm);
  return spans;
}

class SectionSketcher {
 public:
  SectionSketcher(const Section& section, double border_cm)
      : section_(section), border_cm_(border_cm) {
    std::set<std::string> wounds;
    for (const Section::Cavity& cavity : section.cavities) wounds.insert(cavity.wound);
    several_wounds_ = wounds.size() > 1;
  }

  Sketch sketch() {
    add_skin();
    for (const Section::Cavity& cavity : section_.cavities) add_cavity(cavity);
    for (const Section::Pocket& pocket : section_.pockets) add_pocket(pocket);
    for (const Section::Filler& piece : section_.filler) add_filler(piece);
    add_film();
    for (const Section::Bridge& bridge : section_.bridges) add_bridge(bridge);
    add_port();
    for (const Section::BorderSide& side : section_.borders) add_border(side);
    add_zones(LayerKind::no_film_zone, section_.no_film, say("no film here"));
    add_zones(LayerKind::no_port_zone, section_.no_port, say("no port here"));
    add_ends();
    return builder_.finish();
  }

 private:
  void add_skin() {
    const std::vector<Span> whole{{0, section_.length_cm}};
    for (const Span& span : without(whole, spans_of(section_.cavities))) {
      builder_.add_area(LayerKind::skin, box(span, -skin_cm, 0));
    }
  }

  void add_cavity(const Section::Cavity& cavity) {
    geometry::Ring ring;
    for (const Point& p : cavity.floor) ring.push_back({p.x, -p.y});
    builder_.add_area(LayerKind::wound, {ring, {}});
    const double middle = (cavity.span.from_cm + cavity.span.to_cm) / 2;
    std::string text = several_wounds_ ? say("wound {1}", {cavity.wound}) + ", " : "";
    text += cavity.depth_given ? say("depth {1} cm", {format_short(cavity.depth_cm, 2)})
                               : say("depth not given");
    builder_.add_caption({LayerKind::wound, {middle, -cavity.depth_cm}, text});
  }

  void add_pocket(const Section::Pocket& pocket) {
    builder_.add_area(LayerKind::undermining, box(pocket.span, -pocket.bottom_cm, -pocket.top_cm));
    builder_.add_caption(
        {LayerKind::undermining,
         {pocket.span.to_cm, -(pocket.top_cm + pocket.bottom_cm) / 2},
         say("undermined by {1} cm here", {format_number(pocket.span.length_cm(), 1)})});
  }

  void add_filler(const Section::Filler& piece) {
    const LayerKind kind = piece.layer == 1 ? LayerKind::filler : LayerKind::deeper_filler;
    builder_.add_area(kind, box(piece.span, -piece.bottom_cm, -piece.top_cm));
    const Point middle{(piece.span.from_cm + piece.span.to_cm) / 2,
                       -(piece.top_cm + piece.bottom_cm) / 2};
    std::string text = piece_name(piece.wound, piece.layer, piece.piece, several_wounds_) + ": " +
                       format_short(piece.bottom_cm - piece.top_cm, 2) + " cm";
    if (piece.thinned) text += ", " + say("thinned");
    builder_.add_caption({LayerKind::filler, middle, text, Caption::Where::on, true});
  }

  void add_film() {
    const std::vector<Span> closed = without(section_.film, section_.apertures);
    const std::vector<Span> raised = spans_of(section_.bridges);
    for (const Span& span : without(closed, raised)) {
      builder_.add_area(LayerKind::film, box(span, film_low_cm, film_high_cm));
    }
    for (const Span& bridge : raised) {
      for (const Span& span : closed) {
        const Span over{std::max(span.from_cm, bridge.from_cm), std::min(span.to_cm, bridge.to_cm)};
        if (over.length_cm() <= 0) continue;
        builder_.add_area(LayerKind::film,
                          box(over, film_low_cm + over_bridge_cm, film_high_cm + over_bridge_cm));
      }
    }
    for (const Span& span : section_.film) {
      builder_.add_caption({LayerKind::film, {span.from_cm, film_high_cm}, say("film")});
    }
  }

  void add_bridge(const Section::Bridge& bridge) {
    builder_.add_area(LayerKind::bridge, box(bridge.span, bridge_low_cm, bridge_high_cm));
    for (const Span& span : bridge.protection) {
      builder_.add_area(LayerKind::skin_protection, box(span, film_low_cm, film_high_cm));
    }
    builder_.add_caption({LayerKind::bridge,
                          {(bridge.span.from_cm + bridge.span.to_cm) / 2, bridge_high_cm},
                          say("bridge")});
  }

  bool on_bridge(const Span& span) const {
    const double middle = (span.from_cm + span.to_cm) / 2;
    return std::ranges::any_of(section_.bridges, [&](const Section::Bridge& bridge) {
      return bridge.span.from_cm < middle && middle < bridge.span.to_cm;
    });
  }

  void add_port() {
    for (const Span& base : section_.port_bases) {
      const double low = film_high_cm + (on_bridge(base) ? over_bridge_cm : 0);
      for (const Span& span : without({base}, section_.apertures)) {
        builder_.add_area(LayerKind::port_base, box(span, low, low + port_cm));
      }
      builder_.add_caption({LayerKind::port_base, {base.to_cm, low + port_cm}, say("port")});
    }
    for (const Span& hole : section_.apertures) {
      const double low = film_low_cm + (on_bridge(hole) ? over_bridge_cm : 0);
      for (const double side : {hole.from_cm, hole.to_cm}) {
        builder_.add_chain(LayerKind::aperture, {{{side, low}, {side, low + 2 * port_cm}}, false});
      }
      builder_.add_caption({LayerKind::aperture,
                            {(hole.from_cm + hole.to_cm) / 2, low + 2 * port_cm},
                            say("aperture {1} cm here", {format_number(hole.length_cm(), 1)})});
    }
  }

  void add_border(const Section::BorderSide& side) {
    const geometry::Segment line{{side.span.from_cm, border_line_cm},
                                 {side.span.to_cm, border_line_cm}};
    std::string text = border_in_words(side.span.length_cm());
    if (side.span.length_cm() < border_cm_ - 0.005) {
      text = say("{1} of {2} cm", {text, format_short(border_cm_, 2)});
    }
    builder_.add_dimension({line, line, line, {}, text});
    for (const double x : {side.span.from_cm, side.span.to_cm}) {
      builder_.add_chain(LayerKind::measures, {{{x, 0}, {x, border_line_cm}}, false});
    }
  }

  void add_zones(LayerKind kind, const std::vector<Span>& spans, const std::string& text) {
    for (const Span& span : spans) {
      builder_.add_area(kind, box(span, -skin_cm, zone_cm));
      builder_.add_caption({kind, {(span.from_cm + span.to_cm) / 2, -skin_cm}, text});
    }
  }

  /// The ends of the line, and room above and below for words.
  void add_ends() {
    builder_.add_caption({LayerKind::clock, {0, room_cm}, "A", Caption::Where::on, true});
    builder_.add_caption(
        {LayerKind::clock, {section_.length_cm, room_cm}, "B", Caption::Where::on, true});
    for (const double x : {0.0, section_.length_cm}) {
      builder_.add_chain(LayerKind::measures, {{{x, -skin_cm}, {x, room_cm}}, false});
    }
  }

  const Section& section_;
  double border_cm_;
  bool several_wounds_ = false;
  SketchBuilder builder_;
};

}  // namespace

Sketch sketch_section(const dressing::Section& section, double border_cm) {
  return SectionSketcher(section, border_cm).sketch();
}

std::vector<std::string> section_notes(const dressing::Section& section) {
  std::vector<std::string> notes;
  if (section.misses_the_wounds()) notes.push_back(say("No wound lies on this line."));
  std::set<std::string> unmeasured;
  for (const auto& cavity : section.cavities) {
    if (!cavity.depth_given) unmeasured.insert(cavity.wound);
  }
  for (const std::string& wound : unmeasured) {
    notes.push_back(
        say("Wound {1}: no depth is given; it is drawn as deep as its filler.", {wound}));
  }
  if (!section.pockets.empty()) {
    notes.push_back(
        say("How high a pocket is was not measured: it is drawn as high as the lowest layer."));
  }
  notes.push_back(say("Film, bridge, port and skin are drawn thicker than they are."));
  if (!section.borders.empty()) {
    notes.push_back(
        say("Borders are along the line: where it meets the edge aslant they are longer."));
  }
  return notes;
}

}  // namespace drapewright::report
