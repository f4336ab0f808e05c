#include "core/practice/limits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <string>

#include "core/wound/case.h"

namespace drapewright::practice {
namespace {

TEST(Limits, HoldTheirStandardAndTheirUsualRange) {
  for (const Limit& row : limits()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_LT(row.minimum, row.maximum);
    EXPECT_TRUE(within_bounds(row, row.standard));
    for (const auto& usual : {row.usual_minimum, row.usual_maximum}) {
      if (usual) {
        EXPECT_TRUE(within_bounds(row, *usual)) << *usual;
      }
    }
    if (row.usual_minimum && row.usual_maximum) {
      EXPECT_LT(*row.usual_minimum, *row.usual_maximum);
    }
  }
}

TEST(Limits, TellMeaningAndSource) {
  for (const Limit& row : limits()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_FALSE(row.title.empty());
    EXPECT_TRUE(!row.unit.empty() || row.id.ends_with("_share")) << "only a share has no unit";
    EXPECT_TRUE(row.meaning.ends_with('.')) << row.meaning;
    EXPECT_FALSE(describe(row.source).empty());
    const bool is_published = row.source.standing == Standing::published ||
                              row.source.standing == Standing::published_from_memory;
    EXPECT_TRUE(!row.source.citation.empty() || !is_published);
  }
}

TEST(Limits, RefuseWhatLiesBeyondTheirBounds) {
  for (const Limit& row : limits()) {
    SCOPED_TRACE(std::string(row.id));
    EXPECT_EQ(within_bounds(row, row.minimum), !row.minimum_excluded);
    EXPECT_EQ(within_bounds(row, row.maximum), !row.maximum_excluded);
    EXPECT_FALSE(within_bounds(row, std::nextafter(row.minimum, -1e9)));
    EXPECT_FALSE(within_bounds(row, std::nextafter(row.maximum, 1e9)));
    EXPECT_FALSE(within_bounds(row, std::nan("")));
    EXPECT_FALSE(within_bounds(row, HUGE_VAL));
  }
}

TEST(Limits, HaveUniqueIds) {
  std::set<std::string_view> ids;
  for (const Limit& row : limits()) EXPECT_TRUE(ids.insert(row.id).second) << row.id;
}

// The case file's defaults (docs/case.schema.json) stand in the table, in DressingSettings, and
// nowhere else; this keeps the two together and shows that no setting lacks a row.
TEST(Limits, AgreeWithTheDefaultsOfACase) {
  const wound::DressingSettings settings;
  const std::map<std::string, double> defaults = {
      {"inset_cm", settings.inset_cm},
      {"border_cm", settings.border_cm},
      {"filler_thickness_cm", settings.filler_thickness_cm},
      {"film_overlap_cm", settings.film_overlap_cm},
      {"aperture_diameter_cm", settings.aperture_diameter_cm},
      {"port_base_diameter_cm", settings.port_base_diameter_cm},
      {"bridge_width_cm", settings.bridge_width_cm},
      {"piece_gap_cm", settings.piece_gap_cm},
      {"pressure_mmhg", settings.pressure_mmhg},
      {"change_every_h", settings.change_every_h},
      {"course_days", settings.course_days},
      {"canister_ml", settings.canister_ml},
      {"canister_max_days", settings.canister_max_days},
      {"battery_days", settings.battery_days},
      {"tracing_error_mm", settings.tracing_error_mm},
  };
  for (const auto& [id, value] : defaults) EXPECT_EQ(limit(id).standard, value) << id;
}

// Common practice and the sources that limits.cpp names beside each.
TEST(Limits, AreThoseOfTheTrade) {
  EXPECT_EQ(usual_in_words(limit("border_cm")), "4 to 5 cm");
  EXPECT_EQ(usual_in_words(limit("aperture_diameter_cm")), "at most 2 cm");
  EXPECT_EQ(usual_in_words(limit("change_every_h")), "48 to 72 h");
  EXPECT_EQ(usual_in_words(limit("course_days")), "at most 14 days");
  EXPECT_EQ(usual_in_words(limit("pressure_mmhg")), "-125 to -50 mmHg");
  EXPECT_EQ(usual_in_words(limit("canister_max_days")), "at most 7 days");
  EXPECT_EQ(usual_in_words(limit("exudate_ml_per_day")), "at least 20 mL/day");
  EXPECT_EQ(usual_in_words(limit("inset_cm")), "");
}

TEST(Limits, PutTheirBoundsInWords) {
  EXPECT_EQ(bounds_in_words(limit("inset_cm")), "0 to 2 cm");
  EXPECT_EQ(bounds_in_words(limit("filler_thickness_cm")), "above 0 to 10 cm");
  EXPECT_EQ(bounds_in_words(limit("pressure_mmhg")), "-300 to below 0 mmHg");
}

TEST(Limits, AnUnknownIdIsABug) { EXPECT_THROW(limit("no_such_limit"), std::logic_error); }

}  // namespace
}  // namespace drapewright::practice
