#include "app/batch/record_command.h"

#include <memory>
#include <optional>
#include <string>

#include "app/batch/calendar.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/text_file.h"
#include "core/dressing/course_log.h"
#include "core/report/record_pages.h"
#include "core/report/text_columns.h"

namespace drapewright::batch {
namespace {

struct Options {
  std::string file;
  std::string today;
  std::optional<int> removed, placed;
  std::string note;

  bool writes() const { return removed || placed; }
};

std::string dressings_text(const dressing::CourseLog& log) {
  const report::Columns columns({-3, 12, -4, -4, 0});
  std::string out = columns.row({say("No."), say("date"), say("in"), say("out"), say("count")});
  for (const auto& done : log.dressings) {
    out += columns.row({std::to_string(done.number), done.date, std::to_string(done.placed),
                        done.removed ? std::to_string(*done.removed) : "-",
                        report::in_words(done.count)});
  }
  return out;
}

std::string log_text(const wound::Case& value, const std::string& today) {
  const auto log = dressing::course_log(value, today);
  if (log.dressings.empty()) return say("No dressing is written down in the case.") + "\n";
  std::string out = dressings_text(log);
  out += say("Put on: {1} of {2} planned", {static_cast<int>(log.dressings.size()), log.planned}) +
         "\n";
  out += say("Next change: {1}", {report::next_change_in_words(log)}) + "\n";
  out += say("Course ends: {1}", {report::course_end_in_words(log)}) + "\n";
  if (log.any_differs()) {
    out += say("STOP. A count differs: find the difference before the next dressing.") + "\n";
  }
  return out;
}

ExitStatus run(Options options) {
  try {
    if (options.today.empty()) options.today = todays_date();
    wound::Case value = casefile::read_case(options.file);
    if (options.writes()) {
      dressing::record_change(value, {.date = options.today,
                                      .removed = options.removed,
                                      .placed = options.placed,
                                      .note = options.note});
      casefile::write_case(options.file, value);
    }
    const bool case_goes_out = options.writes() && options.file == "-";
    if (!case_goes_out) casefile::write_text("-", log_text(value, options.today));
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_in(options.file, error));
  }
}

}  // namespace

void add_record_command(CLI::App& app, ExitStatus& status) {
  auto* command = app.add_subcommand(
      "record", say("List the dressings that were put on and what is due, or write a change down"));
  auto options = std::make_shared<Options>();
  command->add_option("CASE", options->file, say("The case file; - is standard input"))->required();
  auto* out = command
                  ->add_option("--out", options->removed,
                               say("Pieces that came out of the dressing before"))
                  ->option_text(say("PIECES"));
  auto* in = command->add_option("--in", options->placed, say("Pieces that went in"))
                 ->option_text(say("PIECES"));
  auto* note =
      command->add_option("--note", options->note, say("A note, kept with the dressing put on"));
  command
      ->add_option("--today", options->today,
                   say("The day of the change and of the list, YYYY-MM-DD; by the clock if not "
                       "given"))
      ->check(fault_of_date);
  command->footer(
      say("With --in or --out the change is written into the case file. Where as many pieces did "
          "not come out as went in, the list says STOP, and so does the plan.\n\n"
          "Examples:\n"
          "  drapewright-batch record leg.json                    the dressings, and what is due\n"
          "  drapewright-batch record leg.json --in 3             the first dressing\n"
          "  drapewright-batch record leg.json --out 3 --in 2     a change\n"
          "  drapewright-batch record leg.json --out 2            the last one is taken off"));
  command->callback([=, &status] {
    if (*note && !*out && !*in) {
      throw CLI::ValidationError("--note", say("goes with --in or --out"));
    }
    status = worse(status, run(*options));
  });
}

}  // namespace drapewright::batch
