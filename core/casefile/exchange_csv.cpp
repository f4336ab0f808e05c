#include <stdexcept>

#include "core/base/numbers.h"
#include "core/casefile/csv.h"
#include "core/casefile/exchange.h"
#include "core/supplies/stock_item.h"

namespace drapewright::casefile {
namespace {

using dressing::Figure;
using dressing::WoundMeasures;
using Cells = std::vector<std::string>;

std::string measured(double value) { return plain_number(value, 2); }
std::string typed(double value) { return plain_short(value, 3); }

/// A figure and its spread, each in a cell.
void add(Cells& row, const Figure& figure) {
  row.push_back(measured(figure.value));
  row.push_back(measured(figure.spread));
}

Cells measure_columns() {
  return {"case",
          "date",
          "wound",
          "length_cm",
          "length_spread_cm",
          "width_cm",
          "width_spread_cm",
          "head_to_foot_cm",
          "side_to_side_cm",
          "depth_cm",
          "area_cm2",
          "area_spread_cm2",
          "edge_length_cm",
          "length_times_width_cm2",
          "volume_cm3",
          "volume_spread_cm3",
          "pocket_volume_cm3",
          "undermining",
          "tunnels",
          "exudate_ml_per_day"};
}

/// Depth 0 is "not deep, or not measured": no number to go on with, and neither is its volume.
Cells depth_and_volume(const wound::Wound& wound, const WoundMeasures& measures) {
  if (wound.depth_cm == 0) return {"", "", "", ""};
  return {typed(wound.depth_cm), measured(measures.volume.value), measured(measures.volume.spread),
          measured(measures.pocket_volume_cm3)};
}

std::string undermining_of(const wound::Wound& wound) {
  std::string text;
  for (const auto& pocket : wound.undermining) {
    text += (text.empty() ? "" : "; ") + typed(pocket.extent_cm) + " cm from " +
            typed(pocket.from_clock) + " to " + typed(pocket.to_clock) + " o'clock";
  }
  return text;
}

std::string tunnels_of(const wound::Wound& wound) {
  std::string text;
  for (const auto& tunnel : wound.tunnels) {
    text += (text.empty() ? "" : "; ") + typed(tunnel.length_cm) + " cm at " + typed(tunnel.clock) +
            " o'clock";
  }
  return text;
}

Cells row_of(const wound::Case& value, const wound::Assessment& assessment,
             const wound::Wound& wound, const WoundMeasures& measures) {
  Cells row{value.label, assessment.date, wound.id};
  const Cells deep = depth_and_volume(wound, measures);
  add(row, measures.length);
  add(row, measures.width);
  row.push_back(measured(measures.head_to_foot.value));
  row.push_back(measured(measures.side_to_side.value));
  row.push_back(deep.front());
  add(row, measures.area);
  row.push_back(measured(measures.perimeter.value));
  row.push_back(measured(measures.rectangle_area_cm2));
  row.insert(row.end(), deep.begin() + 1, deep.end());
  row.push_back(undermining_of(wound));
  row.push_back(tunnels_of(wound));
  const auto& exudate = assessment.exudate_ml_per_day;
  row.push_back(exudate ? typed(*exudate) : std::string());
  return row;
}

}  // namespace

std::string measures_csv(const wound::Case& value, const MeasuresOverTime& measures) {
  std::string out = csv_line(measure_columns());
  for (std::size_t i = 0; i < value.assessments.size(); ++i) {
    const wound::Assessment& assessment = value.assessments[i];
    for (std::size_t w = 0; w < assessment.wounds.size(); ++w) {
      const WoundMeasures& of_wound = measures.at(i).at(w);
      if (of_wound.id != assessment.wounds[w].id)
        throw std::logic_error("measures of another case");
      out += csv_line(row_of(value, assessment, assessment.wounds[w], of_wound));
    }
  }
  return out;
}

std::string materials_csv(const dressing::Plan& plan) {
  std::string out = csv_line({"case", "date", "item", "kind", "per_application", "per_course",
                              "applications", "estimate", "basis"});
  for (const dressing::Consumable& line : plan.consumables) {
    out += csv_line({plan.label, plan.date, line.item, std::string(supplies::name_of(line.kind)),
                     plain_short(line.per_application, 3), plain_short(line.per_course, 3),
                     std::to_string(plan.applications), line.estimate ? "yes" : "no", line.basis});
  }
  return out;
}

}  // namespace drapewright::casefile
