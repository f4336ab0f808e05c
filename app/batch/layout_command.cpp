#include "app/batch/layout_command.h"

#include <ctime>
#include <memory>
#include <string>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/layout_json.h"
#include "core/casefile/text_file.h"

namespace drapewright::batch {
namespace {

struct Options {
  std::string job;
  double effort_s = 2;
  std::uint64_t seed = 1;
  std::int64_t steps = 0;  ///< 0: as many as the effort allows
  bool split = false;
  bool json = false;
};

/// The time that this process has computed: what else the machine does changes no layout's
/// quality.
double processor_seconds() {
  return static_cast<double>(std::clock()) / static_cast<double>(CLOCKS_PER_SEC);
}

cutting::SplitJob unsplit(const cutting::Job& job) {
  cutting::SplitJob result{job, {}, {}};
  for (std::size_t i = 0; i < job.pieces.size(); ++i) {
    result.piece_of.push_back(static_cast<int>(i));
  }
  return result;
}

casefile::LayoutAnswer lay_out(const Options& options, const cutting::Job& job) {
  const double began = processor_seconds();
  casefile::LayoutAnswer answer{options.split ? cutting::split_to_fit(job) : unsplit(job), {}, 0};
  cutting::Options how;
  how.seed = options.seed;
  if (options.steps > 0) {
    how.max_steps = options.steps;
  } else {
    how.out_of_time = [&] { return processor_seconds() - began >= options.effort_s; };
  }
  answer.layout = cutting::lay_out(answer.job.job, how);
  answer.seconds = processor_seconds() - began;
  return answer;
}

std::string size_of(const cutting::CutSheet& sheet) {
  return format_short(sheet.length_cm) + " x " + format_short(sheet.width_cm) + " cm";
}

std::string numbers_of(const std::vector<int>& pieces) {
  std::string text;
  for (const int piece : pieces) text += (text.empty() ? "" : ", ") + std::to_string(piece + 1);
  return text;
}

std::string sheet_line(const casefile::LayoutAnswer& answer, const cutting::CutSheet& sheet) {
  std::vector<int> pieces;
  for (const auto& placement : sheet.placements) {
    pieces.push_back(answer.job.piece_of[static_cast<std::size_t>(placement.piece)]);
  }
  const std::vector<Insert> inserts{size_of(sheet), numbers_of(pieces)};
  std::string line =
      pieces.size() == 1 ? say("{1}: piece {2}", inserts) : say("{1}: pieces {2}", inserts);
  const auto& off_cut = sheet.off_cut_cm;
  if (off_cut.width() > 0 && off_cut.height() > 0) {
    line += "; " + say("leaves {1}", {format_short(off_cut.width()) + " x " +
                                      format_short(off_cut.height()) + " cm"});
  }
  return line + "\n";
}

std::string in_words(const casefile::LayoutAnswer& answer) {
  const auto& layout = answer.layout;
  std::string text;
  for (const auto& sheet : layout.sheets) text += sheet_line(answer, sheet);
  const bool strip = answer.job.job.strip_width_cm.has_value();
  const std::string bound = layout.proven_best()
                                ? say("the least possible")
                                : say("none is below {1} (a limit that may not be reached)",
                                      {format_short(layout.bound)});
  const std::vector<Insert> inserts{format_short(layout.cost), bound,
                                    format_short(layout.density_percent)};
  text += (strip ? say("Length {1}, {2}; {3} % of the strip used.", inserts)
                 : say("Cost {1}, {2}; {3} % of the sheets used.", inserts)) +
          "\n";
  if (!answer.job.seams.empty()) {
    text += count_of(static_cast<int>(answer.job.seams.size()),
                     "{1} seam in pieces that fit no sheet whole.",
                     "{1} seams in pieces that fit no sheet whole.") +
            "\n";
  }
  if (!layout.unplaced.empty()) {
    std::vector<int> pieces;
    for (const int k : layout.unplaced) {
      pieces.push_back(answer.job.piece_of[static_cast<std::size_t>(k)]);
    }
    text +=
        say("NOT PLACED, no sheet takes them or none is left: {1}", {numbers_of(pieces)}) + "\n";
  }
  return text;
}

ExitStatus run(const Options& options) {
  try {
    const std::string text = casefile::read_text(options.job, casefile::largest_file_bytes);
    const cutting::Job job = casefile::layout_job_from_json(text, options.job);
    const auto answer = lay_out(options, job);
    casefile::write_text("-", options.json ? casefile::layout_to_json(answer) : in_words(answer));
    return ExitStatus::good;
  } catch (const std::exception& error) {
    return report(fault_of(error, options.job));
  }
}

}  // namespace

void add_layout_command(CLI::App& app, ExitStatus& status) {
  auto* command = app.add_subcommand("layout", say("Lay bare pieces out on sheets or on a strip"));
  auto options = std::make_shared<Options>();
  command
      ->add_option("JOB", options->job,
                   say("A layout job (docs/layout-job.schema.json); - is standard input"))
      ->required();
  command
      ->add_option("--effort", options->effort_s, say("Seconds of computing time to improve for"))
      ->check(CLI::Range(0.0, 86400.0))
      ->capture_default_str();
  command->add_option("--seed", options->seed, say("Start of the random numbers"))
      ->capture_default_str();
  command
      ->add_option("--steps", options->steps,
                   say("Stop after so many steps instead: the same layout every time"))
      ->check(CLI::Range(std::int64_t{1}, std::int64_t{1} << 60));
  command->add_flag("--split", options->split,
                    say("Split pieces that fit no sheet along straight seams"));
  command->add_flag("--json", options->json,
                    say("The layout for other programs (docs/layout.schema.json)"));
  command->footer(
      say("Every layout was verified before it is shown: pieces keep their gap, and stay on their "
          "sheets.\n\n"
          "Examples:\n"
          "  drapewright-batch layout job.json\n"
          "  drapewright-batch layout job.json --effort 10 --json"));
  command->callback([options, &status] { status = worse(status, run(*options)); });
}

}  // namespace drapewright::batch
