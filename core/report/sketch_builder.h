#pragma once

#include <optional>

#include "core/report/sketch.h"

namespace drapewright::report {

/// Gathers a sketch layer by layer. An inner tool of `sketch_case` and `sketch_plan`.
class SketchBuilder {
 public:
  void add_area(LayerKind kind, const geometry::Polygon& polygon);
  void add_region(LayerKind kind, const geometry::Region& region);
  void add_chain(LayerKind kind, Chain chain);
  void add_caption(Caption caption) { sketch_.captions.push_back(std::move(caption)); }
  void add_dimension(Dimension dimension) { sketch_.dimensions.push_back(std::move(dimension)); }
  void keep_clear(geometry::Circle circle) { sketch_.keep_clear.push_back(circle); }
  void set_clock(double direction_deg, practice::Twelve twelve) {
    sketch_.head_direction_deg = direction_deg;
    sketch_.twelve = twelve;
  }

  void set_piece_example(std::string text) { sketch_.piece_example = std::move(text); }

  /// Layers bottom first; empty ones are left out.
  Sketch finish();

 private:
  SketchLayer& layer(LayerKind kind);
  void cover(const std::vector<geometry::Point>& points);

  Sketch sketch_;
  std::optional<geometry::Box> extent_;
};

}  // namespace drapewright::report
