#pragma once

#include <gtest/gtest.h>

#include "core/report/drawing.h"
#include "core/report/text_size.h"

namespace drapewright::report {

/// Every label lies on the sheet, and no two labels' boxes overlap.
inline void expect_readable(const Drawing& drawing, const std::string& name) {
  std::vector<std::pair<geometry::Box, std::string>> boxes;
  for (const DrawnLayer& layer : drawing.layers) {
    for (const Label& label : layer.labels) boxes.emplace_back(label_box(label), label.text);
  }
  constexpr double hair = 1e-9;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const auto& [a, text] = boxes[i];
    EXPECT_GE(a.low.x, 0) << name << ": " << text;
    EXPECT_GE(a.low.y, 0) << name << ": " << text;
    EXPECT_LE(a.high.x, drawing.width_mm) << name << ": " << text;
    EXPECT_LE(a.high.y, drawing.height_mm) << name << ": " << text;
    for (std::size_t j = 0; j < i; ++j) {
      const auto& [b, other] = boxes[j];
      const bool apart = a.low.x >= b.high.x - hair || b.low.x >= a.high.x - hair ||
                         a.low.y >= b.high.y - hair || b.low.y >= a.high.y - hair;
      EXPECT_TRUE(apart) << name << ": \"" << text << "\" lies over \"" << other << "\"";
    }
  }
}

inline const DrawnLayer* find_layer(const Drawing& drawing, LayerKind kind) {
  for (const DrawnLayer& layer : drawing.layers) {
    if (layer.kind == kind) return &layer;
  }
  return nullptr;
}

inline bool has_text(const Drawing& drawing, const std::string& text) {
  for (const DrawnLayer& layer : drawing.layers) {
    for (const Label& label : layer.labels) {
      if (label.text == text) return true;
    }
  }
  return false;
}

}  // namespace drapewright::report
