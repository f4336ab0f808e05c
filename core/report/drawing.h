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
  LayerKind layer;          ///< whose style it is drawn in
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
  bool bold = false;
  bool plate = false;  ///< on a plate of the ground's colour, to be read over hatch and lines
};

/// What belongs to one layer. All layers' areas and strokes are drawn first, bottom layer first,
/// and all labels after them, so that no hatch crosses a word.
struct DrawnLayer {
  LayerKind kind;
  std::vector<Area> areas;
  std::vector<Stroke> strokes;
  std::vector<Label> labels;
};

struct Drawing {
  double width_mm = 0;
  double height_mm = 0;
  double scale = 1;  ///< paper : wound; 0.5 is drawn at half size
  std::string title;
  std::string description;  ///< for those who cannot see it
  std::vector<DrawnLayer> layers;
};

/// Length and half-width of an arrow's head.
inline constexpr double arrow_length_mm = 2.2;
inline constexpr double arrow_half_width_mm = 0.6;

/// Of the plates behind labels.
inline constexpr double plate_opacity = 0.82;

}  // namespace drapewright::report
