#include <gtest/gtest.h>

#include <fstream>
#include <string>

#include "core/base/numbers.h"
#include "core/practice/body_sites.h"
#include "core/practice/cautions.h"
#include "core/practice/events.h"
#include "core/practice/limits.h"
#include "core/practice/rules.h"
#include "core/practice/steps.h"
#include "tests/support/places.h"

// docs/sources.md is written for people, its tables are those of core/practice. When this fails,
// the rows as they should be are in build/<preset>/sources-rows.md.
namespace drapewright::practice {
namespace {

std::string row_of(const std::vector<std::string>& cells) {
  std::string row = "|";
  for (const std::string& cell : cells) row += " " + (cell.empty() ? "-" : cell) + " |";
  return row + "\n";
}

std::string code(std::string_view id) { return "`" + std::string(id) + "`"; }

std::string rows_of_sites() {
  std::string rows;
  for (const BodySite& row : body_sites()) {
    std::string cautions;
    for (const std::string_view id : row.cautions) {
      cautions += (cautions.empty() ? "" : ", ") + code(id);
    }
    rows += row_of({code(row.id), std::string(row.name), row.on_limb ? "limb" : "",
                    std::string(name_of(row.twelve)), cautions});
  }
  for (const SiteCaution& row : site_cautions()) {
    rows += row_of({code(row.id), row.warns ? "warning" : "note", std::string(row.text),
                    describe(row.source)});
  }
  return rows;
}

std::string rows_of_the_work() {
  std::string rows;
  for (const Step& row : steps()) {
    rows += row_of({code(row.id), std::string(row.text), describe(row.source)});
  }
  for (const Event& row : events()) {
    std::string steps;
    for (const std::string_view step : row.steps)
      steps += (steps.empty() ? "" : " ") + std::string(step);
    rows += row_of({code(row.id), std::string(row.title) + ". " + std::string(row.signs), steps,
                    describe(row.source)});
  }
  return rows;
}

std::string rows_of_tables() {
  std::string rows;
  for (const Limit& row : limits()) {
    const std::string unit = row.unit.empty() ? "" : " " + std::string(row.unit);
    rows += row_of({code(row.id), std::string(row.title), format_short(row.standard) + unit,
                    usual_in_words(row), bounds_in_words(row), std::string(row.meaning),
                    describe(row.source)});
  }
  for (const Rule& row : rules()) {
    rows += row_of({code(row.id), std::string(row.text), describe(row.source)});
  }
  for (const Caution& row : cautions()) {
    const bool stop = row.kind == CautionKind::contraindication;
    rows += row_of({code(row.id), stop ? "stop" : "warning", std::string(row.text),
                    std::string(row.advice), describe(row.source)});
  }
  return rows + rows_of_sites() + rows_of_the_work();
}

std::string rows_of_document() {
  std::ifstream in(support::project_folder() + "/docs/sources.md");
  std::string rows, line;
  while (std::getline(in, line)) {
    if (line.starts_with("| `")) rows += line + "\n";
  }
  return rows;
}

TEST(SourcesDocument, HoldsTheTablesAsTheProgramAppliesThem) {
  const std::string wanted = rows_of_tables();
  std::ofstream(support::build_folder() + "/sources-rows.md") << wanted;
  EXPECT_EQ(rows_of_document(), wanted);
}

}  // namespace
}  // namespace drapewright::practice
