#include "core/report/svg.h"

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/report/arrow_head.h"
#include "core/report/text_size.h"
#include "core/report/xml_text.h"

namespace drapewright::report {

using geometry::Point;

namespace {

std::string number(double value) { return plain_short(value, 3); }

std::string attribute(std::string_view name, const std::string& value) {
  return " " + std::string(name) + "=\"" + value + "\"";
}

std::string opacity(std::string_view name, Colour colour) {
  return colour.alpha == 255 ? "" : attribute(name, number(colour.alpha / 255.0));
}

std::string points(const std::vector<Point>& chain) {
  std::string text;
  for (const Point p : chain) {
    text += (text.empty() ? "M" : " L") + number(p.x) + " " + number(p.y);
  }
  return text;
}

std::string path_of(const geometry::Region& region) {
  std::string text;
  for (const geometry::Polygon& polygon : region) {
    text += points(polygon.outer) + " Z";
    for (const geometry::Ring& hole : polygon.holes) text += points(hole) + " Z";
  }
  return text;
}

std::string dash_array(const LayerStyle& style) {
  std::string text;
  for (const double dash : dashes_of(style.line)) {
    text += (text.empty() ? "" : ",") + number(dash * style.line_mm);
  }
  return text.empty() ? "" : attribute("stroke-dasharray", text);
}

std::string hatch_id(const LayerStyle& style) { return "hatch-" + std::string(style.id); }

bool has_pattern(Hatch hatch) { return hatch != Hatch::none; }

/// Level lines turned as the hatch asks, a cross of two, or dots: on a tile of one spacing.
std::string pattern(const LayerStyle& style, Ground ground) {
  const double s = hatch_spacing_mm;
  const std::string colour = hex(style.line_colour(ground));
  const double turn = style.hatch == Hatch::rising || style.hatch == Hatch::crossed ? -45
                      : style.hatch == Hatch::falling                               ? 45
                      : style.hatch == Hatch::vertical                              ? 90
                                                                                    : 0;
  std::string text = "<pattern" + attribute("id", hatch_id(style)) +
                     attribute("patternUnits", "userSpaceOnUse") + attribute("width", number(s)) +
                     attribute("height", number(s));
  if (turn != 0) text += attribute("patternTransform", "rotate(" + number(turn) + ")");
  text += ">";
  const std::string middle = number(s / 2);
  if (style.hatch == Hatch::dotted) {
    text += "<circle" + attribute("cx", middle) + attribute("cy", middle) +
            attribute("r", number(1.6 * hatch_line_mm)) + attribute("fill", colour) + "/>";
  } else {
    std::string lines = "M0 " + middle + " H" + number(s);
    if (style.hatch == Hatch::crossed) lines += " M" + middle + " 0 V" + number(s);
    text += "<path" + attribute("d", lines) + attribute("fill", "none") +
            attribute("stroke", colour) + attribute("stroke-width", number(hatch_line_mm)) + "/>";
  }
  return text + "</pattern>\n";
}

std::string area(const Area& area, Ground ground) {
  const LayerStyle& style = style_of(area.layer);
  const std::string path = attribute("d", path_of(area.region));
  const Colour fill = style.fill_colour(ground);
  std::string text;
  if (has_pattern(style.hatch) && fill.alpha > 0) {
    text += "<path" + path + attribute("fill", hex(fill)) + opacity("fill-opacity", fill) +
            attribute("fill-rule", "evenodd") + "/>\n";
  }
  text += "<path" + path;
  if (has_pattern(style.hatch)) {
    text += attribute("fill", "url(#" + hatch_id(style) + ")");
  } else if (fill.alpha > 0) {
    text += attribute("fill", hex(fill)) + opacity("fill-opacity", fill);
  } else {
    text += attribute("fill", "none");
  }
  return text + attribute("fill-rule", "evenodd") +
         attribute("stroke", hex(style.line_colour(ground))) +
         attribute("stroke-width", number(style.line_mm)) + dash_array(style) +
         attribute("stroke-linejoin", "round") + "/>\n";
}

std::string arrow(Point tip, Point from, const std::string& colour) {
  const geometry::Ring head = arrow_head(tip, from);
  return "<path" + attribute("d", points(head) + " Z") + attribute("fill", colour) + "/>\n";
}

std::string stroke(const Stroke& stroke, Ground ground) {
  if (stroke.points.size() < 2) return "";
  const LayerStyle& style = style_of(stroke.layer);
  const std::string colour = hex(style.line_colour(ground));
  std::string text = "<path" + attribute("d", points(stroke.points)) + attribute("fill", "none") +
                     attribute("stroke", colour) +
                     attribute("stroke-width", number(style.line_mm)) + dash_array(style) + "/>\n";
  const std::vector<Point>& chain = stroke.points;
  if (stroke.arrow_at_start) text += arrow(chain[0], chain[1], colour);
  if (stroke.arrow_at_end) text += arrow(chain.back(), chain[chain.size() - 2], colour);
  return text;
}

std::string plate(const Label& label, Ground ground) {
  const geometry::Box box = label_box(label);
  return "<rect" + attribute("x", number(box.low.x - 0.4)) +
         attribute("y", number(box.low.y - 0.2)) + attribute("width", number(box.width() + 0.8)) +
         attribute("height", number(box.height() + 0.4)) + attribute("rx", "0.6") +
         attribute("fill", hex(ground_colour(ground))) +
         attribute("fill-opacity", number(plate_opacity)) + "/>\n";
}

std::string label(const Label& label, Ground ground) {
  std::string text = label.plate ? plate(label, ground) : "";
  text += "<text" + attribute("x", number(label.at.x)) + attribute("y", number(label.at.y)) +
          attribute("font-size", number(label.size_mm)) +
          attribute("fill", hex(ink_colour(ground)));
  if (label.anchor != Label::Anchor::start) {
    text += attribute("text-anchor", label.anchor == Label::Anchor::middle ? "middle" : "end");
  }
  if (label.bold) text += attribute("font-weight", "bold");
  if (label.angle_deg != 0) {
    text += attribute("transform", "rotate(" + number(-label.angle_deg) + " " + number(label.at.x) +
                                       " " + number(label.at.y) + ")");
  }
  return text + ">" + xml_text(label.text) + "</text>\n";
}

std::string group(const std::string& id, const std::string& classes, const std::string& content) {
  if (content.empty()) return "";
  return "<g" + attribute("id", id) + attribute("class", classes) + ">\n" + content + "</g>\n";
}

std::string shapes_of(const DrawnLayer& layer, Ground ground) {
  std::string text;
  for (const Area& part : layer.areas) text += area(part, ground);
  for (const Stroke& part : layer.strokes) text += stroke(part, ground);
  return text;
}

std::string head_of(const Drawing& drawing) {
  const std::string width = number(drawing.width_mm), height = number(drawing.height_mm);
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg" +
         attribute("xmlns", "http://www.w3.org/2000/svg") + attribute("version", "1.1") +
         attribute("width", width + "mm") + attribute("height", height + "mm") +
         attribute("viewBox", "0 0 " + width + " " + height) +
         attribute("font-family", "Helvetica, Arial, 'DejaVu Sans', sans-serif") + ">\n<title>" +
         xml_text(drawing.title) + "</title>\n<desc>" + xml_text(drawing.description) + "</desc>\n";
}

}  // namespace

std::string to_svg(const Drawing& drawing, Ground ground) {
  std::string text = head_of(drawing) + "<defs>\n";
  for (const LayerStyle& style : layer_styles()) {
    if (has_pattern(style.hatch)) text += pattern(style, ground);
  }
  text += "</defs>\n<rect" + attribute("width", number(drawing.width_mm)) +
          attribute("height", number(drawing.height_mm)) +
          attribute("fill", hex(ground_colour(ground))) + "/>\n";
  for (const DrawnLayer& layer : drawing.layers) {
    const std::string id(style_of(layer.kind).id);
    text += group(id, id, shapes_of(layer, ground));
  }
  for (const DrawnLayer& layer : drawing.layers) {
    const std::string id(style_of(layer.kind).id);
    std::string words;
    for (const Label& part : layer.labels) words += label(part, ground);
    text += group(id + "-words", id + " words", words);
  }
  return text + "</svg>\n";
}

}  // namespace drapewright::report
