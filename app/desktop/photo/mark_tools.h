#pragma once

#include "app/desktop/tools/chain_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

class PhotoDesk;

/// Marks a number of places on the photograph, then hands them over.
class MarkTool : public ChainTool {
 public:
  MarkTool(TracingDesk& desk, PhotoDesk& photo, Tool tool, std::size_t count)
      : ChainTool(desk, tool), photo_(photo), count_(count) {}

 protected:
  PhotoDesk& photo() const { return photo_; }
  virtual void marked(const geometry::Ring& places) = 0;
  void point_put() override;
  bool snaps() const override { return false; }
  void paint_drawing(QPainter& painter) const override;

 private:
  PhotoDesk& photo_;
  std::size_t count_;
};

/// Two points whose distance is known.
class LengthMarkTool : public MarkTool {
 public:
  LengthMarkTool(TracingDesk& desk, PhotoDesk& photo)
      : MarkTool(desk, photo, Tool::scale_length, 2) {}
  QString how_to() const override {
    return spoken("Click two points on the ruler in the photograph.");
  }

 protected:
  void marked(const geometry::Ring& places) override;
};

/// The four corners of a flat square of known side.
class SquareMarkTool : public MarkTool {
 public:
  SquareMarkTool(TracingDesk& desk, PhotoDesk& photo)
      : MarkTool(desk, photo, Tool::scale_square, 4) {}
  QString how_to() const override {
    return spoken("Click the four corners of the square, in any order.");
  }

 protected:
  void marked(const geometry::Ring& places) override;
};

/// Two points on the middle line of a limb.
class AxisMarkTool : public MarkTool {
 public:
  AxisMarkTool(TracingDesk& desk, PhotoDesk& photo) : MarkTool(desk, photo, Tool::limb_axis, 2) {}
  QString how_to() const override { return spoken("Click two points on the limb's middle line."); }

 protected:
  void marked(const geometry::Ring& places) override;
};

}  // namespace drapewright::desktop
