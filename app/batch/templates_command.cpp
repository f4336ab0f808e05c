#include "app/batch/templates_command.h"

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "app/batch/page_files.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "core/report/template_pages.h"

namespace drapewright::batch {
namespace {

using report::TemplatePart;

const std::map<std::string, TemplatePart> part_names{{"film", TemplatePart::film},
                                                     {"filler", TemplatePart::filler},
                                                     {"port", TemplatePart::port},
                                                     {"sheets", TemplatePart::sheets}};

struct Options {
  std::string file;
  PageArguments pages;
  std::vector<TemplatePart> parts;
  bool mirror_film = false;
  std::vector<double> bars_mm;  ///< across and down; empty: the printer is true
};

report::TemplatePageOptions paging(const Options& options) {
  report::TemplatePageOptions how{.page = options.pages.options(),
                                  .mirror_film = options.mirror_film,
                                  .printer = correction_of(options.bars_mm)};
  if (!options.parts.empty()) how.parts = {options.parts.begin(), options.parts.end()};
  return how;
}

ExitStatus run(const Options& options) {
  try {
    const wound::Case value = casefile::read_case(options.file);
    const auto plan = dressing::plan_dressing(value, {}, {.today = options.pages.today});
    write_pages(options.pages, report::template_pages(value, plan, paging(options)));
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_in(options.file, error));
  }
}

}  // namespace

void add_templates_command(CLI::App& app, ExitStatus& status) {
  auto* command =
      app.add_subcommand("templates", say("Cutting templates at life size, for printing"));
  auto options = std::make_shared<Options>();
  command->add_option("CASE", options->file, say("The case file; - is standard input"))->required();
  add_page_arguments(*command, options->pages);
  command->add_option("--parts", options->parts, say("Only these: film, filler, port, sheets"))
      ->transform(CLI::CheckedTransformer(part_names))
      ->delimiter(',')
      ->type_name(say("PART,..."));
  command->add_flag("--mirrored", options->mirror_film,
                    say("Film seen from behind, to draw on the back of its backing"));
  add_bars_option(*command, options->bars_mm);
  command->footer(say(
      "Print at 100 %, without fitting to the page, and measure both check bars before you cut.\n\n"
      "Examples:\n"
      "  drapewright-batch templates leg.json --pdf leg-templates.pdf\n"
      "  drapewright-batch templates leg.json --pdf film.pdf --parts film --mirrored\n"
      "  drapewright-batch templates leg.json --pdf leg.pdf --paper letter --bars 99.4,100.2"));
  command->callback([options, &status] {
    check(options->pages, options->file);
    status = worse(status, run(*options));
  });
}

}  // namespace drapewright::batch
