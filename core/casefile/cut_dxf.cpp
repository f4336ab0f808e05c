#include <algorithm>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/casefile/exchange.h"
#include "core/dressing/placed_seams.h"

namespace drapewright::casefile {
namespace {

using dressing::CutSheet;
using dressing::Placement;
using geometry::Point;
using geometry::Ring;

constexpr double between_sheets_mm = 20;

/// Writes DXF's pairs: a group code on one line, its value on the next.
class DxfWriter {
 public:
  void group(int code, std::string_view value) {
    out_ += std::to_string(code) + "\r\n";
    out_ += value;
    out_ += "\r\n";
  }
  void number(int code, int value) { group(code, std::to_string(value)); }
  void length(int code, double mm) { group(code, plain_number(mm, 4)); }

  void point(Point mm) {
    length(10, mm.x);
    length(20, mm.y);
    length(30, 0);
  }

  void polyline(std::string_view layer, const Ring& points_mm, bool closed) {
    group(0, "POLYLINE");
    group(8, layer);
    number(66, 1);  // vertices follow
    point({});
    number(70, closed ? 1 : 0);
    for (const Point p : points_mm) {
      group(0, "VERTEX");
      group(8, layer);
      point(p);
    }
    group(0, "SEQEND");
    group(8, layer);
  }

  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

/// Points of a sheet as they lie in the drawing.
Ring to_mm(Ring points, double left_mm) {
  for (Point& p : points) p = {left_mm + 10 * p.x, 10 * p.y};
  return points;
}

class CutDrawing {
 public:
  explicit CutDrawing(const dressing::Plan& plan) : plan_(plan) {
    for (const auto* layout : {&plan.cut_layout, &plan.film_layout}) {
      for (const CutSheet& sheet : *layout) sheets_.push_back(&sheet);
    }
  }

  std::string write() {
    if (sheets_.empty()) {
      throw InputError(say("the plan cuts no sheet"), say("a case with filler to cut"));
    }
    dxf_.group(999, "1 unit = 1 mm; cut along CUT, SEAM marks where parts of one piece meet");
    write_header();
    write_tables();
    begin_section("ENTITIES");
    double left_mm = 0;
    for (const CutSheet* sheet : sheets_) {
      write_sheet(*sheet, left_mm);
      left_mm += 10 * sheet->length_cm + between_sheets_mm;
    }
    end_section();
    dxf_.group(0, "EOF");
    return dxf_.take();
  }

 private:
  void begin_section(std::string_view name) {
    dxf_.group(0, "SECTION");
    dxf_.group(2, name);
  }
  void end_section() { dxf_.group(0, "ENDSEC"); }

  void write_header() {
    double right_mm = -between_sheets_mm, top_mm = 0;
    for (const CutSheet* sheet : sheets_) {
      right_mm += between_sheets_mm + 10 * sheet->length_cm;
      top_mm = std::max(top_mm, 10 * sheet->width_cm);
    }
    begin_section("HEADER");
    dxf_.group(9, "$ACADVER");
    dxf_.group(1, "AC1009");
    dxf_.group(9, "$EXTMIN");
    dxf_.point({});
    dxf_.group(9, "$EXTMAX");
    dxf_.point({right_mm, top_mm});
    end_section();
  }

  void begin_table(std::string_view name, int entries) {
    dxf_.group(0, "TABLE");
    dxf_.group(2, name);
    dxf_.number(70, entries);
  }

  void write_tables() {
    begin_section("TABLES");
    begin_table("LTYPE", 1);
    dxf_.group(0, "LTYPE");
    dxf_.group(2, "CONTINUOUS");
    dxf_.number(70, 0);
    dxf_.group(3, "Solid line");
    dxf_.number(72, 65);  // the letter A, as the format asks
    dxf_.number(73, 0);
    dxf_.length(40, 0);
    dxf_.group(0, "ENDTAB");
    begin_table("LAYER", 3);
    write_layer("SHEET", 8);
    write_layer("CUT", 7);
    write_layer("SEAM", 5);
    dxf_.group(0, "ENDTAB");
    end_section();
  }

  void write_layer(std::string_view name, int colour) {
    dxf_.group(0, "LAYER");
    dxf_.group(2, name);
    dxf_.number(70, 0);
    dxf_.number(62, colour);
    dxf_.group(6, "CONTINUOUS");
  }

  void write_sheet(const CutSheet& sheet, double left_mm) {
    const Ring edge{
        {0, 0}, {sheet.length_cm, 0}, {sheet.length_cm, sheet.width_cm}, {0, sheet.width_cm}};
    dxf_.polyline("SHEET", to_mm(edge, left_mm), true);
    for (const Placement& placement : sheet.placements) {
      dxf_.polyline("CUT", to_mm(placement.outline_cm.outer, left_mm), true);
      for (const Ring& hole : placement.outline_cm.holes) {
        dxf_.polyline("CUT", to_mm(hole, left_mm), true);
      }
      for (const geometry::Segment& seam : dressing::placed_seams(plan_.fill, placement)) {
        dxf_.polyline("SEAM", to_mm(Ring{seam.from, seam.to}, left_mm), false);
      }
    }
  }

  const dressing::Plan& plan_;
  std::vector<const CutSheet*> sheets_;
  DxfWriter dxf_;
};

}  // namespace

std::string cut_dxf(const dressing::Plan& plan) { return CutDrawing(plan).write(); }

}  // namespace drapewright::casefile
