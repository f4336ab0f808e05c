#pragma once

#include <string>
#include <vector>

#include "core/geometry/shape.h"
#include "core/report/layer_style.h"

namespace drapewright::report {

/// A drawing in mm on paper or screen, y pointing down, made of a few primitives so that every
/// painter (SVG text, QPainter) draws the same.
struct Area {
  geometry::Region region;  ///< mm
  LayerKind layer;
};
struct Stroke {
  std::vector<geometry::Point> points;  ///< mm, open chain
  LayerKind layer;
  bool arrow_at_start = false;
  bool arrow_at_end = false;
};
struct Label {
  geometry::Point at;  ///< mm, baseline
  std::string text;    ///< UTF-8
  double size_mm = 3;
  enum class Anchor { start, middle, end } anchor = Anchor::start;
  double angle_deg = 0;  ///< counter-clockwise as seen
  LayerKind layer;
};

/// The primitives of one layer, drawn in the order: areas, strokes, labels.
struct DrawnLayer {
  LayerKind kind;
  std::vector<Area> areas;
  std::vector<Stroke> strokes;
  std::vector<Label> labels;
};

struct Drawing {
  double width_mm = 0;
  double height_mm = 0;
  std::string title;
  std::string description;  ///< for those who cannot see it
  std::vector<DrawnLayer> layers;
};

}  // namespace drapewright::report
