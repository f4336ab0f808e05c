#include <algorithm>

#include "core/casefile/json_writer.h"
#include "core/casefile/layout_json.h"

namespace drapewright::casefile {
namespace {

class LayoutWriter {
 public:
  explicit LayoutWriter(const LayoutAnswer& answer) : answer_(answer) {}

  std::string text() {
    const auto& layout = answer_.layout;
    out_.begin_object();
    out_.begin_list("sheets");
    for (const auto& sheet : layout.sheets) write(sheet);
    out_.end_list();
    out_.begin_list("unplaced");
    for (const int piece : unplaced()) out_.number(piece);
    out_.end_list();
    if (!answer_.job.seams.empty()) write_seams();
    out_.number("cost", layout.cost);
    out_.number("density_percent", layout.density_percent);
    out_.number("bound", layout.bound);
    out_.boolean("proven_best", layout.proven_best());
    out_.number("off_cut_cm2", layout.off_cut_cm2);
    out_.number("seconds", answer_.seconds);
    out_.end_object();
    return out_.take();
  }

 private:
  int piece_of(int placed) const { return answer_.job.piece_of[static_cast<std::size_t>(placed)]; }
  /// Which of the parts of its piece, from 0; nothing where the piece was not split.
  std::optional<int> part_of(int placed) const {
    const auto& of = answer_.job.piece_of;
    const int piece = piece_of(placed);
    if (std::count(of.begin(), of.end(), piece) < 2) return {};
    return placed - static_cast<int>(std::find(of.begin(), of.end(), piece) - of.begin());
  }
  std::vector<int> unplaced() const {
    std::vector<int> result;
    for (const int placed : answer_.layout.unplaced) {
      if (result.empty() || result.back() != piece_of(placed)) result.push_back(piece_of(placed));
    }
    return result;
  }
  void write(const cutting::CutSheet& sheet) {
    out_.begin_object();
    out_.number("length_cm", sheet.length_cm);
    out_.number("width_cm", sheet.width_cm);
    out_.number("unit_cost", sheet.unit_cost);
    out_.begin_object("off_cut_cm");
    out_.name("low");
    out_.point(sheet.off_cut_cm.low);
    out_.name("high");
    out_.point(sheet.off_cut_cm.high);
    out_.end_object();
    out_.begin_list("placements");
    for (const auto& placement : sheet.placements) write(placement);
    out_.end_list();
    out_.end_object();
  }
  void write(const cutting::Placement& placement) {
    out_.begin_object();
    out_.number("piece", piece_of(placement.piece));
    if (const auto part = part_of(placement.piece)) out_.number("part", *part);
    out_.number("angle_deg", placement.angle_deg);
    out_.begin_object("outline_cm");
    out_.name("outer");
    out_.ring(placement.outline_cm.outer, false);
    out_.begin_list("holes");
    for (const auto& hole : placement.outline_cm.holes) out_.ring(hole, false);
    out_.end_list();
    out_.end_object();
    out_.end_object();
  }
  void write_seams() {
    out_.begin_list("seams");
    for (const auto& seam : answer_.job.seams) {
      out_.begin_object();
      out_.number("piece", seam.piece);
      out_.name("line_cm");
      out_.ring({seam.line_cm.from, seam.line_cm.to}, false);
      out_.end_object();
    }
    out_.end_list();
  }

  const LayoutAnswer& answer_;
  JsonWriter out_;
};

}  // namespace

std::string layout_to_json(const LayoutAnswer& answer) { return LayoutWriter(answer).text(); }

}  // namespace drapewright::casefile
