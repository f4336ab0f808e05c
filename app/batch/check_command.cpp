#include "app/batch/check_command.h"

#include <memory>
#include <string>
#include <vector>

#include "app/batch/case_list.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/text_file.h"

namespace drapewright::batch {
namespace {

std::string in_words(const std::string& file, const wound::Case& value) {
  return say("{1}: a valid case, \"{2}\", {3}; the last, of {4}, has {5}",
             {file, value.label,
              count_of(static_cast<int>(value.assessments.size()), "assessment", "assessments"),
              value.current().date,
              count_of(static_cast<int>(value.current().wounds.size()), "wound", "wounds")});
}

ExitStatus check(const std::string& file) {
  try {
    const wound::Case value = casefile::read_case(file);
    casefile::write_text("-", in_words(file, value) + "\n");
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_of(error, file));
  }
}

}  // namespace

void add_check_command(CLI::App& app, ExitStatus& status) {
  auto* command =
      app.add_subcommand("check", say("Read case files and say whether they are valid"));
  auto named = std::make_shared<CaseArguments>();
  add_case_arguments(*command, *named);
  command->footer(
      say("One line on standard output for each valid case, one on standard error for each fault:\n"
          "file, line and column, the member, what was found and what was expected.\n\n"
          "Examples:\n"
          "  drapewright-batch check leg.json\n"
          "  drapewright-batch check cases && echo all valid"));
  command->callback([named, &status] {
    for (const auto& file : case_files(*named)) status = worse(status, check(file));
  });
}

}  // namespace drapewright::batch
