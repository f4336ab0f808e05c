#pragma once

#include <string>
#include <vector>

#include "core/geometry/measures.h"
#include "core/report/paper.h"

namespace drapewright::report {

struct TextLook {
  double size_mm = page_text_mm;
  bool bold = false;
  Label::Anchor anchor = Label::Anchor::start;
};

/// From one baseline to the next, in text sizes.
inline constexpr double line_pitch = 1.4;

/// A sheet of paper that is being filled. All places in mm, y down; text stands on its baseline
/// where a point is given, and below it where an upper left corner is given.
class Page {
 public:
  explicit Page(DrawingSize size);

  const DrawingSize& size() const { return size_; }

  void line(std::vector<geometry::Point> points, LayerKind kind = LayerKind::panel);
  void arrow(geometry::Point from, geometry::Point to, LayerKind kind = LayerKind::panel);
  void box(const geometry::Box& box, LayerKind kind = LayerKind::panel);
  void area(const geometry::Polygon& polygon, LayerKind kind);
  /// An empty box to tick, standing on the baseline.
  void tick_box(geometry::Point at);
  void text(geometry::Point at, std::string words, const TextLook& look = {});
  /// Wrapped words below `upper_left`. @returns where the next line may begin
  double paragraph(geometry::Point upper_left, double width_mm, const std::string& words,
                   const TextLook& look = {});
  /// A drawing made elsewhere, its upper left corner at a place.
  void insert(const Drawing& drawing, geometry::Point upper_left);

  /// The page as a drawing, layers in their order.
  Drawing finish(std::string title, std::string description);

 private:
  DrawnLayer& layer(LayerKind kind);

  DrawingSize size_;
  Drawing drawing_;
};

/// The height of a paragraph in that width.
double paragraph_height(double width_mm, const std::string& words, const TextLook& look = {});

/// How a page is headed.
struct PageHeading {
  std::string kind;  ///< "Plan sheet"
  std::string case_line;
};

/// Heading and foot with who decides. @returns the room between them
geometry::Box frame(Page& page, const PageHeading& heading);

/// Writes "page 2 of 5" on every page of a document, in the corner that `frame` leaves free.
void number_pages(Document& document);

/// "Leg 1, assessed 2031-03-01, printed 2031-03-02".
std::string case_line(const std::string& label, const std::string& assessed,
                      const std::string& today);

}  // namespace drapewright::report
