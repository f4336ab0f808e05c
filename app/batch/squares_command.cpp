#include "app/batch/squares_command.h"

#include <memory>
#include <vector>

#include "app/batch/page_files.h"
#include "core/base/say.h"
#include "core/report/square_page.h"

namespace drapewright::batch {
namespace {

struct Options {
  PageArguments pages;
  std::vector<double> bars_mm;  ///< across and down; empty: the printer is true
};

ExitStatus run(const Options& options) {
  const auto& [pages, bars] = options;
  try {
    write_pages(pages, report::square_page(pages.options(), correction_of(bars)));
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_of(error, pages.pdf));
  }
}

}  // namespace

void add_squares_command(CLI::App& app, ExitStatus& status) {
  auto* command = app.add_subcommand(
      "squares", say("A page of squares, 2, 5 and 10 cm, that give a photograph its scale"));
  auto options = std::make_shared<Options>();
  add_page_arguments(*command, options->pages);
  add_bars_option(*command, options->bars_mm);
  command->footer(
      say("Print at 100 %, without fitting to the page, and measure both check bars.\n\n"
          "Examples:\n"
          "  drapewright-batch squares --pdf squares.pdf --paper letter"));
  command->callback([options, &status] {
    check(options->pages, {});
    status = worse(status, run(*options));
  });
}

}  // namespace drapewright::batch
