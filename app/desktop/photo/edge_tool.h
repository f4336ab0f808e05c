#pragma once

#include <memory>

#include "app/desktop/jobs/worker.h"
#include "app/desktop/tools/chain_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

class EdgeFinder;
class PhotoDesk;

/// An outline along the strongest edge in the photograph: between two clicks the line follows it.
/// What it follows is shown before it is taken, and a click where it strays leads it back.
class EdgeTool : public ChainTool {
 public:
  EdgeTool(TracingDesk& desk, PhotoDesk& photo);
  ~EdgeTool() override;
  QString how_to() const override {
    return spoken("Click along the edge; the line follows it. Enter closes.");
  }
  /// Whether the edge from the last click is still being looked for.
  bool is_looking() const { return worker_.is_busy(); }

 protected:
  void point_put() override;
  void finish() override;
  bool take_back() override;
  void give_up() override;
  bool snaps() const override { return false; }
  void paint_drawing(QPainter& painter) const override;
  QStringList words() const override;

 private:
  void look_from(geometry::Point cm);
  /// Along the edge from the last click; straight while it is being looked for.
  geometry::Ring way_between(geometry::Point from, geometry::Point to) const;
  /// Where a place lies in the picture, across and down, 0 to 1.
  QPointF share_of(geometry::Point cm) const;
  geometry::Point to_cm(QPoint pixel) const;

  PhotoDesk& photo_;
  Worker worker_;
  std::shared_ptr<EdgeFinder> finder_;
  qint64 finder_of_ = 0;              ///< the picture that it was made for
  bool ready_ = false;                ///< paths may be asked for
  std::vector<geometry::Ring> ways_;  ///< between clicks, those that were taken
};

}  // namespace drapewright::desktop
