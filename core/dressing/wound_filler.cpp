#include "core/dressing/wound_filler.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/filler_stock.h"
#include "core/dressing/pockets.h"
#include "core/dressing/slices.h"
#include "core/geometry/circle.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/validity.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

class WoundFiller {
 public:
  WoundFiller(const PreparedWound& prepared, const wound::Case& value, FindingList& findings)
      : prepared_(prepared), wound_(*prepared.wound), case_(value), findings_(findings) {}

  std::vector<Layer> layers() {
    const Slicing slicing =
        slice_depth(wound_.depth_cm, settings().filler_thickness_cm,
                    practice::limit("thinnest_layer_cm").standard, filler_to_cut_from(case_));
    std::vector<Layer> made;
    for (const Slice& slice : slicing.slices) {
      const bool lowest = &slice == &slicing.slices.back();
      std::optional<Layer> layer = cut(slice, static_cast<int>(made.size()) + 1, lowest);
      if (!layer) break;  // nothing fits below a layer that vanished
      made.push_back(std::move(*layer));
    }
    report(slicing);
    return made;
  }

 private:
  const wound::DressingSettings& settings() const { return case_.dressing; }

  double run_in_at(const Slice& slice) const {
    if (wound_.depth_cm <= 0) return 0;
    return wound_.wall_run_in_cm * std::min(1.0, slice.bottom_cm() / wound_.depth_cm);
  }

  /// The cut, from the plain outline or from the one that pockets widen.
  geometry::Offset outline_at(double run_in_cm, bool into_pockets) const {
    if (!into_pockets) return geometry::inset(*prepared_.map, settings().inset_cm + run_in_cm);
    const auto widened = undermined_outline(prepared_, run_in_cm, case_.head_direction_deg);
    if (!widened) return {.doubt = say("the pockets' outline could not be verified")};
    if (widened->empty()) return {.verified = true};
    return geometry::inset(*widened, settings().inset_cm);
  }

  std::optional<Layer> cut(const Slice& slice, int index, bool lowest) {
    const double run_in_cm = run_in_at(slice);
    const bool into_pockets = lowest && !wound_.undermining.empty();
    geometry::Offset offset = outline_at(run_in_cm, into_pockets);
    if (!offset.verified) {
      report_doubt(offset.doubt, index);
      return std::nullopt;
    }
    std::erase_if(offset.region, geometry::is_thread);
    if (offset.region.empty()) {
      index == 1 ? report_no_filler(run_in_cm) : report_vanished(slice, index);
      return std::nullopt;
    }
    // Pieces in the order of their size, so that "piece 1" is the main one.
    std::ranges::stable_sort(offset.region, std::ranges::greater{},
                             [](const auto& piece) { return geometry::area(piece); });
    return Layer{.wound = wound_.id,
                 .index = index,
                 .top_cm = slice.top_cm,
                 .thickness_cm = slice.thickness_cm,
                 .sheet_thickness_cm = slice.sheet_thickness_cm,
                 .inset_cm = settings().inset_cm + run_in_cm,
                 .reaches_into_pockets = into_pockets,
                 .pieces = std::move(offset.region)};
  }

  void add(Severity severity, std::string code, std::string text, std::string source,
           std::optional<geometry::Point> where = {}) {
    findings_.add({.severity = severity,
                   .code = std::move(code),
                   .text = std::move(text),
                   .source = std::move(source),
                   .wound = wound_.id,
                   .where_cm = where});
  }

  geometry::Point middle() const { return geometry::centroid(prepared_.shape); }

  void report(const Slicing& slicing) {
    if (wound_.depth_cm <= 0) {
      add(Severity::note, "depth-not-given",
          say("No depth is given: one layer of the thinnest sheet is planned. Measure the deepest "
              "point; a deeper wound takes more."),
          own_rule());
    }
    if (slicing.left_out_cm > 0) {
      add(Severity::note, "last-layer-left-out",
          say("The lowest {1} cm get no layer of their own: filler cannot be cut that thin. Check "
              "that what is above reaches the bed when it is drawn down; if not, use a thicker "
              "sheet.",
              {format_short(slicing.left_out_cm, 2)}),
          source_of_limit("thinnest_layer_cm"));
    }
    if (!slicing.thickness_in_stock) {
      add(Severity::warning, "no-sheet-of-thickness",
          say("No filler sheet of {1} cm or thinner is in stock.",
              {format_short(settings().filler_thickness_cm, 2)}),
          own_rule());
    }
  }

  void report_doubt(const std::string& doubt, int index) {
    add(Severity::stop, "fill-not-verified",
        say("The cut of layer {1} did not pass its own check ({2}) and is not shown. Trace the "
            "outline again, or change the inset slightly.",
            {index, doubt}),
        own_rule(), middle());
  }

  void report_no_filler(double run_in_cm) {
    const auto circle = geometry::largest_inscribed_circle(prepared_.shape);
    const double room_cm = circle ? circle->radius_cm : 0;
    // Down to a whole millimetre, and a millimetre less so that something is left to cut.
    const double advised_cm = std::floor((room_cm - run_in_cm - 0.1) * 10 + 1e-9) / 10;
    std::string text =
        say("No filler fits at an inset of {1} cm: at its widest the wound leaves {2} cm to its "
            "edge.",
            {format_short(settings().inset_cm + run_in_cm, 2), format_number(room_cm, 2)}) +
        " ";
    text += advised_cm >= 0 ? say("An inset of {1} cm or less fits.", {format_short(advised_cm, 1)})
                            : say("No inset fits; ask how this wound is to be dressed.");
    add(Severity::stop, "no-filler-fits", text, source_of_limit("inset_cm"),
        circle ? circle->centre : middle());
  }

  void report_vanished(const Slice& slice, int index) {
    add(Severity::warning, "layer-vanishes",
        say("The wall closes in: below {1} cm no filler fits at layer {2}. The bed there stays "
            "without filler.",
            {format_short(slice.top_cm, 2), index}),
        own_rule(), middle());
  }

  const PreparedWound& prepared_;
  const wound::Wound& wound_;
  const wound::Case& case_;
  FindingList& findings_;
};

}  // namespace

std::vector<Layer> fill_wound(const PreparedWound& wound, const wound::Case& value,
                              FindingList& findings) {
  return WoundFiller(wound, value, findings).layers();
}

}  // namespace drapewright::dressing
