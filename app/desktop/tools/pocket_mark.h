#pragma once

#include <cstddef>

#include "app/desktop/canvas/canvas_tool.h"

namespace drapewright::desktop {

class PlanView;

/// Marks the undermined range or the tunnel that is chosen in its table: a broad line round it,
/// over everything else.
class PocketMark : public CanvasTool {
 public:
  explicit PocketMark(PlanView& view) : view_(view) {}

  /// @param row of the wound's list; -1: none
  void mark_range(std::size_t wound, int row) { mark({Kind::range, wound, row}); }
  void mark_tunnel(std::size_t wound, int row) { mark({Kind::tunnel, wound, row}); }

  void paint(QPainter& painter, std::optional<int> focused) const override;

 private:
  enum class Kind { range, tunnel };
  struct Chosen {
    Kind kind = Kind::range;
    std::size_t wound = 0;
    int row = -1;
  };
  void mark(const Chosen& chosen);

  PlanView& view_;
  Chosen chosen_;
};

}  // namespace drapewright::desktop
