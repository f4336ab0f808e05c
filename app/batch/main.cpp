#include <CLI/CLI.hpp>
#include <exception>
#include <string>
#include <vector>

#include "app/batch/check_command.h"
#include "app/batch/export_command.h"
#include "app/batch/faults.h"
#include "app/batch/forecast_command.h"
#include "app/batch/layout_command.h"
#include "app/batch/outline_command.h"
#include "app/batch/pages_command.h"
#include "app/batch/plan_command.h"
#include "app/batch/record_command.h"
#include "app/batch/squares_command.h"
#include "app/batch/templates_command.h"
#include "app/wording/speak.h"
#include "core/base/say.h"

namespace drapewright::batch {
namespace {

constexpr const char* what_it_is = term(
    "Plans negative-pressure wound dressings from traced or typed outlines: filler, film, port,\n"
    "materials over the course, and what to check. A planning aid: the prescriber, local policy\n"
    "and the device's instructions decide.");

constexpr const char* conventions = term(
    "A file named - is standard input or output. Lengths are in cm.\n\n"
    "Exit status: 0, all went well (a plan may still have findings); 2, bad input or usage, with\n"
    "one line on standard error for each fault; 1, the program failed.\n\n"
    "Examples:\n"
    "  drapewright-batch plan leg.json                        a summary to read\n"
    "  drapewright-batch plan leg.json --json                 the plan for other programs\n"
    "  drapewright-batch plan leg.json --svg leg.svg          and its drawing\n"
    "  drapewright-batch plan cases --json-lines              a folder of them\n"
    "  drapewright-batch pages leg.json --pdf leg.pdf         the plan sheet\n"
    "  drapewright-batch templates leg.json --pdf leg.pdf     cutting templates at life size\n"
    "  drapewright-batch record leg.json --in 3               the dressings of a course\n"
    "  drapewright-batch export leg.json --fhir leg.fhir.json measures and materials for others\n"
    "  drapewright-batch check leg.json                       read and validate only\n"
    "  drapewright-batch outline leg.svg --case leg.json      an outline of another program\n"
    "  drapewright-batch forecast cases --stock stock.csv     what a caseload will use, and "
    "orders\n"
    "  drapewright-batch layout job.json                      lay bare pieces out on sheets\n\n"
    "drapewright-batch COMMAND --help says more about a command.");

constexpr const char* language_option = "--language";

/// Help is worded while the commands are put together: the language has to be known before that.
void speak_as_asked(int count, char** arguments) {
  for (int i = 1; i < count; ++i) {
    const std::string argument = arguments[i];
    const std::string with_value = std::string(language_option) + "=";
    if (argument.starts_with(with_value)) {
      speak(QString::fromStdString(argument.substr(with_value.size())));
    } else if (argument == language_option && i + 1 < count) {
      speak(QString::fromLocal8Bit(arguments[i + 1]));
    }
  }
}

void add_language(CLI::App& app) {
  std::vector<std::string> codes;
  for (const SpokenLanguage& one : spoken_languages()) codes.push_back(one.code.toStdString());
  // Heeded already: here it is for the help and for the check of its value.
  app.add_option_function<std::string>(
         language_option, [](const std::string&) {},
         say("Language of texts and pages; JSON and CSV keep the decimal point"))
      ->option_text("en|de [en]")
      ->check(CLI::IsMember(codes));
  app.fallthrough();
}

/// What the library itself puts into every help; the commands take it over.
void word_help(CLI::App& app) {
  app.option_defaults()->group(say("Options"));
  app.set_help_flag("-h,--help", say("Print this help message and exit"));
  app.set_version_flag("--version", "drapewright-batch " DRAPEWRIGHT_VERSION,
                       say("Display program version information and exit"));
  app.group(say("Subcommands"));
  for (const char* label : {term("Usage"), term("OPTIONS"), term("SUBCOMMAND"), term("Positionals"),
                            term("REQUIRED"), term("Excludes")}) {
    app.get_formatter()->label(label, say(label));
  }
}

int run(int count, char** arguments) {
  ExitStatus status = ExitStatus::good;
  speak_as_asked(count, arguments);
  CLI::App app(say(what_it_is), "drapewright-batch");
  word_help(app);
  app.require_subcommand(1);
  app.footer(say(conventions));
  add_language(app);
  add_plan_command(app, status);
  add_check_command(app, status);
  add_pages_command(app, status);
  add_templates_command(app, status);
  add_record_command(app, status);
  add_outline_command(app, status);
  add_export_command(app, status);
  add_squares_command(app, status);
  add_layout_command(app, status);
  add_forecast_command(app, status);
  for (CLI::App* command : app.get_subcommands({})) {
    command->get_help_ptr()->group(say("Options"));  // made before it could take the default over
  }
  try {
    app.parse(count, arguments);
  } catch (const CLI::ParseError& error) {
    if (error.get_exit_code() == 0) return app.exit(error);  // --help, --version
    status = report(
        {std::string("drapewright-batch: ") + error.what() + say("; expected what --help shows"),
         ExitStatus::bad_input});
  }
  return static_cast<int>(status);
}

}  // namespace
}  // namespace drapewright::batch

int main(int count, char** arguments) {
  using namespace drapewright::batch;
  try {
    return run(count, arguments);
  } catch (const std::exception& error) {
    return static_cast<int>(report(fault_of(error, "drapewright-batch")));
  }
}
