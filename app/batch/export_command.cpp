#include "app/batch/export_command.h"

#include <filesystem>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/exchange.h"
#include "core/casefile/text_file.h"

namespace drapewright::batch {
namespace {

namespace fs = std::filesystem;

struct Options {
  std::string file;
  std::string fhir, measures_csv, materials_csv, cut_dxf;

  /// Those that are asked for.
  std::vector<std::string> outputs() const {
    std::vector<std::string> named{fhir, measures_csv, materials_csv, cut_dxf};
    std::erase(named, std::string());
    return named;
  }
};

bool is_same_file(const std::string& a, const std::string& b) {
  std::error_code unknown;
  return a == b || fs::equivalent(a, b, unknown);
}

/// @throws CLI::ValidationError where nothing is asked for, or one file would overwrite another
void check(const Options& options) {
  const std::vector<std::string> outputs = options.outputs();
  if (outputs.empty()) {
    throw CLI::ValidationError(say(
        "nothing to export: one of --fhir, --measures-csv, --materials-csv, --cut-dxf is needed"));
  }
  for (std::size_t i = 0; i < outputs.size(); ++i) {
    if (outputs[i] != "-" && is_same_file(outputs[i], options.file)) {
      throw CLI::ValidationError(say("'{1}' would be overwritten by this command", {outputs[i]}));
    }
    for (std::size_t k = 0; k < i; ++k) {
      if (!is_same_file(outputs[i], outputs[k])) continue;
      throw CLI::ValidationError(say("two exports cannot both go to '{1}'", {outputs[i]}));
    }
  }
}

/// Everything is made before anything is written.
std::vector<std::pair<std::string, std::string>> texts_of(const Options& options) {
  const wound::Case value = casefile::read_case(options.file);
  const dressing::Plan plan = dressing::plan_dressing(value);
  std::vector<std::pair<std::string, std::string>> texts;
  if (!options.fhir.empty() || !options.measures_csv.empty()) {
    const auto measures = casefile::measures_over_time(value, plan);
    texts.emplace_back(options.fhir, casefile::fhir_bundle(value, measures));
    texts.emplace_back(options.measures_csv, casefile::measures_csv(value, measures));
  }
  texts.emplace_back(options.materials_csv, casefile::materials_csv(plan));
  if (!options.cut_dxf.empty()) texts.emplace_back(options.cut_dxf, casefile::cut_dxf(plan));
  return texts;
}

ExitStatus run(const Options& options) {
  try {
    for (const auto& [file, text] : texts_of(options)) {
      if (!file.empty()) casefile::write_text(file, text);
    }
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_in(options.file, error));
  }
}

constexpr const char* examples = term(
    "docs/exchange.md says what each file holds. Files for programs keep the decimal point in\n"
    "every language.\n\n"
    "Examples:\n"
    "  drapewright-batch export leg.json --fhir leg-fhir.json\n"
    "  drapewright-batch export leg.json --measures-csv - --language de\n"
    "  drapewright-batch export leg.json --materials-csv leg.csv --cut-dxf leg.dxf");

}  // namespace

void add_export_command(CLI::App& app, ExitStatus& status) {
  auto* command = app.add_subcommand(
      "export", say("Measures, materials and cut layout in open formats, for other programs"));
  auto options = std::make_shared<Options>();
  command->add_option("CASE", options->file, say("The case file; - is standard input"))->required();
  const auto file = [&](const char* name, std::string& value, const std::string& what) {
    command->add_option(name, value, what)->type_name("FILE");
  };
  file("--fhir", options->fhir,
       say("The measures of every assessment as a FHIR R4 bundle of Observations"));
  file("--measures-csv", options->measures_csv,
       say("The same as CSV: a row for each wound of each assessment"));
  file("--materials-csv", options->materials_csv, say("The materials as CSV"));
  file("--cut-dxf", options->cut_dxf,
       say("The sheets to open and their pieces as DXF R12, in mm at life size"));
  command->footer(say(examples));
  command->callback([options, &status] {
    check(*options);
    status = worse(status, run(*options));
  });
}

}  // namespace drapewright::batch
