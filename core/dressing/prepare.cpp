#include "core/dressing/prepare.h"

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/circle.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/validity.h"

namespace drapewright::dressing {
namespace {

std::string mending_in_words(const geometry::Tidied& tidied) {
  const std::string spikes = count_of(tidied.spikes_removed, "spike", "spikes");
  const std::string parts = count_of(static_cast<int>(tidied.region.size()), "part", "parts");
  if (!tidied.split) {
    return say("The outline was mended before planning: {1} without width cut off.", {spikes});
  }
  if (tidied.spikes_removed == 0) {
    return say("The outline was mended before planning: it touches itself and was taken as {1}.",
               {parts});
  }
  return say(
      "The outline was mended before planning: {1} without width cut off; it touches itself "
      "and was taken as {2}.",
      {spikes, parts});
}

void report_mending(const geometry::Tidied& tidied, const wound::Wound& wound,
                    FindingList& findings) {
  if (tidied.spikes_removed == 0 && !tidied.split) return;
  findings.add({.severity = Severity::note,
                .code = "outline-mended",
                .text = mending_in_words(tidied) + " " + say("Its area is unchanged."),
                .source = own_rule(),
                .wound = wound.id,
                .where_cm = tidied.where});
}

/// Wounds drawn over each other would be filled twice.
void report_overlaps(const std::vector<PreparedWound>& wounds, FindingList& findings) {
  std::vector<geometry::Box> boxes;
  for (const PreparedWound& w : wounds) {
    boxes.push_back(geometry::bounding_box(geometry::outer_points(w.shape)));
  }
  const auto apart = [&](std::size_t i, std::size_t j) {
    return boxes[i].high.x < boxes[j].low.x || boxes[j].high.x < boxes[i].low.x ||
           boxes[i].high.y < boxes[j].low.y || boxes[j].high.y < boxes[i].low.y;
  };
  for (std::size_t i = 0; i < wounds.size(); ++i) {
    for (std::size_t j = i + 1; j < wounds.size(); ++j) {
      if (apart(i, j)) continue;
      const geometry::Region shared = geometry::intersect(wounds[i].shape, wounds[j].shape);
      if (geometry::area(shared) < 1e-4) continue;
      findings.add(
          {.severity = Severity::stop,
           .code = "wounds-overlap",
           .text = say("Wounds {1} and {2} are drawn over each other by {3} cm2: filler would be "
                       "counted twice there. Draw them as one wound, or apart.",
                       {wounds[i].wound->id, wounds[j].wound->id,
                        format_number(geometry::area(shared), 2)}),
           .source = own_rule(),
           .wound = wounds[j].wound->id,
           .where_cm = inside_point(shared.front())});
    }
  }
}

}  // namespace

std::vector<PreparedWound> prepare_wounds(const wound::Assessment& assessment,
                                          FindingList& findings, const Progress& progress) {
  std::vector<PreparedWound> prepared;
  prepared.reserve(assessment.wounds.size());
  for (const wound::Wound& wound : assessment.wounds) {
    progress.at(0.15 * static_cast<double>(prepared.size()) /
                static_cast<double>(assessment.wounds.size()));
    geometry::Tidied tidied = geometry::tidy({wound.outline_cm, wound.islands_cm});
    report_mending(tidied, wound, findings);
    if (tidied.region.empty()) {
      throw InputError(say("nothing is left of wound \"{1}\" after its islands", {wound.id}),
                       say("islands that leave some wound"));
    }
    auto map = std::make_shared<const geometry::ClearanceMap>(tidied.region);
    prepared.push_back({&wound, std::move(tidied.region), std::move(map)});
  }
  report_overlaps(prepared, findings);
  return prepared;
}

geometry::Region zones_of_kind(const wound::Assessment& assessment, wound::ZoneKind kind) {
  std::vector<geometry::Region> regions;
  for (const wound::SkinZone& zone : assessment.skin_zones) {
    if (zone.kind == kind) regions.push_back(geometry::tidy({zone.outline_cm, {}}).region);
  }
  return regions.empty() ? geometry::Region{} : geometry::unite(regions);
}

geometry::Point inside_point(const geometry::Polygon& polygon) {
  // A tenth of a millimetre is near enough for a mark, and tiny shapes still find their middle.
  const auto circle = geometry::largest_inscribed_circle({polygon}, 0.01);
  return circle ? circle->centre : polygon.outer.front();
}

}  // namespace drapewright::dressing
