#include "core/report/sketch_builder.h"

#include <algorithm>

namespace drapewright::report {

SketchLayer& SketchBuilder::layer(LayerKind kind) {
  const auto found = std::ranges::find(sketch_.layers, kind, &SketchLayer::kind);
  if (found != sketch_.layers.end()) return *found;
  return sketch_.layers.emplace_back(SketchLayer{kind, {}, {}});
}

void SketchBuilder::cover(const std::vector<geometry::Point>& points) {
  for (const geometry::Point p : points) {
    if (!extent_) extent_ = geometry::Box{p, p};
    extent_->low = {std::min(extent_->low.x, p.x), std::min(extent_->low.y, p.y)};
    extent_->high = {std::max(extent_->high.x, p.x), std::max(extent_->high.y, p.y)};
  }
}

void SketchBuilder::add_area(LayerKind kind, const geometry::Polygon& polygon) {
  if (polygon.outer.empty()) return;
  layer(kind).areas.push_back(polygon);
  cover(polygon.outer);
}

void SketchBuilder::add_region(LayerKind kind, const geometry::Region& region) {
  for (const geometry::Polygon& polygon : region) add_area(kind, polygon);
}

void SketchBuilder::add_chain(LayerKind kind, Chain chain) {
  cover(chain.points);
  layer(kind).chains.push_back(std::move(chain));
}

Sketch SketchBuilder::finish() {
  std::ranges::sort(sketch_.layers, {}, &SketchLayer::kind);
  if (extent_) sketch_.extent = *extent_;
  return std::move(sketch_);
}

}  // namespace drapewright::report
