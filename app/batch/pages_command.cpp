#include "app/batch/pages_command.h"

#include <functional>
#include <memory>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "app/batch/page_files.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "core/dressing/section.h"
#include "core/report/plan_page.h"
#include "core/report/teaching_pages.h"
#include "core/report/what_to_do.h"

namespace drapewright::batch {
namespace {

struct Options {
  std::string file;
  PageArguments pages;
  std::vector<std::string> kinds{"plan"};
};

/// A case with its plan, of which pages are made.
struct Planned {
  wound::Case value;
  dressing::Plan plan;
  dressing::SectionCutter cutter{value, plan};
};

using Maker = std::function<report::Document(const Planned&, const report::PageOptions&)>;

/// In the order in which they are written.
const std::vector<std::pair<std::string, Maker>>& makers() {
  static const std::vector<std::pair<std::string, Maker>> all{
      {"plan",
       [](const Planned& planned, const report::PageOptions& how) {
         const auto section = planned.cutter.cut(planned.cutter.usual_line());
         return report::plan_pages(planned.value, planned.plan, section, how);
       }},
      {"what-to-do",
       [](const Planned& planned, const report::PageOptions& how) {
         return report::what_to_do_page(planned.plan.label, planned.plan.date, how);
       }},
      {"teaching",
       [](const Planned& planned, const report::PageOptions& how) {
         return report::teaching_pages(planned.value, planned.plan, false, how);
       }},
      {"solution",
       [](const Planned& planned, const report::PageOptions& how) {
         return report::teaching_pages(planned.value, planned.plan, true, how);
       }},
  };
  return all;
}

std::vector<std::string> kind_names() {
  std::vector<std::string> names;
  for (const auto& [name, maker] : makers()) names.push_back(name);
  return names;
}

/// All that were asked for, one after the other; each counts its own pages.
report::Document joined(const Options& options, const Planned& planned) {
  report::Document all;
  for (const auto& [name, maker] : makers()) {
    if (std::ranges::find(options.kinds, name) == options.kinds.end()) continue;
    report::Document document = maker(planned, options.pages.options());
    if (all.pages.empty()) {
      all = std::move(document);
    } else {
      std::ranges::move(document.pages, std::back_inserter(all.pages));
    }
  }
  return all;
}

ExitStatus run(const Options& options) {
  try {
    wound::Case value = casefile::read_case(options.file);
    dressing::Plan plan =
        dressing::plan_dressing(value, {}, {.today = options.pages.today, .compare_sheets = true});
    const Planned planned{std::move(value), std::move(plan)};
    write_pages(options.pages, joined(options, planned));
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
                   say("Which pages: plan (the plan sheet), what-to-do (a leak, a blockage, a full "
                       "canister, a pause, bleeding), teaching (a sheet to fill in), solution"))
      ->check(CLI::IsMember(kind_names()))
      ->delimiter(',')
      ->type_name(say("KIND,..."))
      ->capture_default_str();
  command->footer(say(
      "Templates for cutting have a command of their own: templates.\n\n"
      "Examples:\n"
      "  drapewright-batch pages leg.json --pdf leg-plan.pdf\n"
      "  drapewright-batch pages leg.json --pdf leg.pdf --kinds plan,what-to-do --paper letter\n"
      "  drapewright-batch pages leg.json --pdf class.pdf --kinds teaching,solution"));
  command->callback([options, &status] {
    check(options->pages, options->file);
    status = worse(status, run(*options));
  });
}

}  // namespace drapewright::batch
