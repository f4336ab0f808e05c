#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <charconv>

#include "core/casefile/case_json.h"
#include "core/casefile/csv.h"
#include "core/casefile/exchange.h"
#include "core/geometry/shapes.h"
#include "tests/support/example_case.h"

namespace drapewright::casefile {
namespace {

using testing::HasSubstr;

/// A table by its columns' names.
class Table {
 public:
  explicit Table(const std::string& text) : rows_(rows_of_csv(text, "table.csv")) {}

  std::size_t size() const { return rows_.size() - 1; }
  std::string text(std::size_t row, const std::string& column) const {
    for (std::size_t i = 0; i < rows_[0].size(); ++i) {
      if (rows_[0][i].text == column) return rows_.at(row + 1).at(i).text;
    }
    throw std::logic_error("no column " + column);
  }
  double number(std::size_t row, const std::string& column) const {
    const std::string cell = text(row, column);
    double value = 0;
    const auto end = std::from_chars(cell.data(), cell.data() + cell.size(), value).ptr;
    EXPECT_EQ(end, cell.data() + cell.size()) << column << ": " << cell;
    EXPECT_FALSE(cell.empty()) << column;
    return value;
  }

 private:
  std::vector<CsvRow> rows_;
};

wound::Case two_visits() {
  wound::Case value = case_from_json(support::example_case());
  wound::Wound wound{.id = "A", .outline_cm = geometry::ellipse(8, 5)};
  wound.depth_cm = 2;
  wound.undermining = {{.from_clock = 10, .to_clock = 2, .extent_cm = 1.25}};
  value.assessments = {{.date = "2026-03-02", .wounds = {wound}, .exudate_ml_per_day = 12.5}};
  wound.outline_cm = geometry::ellipse(6.4, 4);
  wound.depth_cm = 0;
  wound.undermining.clear();
  value.assessments.push_back({.date = "2026-03-30", .wounds = {wound}});
  return value;
}

std::string measures_of(const wound::Case& value) {
  return measures_csv(value, measures_over_time(value, dressing::plan_dressing(value)));
}

TEST(MeasuresCsv, HasARowForEachWoundOfEachAssessment) {
  const Table table(measures_of(two_visits()));
  ASSERT_EQ(table.size(), 2u);
  EXPECT_EQ(table.text(0, "date"), "2026-03-02");
  EXPECT_EQ(table.text(1, "wound"), "A");
  EXPECT_NEAR(table.number(0, "area_cm2"), 31.4159, 0.0051);
  EXPECT_NEAR(table.number(1, "area_cm2"), 20.1062, 0.0051);
  EXPECT_NEAR(table.number(0, "edge_length_cm"), 20.69314, 0.0051);  // of the 8 x 5 ellipse
  EXPECT_NEAR(table.number(0, "length_times_width_cm2"), 40, 0.02);
  EXPECT_NEAR(table.number(0, "area_spread_cm2"), 2.069, 0.006);  // edge length x 1 mm
  EXPECT_EQ(table.text(0, "depth_cm"), "2");
  EXPECT_NEAR(table.number(0, "volume_cm3"), 62.83, 0.02);
  EXPECT_GT(table.number(0, "pocket_volume_cm3"), 0);
  EXPECT_EQ(table.text(0, "undermining"), "1.25 cm from 10 to 2 o'clock");
  EXPECT_EQ(table.text(0, "exudate_ml_per_day"), "12.5");
}

TEST(MeasuresCsv, LeavesOutWhatWasNotMeasured) {
  const Table table(measures_of(two_visits()));
  for (const char* column : {"depth_cm", "volume_cm3", "volume_spread_cm3", "pocket_volume_cm3",
                             "undermining", "tunnels", "exudate_ml_per_day"}) {
    EXPECT_EQ(table.text(1, column), "") << column;
  }
}

TEST(MaterialsCsv, HasEveryLineOfTheMaterials) {
  const auto plan = dressing::plan_dressing(two_visits());
  const Table table(materials_csv(plan));
  ASSERT_EQ(table.size(), plan.consumables.size());
  ASSERT_GT(table.size(), 3u);
  for (std::size_t i = 0; i < table.size(); ++i) {
    EXPECT_EQ(table.text(i, "item"), plan.consumables[i].item);
    EXPECT_EQ(table.text(i, "basis"), plan.consumables[i].basis);
    EXPECT_NEAR(table.number(i, "per_course"), plan.consumables[i].per_course, 5e-4);
    EXPECT_NEAR(table.number(i, "per_application"), plan.consumables[i].per_application, 5e-4);
    EXPECT_EQ(table.number(i, "applications"), plan.applications);
  }
}

TEST(ExchangeCsv, KeepsTextsFromBecomingFormulas) {
  wound::Case value = two_visits();
  value.label = "=HYPERLINK(\"x\")";
  value.current().wounds[0].id = "-2+3";
  EXPECT_THAT(measures_of(value),
              HasSubstr("\r\n\"'=HYPERLINK(\"\"x\"\")\",2026-03-30,\"'-2+3\","));
  EXPECT_EQ(Table(measures_of(value)).text(1, "case"), value.label);
  value.supplies = supplies::built_in_catalogue();
  for (auto& item : *value.supplies) item.item = "@" + item.item;
  const std::string materials = materials_csv(dressing::plan_dressing(value));
  EXPECT_THAT(materials, HasSubstr("\"'@"));
  EXPECT_EQ(materials.find(",@"), std::string::npos);
}

TEST(CsvLine, ProtectsWhatASpreadsheetWouldWorkOut) {
  for (const std::string text : {"=1", "+1", "@a", "-a1", "-1+2", " =1", "\t=1", "\r=1", "-"}) {
    const std::string line = csv_line({text, "x"});
    EXPECT_TRUE(line.starts_with("\"'")) << line;
    EXPECT_EQ(rows_of_csv(line, "x.csv").at(0).at(0).text, text);
  }
  for (const std::string text : {"-1.5", "-1,5", "5", "a=1", "", "2026-03-02"}) {
    const std::string line = csv_line({text, "x"});
    EXPECT_EQ(line.find('\''), std::string::npos) << line;
    EXPECT_EQ(rows_of_csv(line, "x.csv").at(0).at(0).text, text);
  }
}

}  // namespace
}  // namespace drapewright::casefile
