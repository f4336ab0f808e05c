#include "app/batch/outline_command.h"

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "app/batch/calendar.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/outline_file.h"
#include "core/casefile/text_file.h"

namespace drapewright::batch {
namespace {

using casefile::OutlineFormat;

const std::map<std::string, OutlineFormat> format_names{{"wkt", OutlineFormat::wkt},
                                                        {"geojson", OutlineFormat::geojson},
                                                        {"svg", OutlineFormat::svg},
                                                        {"csv", OutlineFormat::csv}};
constexpr std::size_t longest_label = 80;

struct Options {
  std::string file;
  std::optional<double> cm_per_unit;
  std::string case_file = "-";
  std::optional<OutlineFormat> format;
  std::string today;
  bool from_case = false;
};

std::vector<geometry::Polygon> outlines_of(const Options& options) {
  if (!options.from_case) return casefile::read_outlines(options.file, options.cm_per_unit);
  std::vector<geometry::Polygon> out;
  const wound::Case value = casefile::read_case(options.file);
  for (const auto& wound : value.current().wounds) {
    out.push_back({.outer = wound.outline_cm, .holes = wound.islands_cm});
  }
  return out;
}

/// The depth is not in an outline: it stays unmeasured, which the plan will say.
wound::Case case_of(const Options& options, const std::vector<geometry::Polygon>& outlines) {
  wound::Case out;
  const std::string stem = std::filesystem::path(options.file).stem().string();
  const bool has_name = options.file != "-" && !stem.empty() && stem.size() <= longest_label;
  out.label = has_name ? stem : say("Outline");
  out.assessments.push_back({.date = options.today.empty() ? todays_date() : options.today});
  for (const auto& outline : outlines) {
    const std::string id = "W" + std::to_string(out.current().wounds.size() + 1);
    out.current().wounds.push_back(
        {.id = id, .outline_cm = outline.outer, .islands_cm = outline.holes});
  }
  wound::check(out);
  return out;
}

ExitStatus run(const Options& options) {
  try {
    const auto outlines = outlines_of(options);
    const wound::Case value = case_of(options, outlines);  // checks the shapes, too
    casefile::write_text(options.case_file, options.format
                                                ? casefile::outlines_to(*options.format, outlines)
                                                : casefile::case_to_json(value));
    return ExitStatus::good;
  } catch (const casefile::UnitNeeded& error) {
    return report(
        {say("{1}: --scale 0.1 for mm, --scale 1 for cm", {error.what()}), ExitStatus::bad_input});
  } catch (const std::exception& error) {
    return report(fault_in(options.file, error));
  }
}

}  // namespace

void add_outline_command(CLI::App& app, ExitStatus& status) {
  auto* command = app.add_subcommand(
      "outline", say("Outlines from WKT, GeoJSON, SVG paths or CSV to a case, and back"));
  auto options = std::make_shared<Options>();
  command->add_option("FILE", options->file, say("The outlines; - is standard input"))->required();
  auto* scale =
      command->add_option("--scale", options->cm_per_unit,
                          say("cm in one unit of the file, where it does not say; 0.1 for mm"));
  command->add_option("--case", options->case_file, say("Write the case there"))
      ->capture_default_str()
      ->option_text(say("FILE"));
  command
      ->add_option("--as", options->format, say("Write outlines instead: wkt, geojson, svg or csv"))
      ->transform(CLI::CheckedTransformer(format_names))
      ->option_text("FORMAT");
  command
      ->add_flag("--from-case", options->from_case,
                 say("FILE is a case: its wounds as they are now"))
      ->excludes(scale);
  command
      ->add_option("--today", options->today,
                   say("The case's date, YYYY-MM-DD; by the clock if not given"))
      ->check(fault_of_date);
  command->footer(say(
      "A ring inside an outline is an island of intact skin. Depth, tunnels and undermining are\n"
      "not in an outline: type them in before the case is planned.\n\n"
      "Examples:\n"
      "  drapewright-batch outline leg.svg --case leg.json\n"
      "  drapewright-batch outline leg.wkt --scale 0.1 | drapewright-batch plan -\n"
      "  drapewright-batch outline leg.json --from-case --as svg > leg.svg"));
  command->callback([options, &status] { status = worse(status, run(*options)); });
}

}  // namespace drapewright::batch
