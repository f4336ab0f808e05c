#include "app/batch/pages_command.h"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include "app/batch/page_files.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "core/report/page_kinds.h"

namespace drapewright::batch {
namespace {

struct Options {
  std::string file;
  PageArguments pages;
  std::vector<std::string> kinds{"plan"};
};

std::vector<std::string> kind_names() {
  std::vector<std::string> names;
  for (const report::PageKind kind : report::page_kinds()) names.emplace_back(name_of(kind));
  return names;
}

/// What was asked for, in the order in which it is printed.
std::vector<report::PageKind> kinds_of(const Options& options) {
  std::vector<report::PageKind> kinds;
  for (const report::PageKind kind : report::page_kinds()) {
    const bool wanted = std::ranges::find(options.kinds, name_of(kind)) != options.kinds.end();
    if (wanted) kinds.push_back(kind);
  }
  return kinds;
}

ExitStatus run(const Options& options) {
  try {
    const wound::Case value = casefile::read_case(options.file);
    const dressing::Plan plan =
        dressing::plan_dressing(value, {}, {.today = options.pages.today, .compare_sheets = true});
    write_pages(options.pages,
                report::pages_of(kinds_of(options), value, plan, options.pages.options()));
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_in(options.file, error));
  }
}

}  // namespace

void add_pages_command(CLI::App& app, ExitStatus& status) {
  auto* command = app.add_subcommand("pages", say("Pages for the bedside and for teaching"));
  auto options = std::make_shared<Options>();
  command->add_option("CASE", options->file, say("The case file; - is standard input"))->required();
  add_page_arguments(*command, options->pages);
  command
      ->add_option("--kinds", options->kinds,
                   say("Which pages: plan (the plan sheet), record (the steps and counts of an "
                       "application), labels (for the dressing), what-to-do (a leak, a blockage, a "
                       "full canister, a pause, bleeding), teaching (a sheet to fill in), solution"))
      ->check(CLI::IsMember(kind_names()))
      ->delimiter(',')
      ->type_name(say("KIND,..."))
      ->capture_default_str();
  command->footer(say(
      "Templates for cutting have a command of their own: templates.\n\n"
      "Examples:\n"
      "  drapewright-batch pages leg.json --pdf leg-plan.pdf\n"
      "  drapewright-batch pages leg.json --pdf leg.pdf --kinds plan,record,labels --paper letter\n"
      "  drapewright-batch pages leg.json --pdf class.pdf --kinds teaching,solution"));
  command->callback([options, &status] {
    check(options->pages, options->file);
    status = worse(status, run(*options));
  });
}

}  // namespace drapewright::batch
