#include "app/batch/plan_command.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "app/batch/calendar.h"
#include "app/batch/case_list.h"
#include "app/batch/in_order.h"
#include "app/batch/page_files.h"
#include "app/batch/picture_files.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/plan_json.h"
#include "core/casefile/text_file.h"
#include "core/dressing/plan.h"
#include "core/dressing/section.h"
#include "core/report/cut_drawing.h"
#include "core/report/page_kinds.h"
#include "core/report/plan_drawing.h"
#include "core/report/section_drawing.h"
#include "core/report/text_summary.h"

namespace drapewright::batch {
namespace {

struct Options {
  CaseArguments named;
  std::vector<std::string> cases;  ///< the files that those stand for
  bool json = false;
  bool json_lines = false;
  std::string pdf;
  std::string svg;
  std::string png;
  std::string cut;
  double cut_mm_per_cm = 0;  ///< 0: as large as a page holds
  std::string section;
  std::vector<double> section_line;  ///< x and y of its ends; empty: the usual one
  double dpi = 150;
  double effort_s = 0;
  std::string output = "-";
  std::string today;
  std::size_t jobs = 1;

  /// Several plans may come, even if it turns out to be one.
  bool takes_several() const { return cases.size() > 1 || cases != named.named; }
  bool has_plan_picture() const { return !svg.empty() || !png.empty(); }
  bool has_picture() const {
    return has_plan_picture() || !pdf.empty() || !cut.empty() || !section.empty();
  }
  std::array<std::string, 5> pictures() const { return {pdf, svg, png, cut, section}; }
  /// Of the pictures, those that go to standard output.
  std::ptrdiff_t pictures_on_output() const { return std::ranges::count(pictures(), "-"); }
  /// A picture on standard output leaves no room for the plan there.
  bool plan_is_wanted() const { return output != "-" || pictures_on_output() == 0; }
};

/// What became of one case file.
struct Outcome {
  std::string plan;  ///< as it is to be written; empty when there is none
  std::optional<report::Drawing> drawing, cut_drawing, section;
  std::optional<report::Document> sheet;
  std::optional<Fault> fault;
};

report::Drawing section_of(const Options& options, const wound::Case& value,
                           const dressing::Plan& plan) {
  const dressing::SectionCutter cutter(value, plan);
  const auto& ends = options.section_line;
  const geometry::Segment line = ends.empty()
                                     ? cutter.usual_line()
                                     : geometry::Segment{{ends[0], ends[1]}, {ends[2], ends[3]}};
  return report::draw_section(cutter.cut(line), value.label + ", " + value.current().date,
                              value.dressing.border_cm);
}

report::CutDrawingOptions cut_drawing(const Options& options) {
  report::CutDrawingOptions how;
  if (options.cut_mm_per_cm > 0) how.mm_per_cm = options.cut_mm_per_cm;
  return how;
}

/// The cut layout is worked on for as long as was asked for; without that the plan of a case is
/// the same every time.
dressing::PlanOptions planning(const Options& options) {
  dressing::PlanOptions how{.today = options.today, .compare_sheets = true};
  if (options.effort_s <= 0) return how;
  using Clock = std::chrono::steady_clock;
  how.cut.steps = std::numeric_limits<std::int64_t>::max();
  how.cut.out_of_time = [began = Clock::now(), effort_s = options.effort_s](double share) {
    return std::chrono::duration<double>(Clock::now() - began).count() >= share * effort_s;
  };
  return how;
}

Outcome plan_file(const Options& options, const std::string& file) {
  Outcome out;
  try {
    const wound::Case value = casefile::read_case(file);
    const dressing::Plan plan = dressing::plan_dressing(value, {}, planning(options));
    out.plan = options.json || options.json_lines ? casefile::plan_to_json(plan, options.json_lines)
                                                  : report::text_summary(plan);
    if (!options.pdf.empty()) {
      out.sheet = report::pages_of(report::PageKind::plan, value, plan, {.today = options.today});
    }
    if (options.has_plan_picture()) out.drawing = report::draw_plan(value, plan);
    if (!options.cut.empty()) out.cut_drawing = report::draw_cut(plan, cut_drawing(options));
    if (!options.section.empty()) out.section = section_of(options, value, plan);
  } catch (const std::exception& error) {
    out.fault = fault_in(file, error);
  }
  return out;
}

/// Puts plans one after the other into the output, as they come.
class PlanWriter {
 public:
  explicit PlanWriter(const Options& options)
      : options_(options), is_array_(options.json && options.takes_several()) {}

  void write(const std::string& plan) {
    open();
    if (is_array_) {
      file_->write(written_ == 0 ? "[\n" : ",\n");
      file_->write(std::string_view(plan).substr(0, plan.size() - 1));  // less its end of line
    } else if (options_.json_lines) {
      file_->write(plan + "\n");
    } else {
      if (written_ > 0) file_->write("\n\n");
      file_->write(plan);
    }
    ++written_;
  }

  void finish() {
    if (is_array_) {
      open();
      file_->write(written_ == 0 ? "[]\n" : "\n]\n");
    }
    if (file_) file_->commit();
  }

 private:
  /// Not before there is something to write: an old file outlives a run without a plan.
  void open() {
    if (!file_) file_.emplace(options_.output);
  }

  const Options& options_;
  bool is_array_;
  int written_ = 0;
  std::optional<casefile::FileReplacement> file_;
};

void write_pictures(const Options& options, const Outcome& outcome) {
  if (!options.pdf.empty()) write_pages({.pdf = options.pdf}, outcome.sheet.value());
  if (!options.svg.empty()) write_svg_file(options.svg, outcome.drawing.value());
  if (!options.png.empty()) write_png_file(options.png, outcome.drawing.value(), options.dpi);
  if (!options.cut.empty()) write_svg_file(options.cut, outcome.cut_drawing.value());
  if (options.section.empty()) return;
  if (options.section.ends_with(".png")) {
    write_png_file(options.section, outcome.section.value(), options.dpi);
  } else {
    write_svg_file(options.section, outcome.section.value());
  }
}

ExitStatus plan_all(const Options& options) {
  ExitStatus status = ExitStatus::good;
  try {
    PlanWriter writer(options);
    in_order(
        options.cases.size(), options.jobs,
        [&](std::size_t i) { return plan_file(options, options.cases[i]); },
        [&](const Outcome& outcome) {
          if (outcome.fault) status = worse(status, report(*outcome.fault));
          if (!outcome.plan.empty() && options.plan_is_wanted()) writer.write(outcome.plan);
          if (!outcome.fault && options.has_picture()) write_pictures(options, outcome);
        });
    if (options.plan_is_wanted()) writer.finish();
  } catch (const std::exception& error) {
    status = worse(status, report(fault_of(error, options.output)));
  }
  return status;
}

/// A plan or a picture must not take the place of a case or of each other.
void check_outputs(const Options& options) {
  std::vector<std::string> taken = options.cases;
  const auto pictures = options.pictures();
  std::vector<std::string> outputs(pictures.begin(), pictures.end());
  outputs.push_back(options.output);
  for (const auto& output : outputs) {
    if (output.empty() || output == "-") continue;
    for (const auto& other : taken) {
      std::error_code unknown;
      if (other == output || std::filesystem::equivalent(other, output, unknown)) {
        throw CLI::ValidationError(say("'{1}' would be overwritten by this command", {output}));
      }
    }
    taken.push_back(output);
  }
}

/// What the options allow one by one but not together.
void check_usage(const Options& options) {
  const auto& cases = options.cases;
  check_outputs(options);
  if (options.has_picture() && options.takes_several()) {
    throw CLI::ValidationError(
        say("--pdf, --svg, --png, --cut and --section take one case at a time"));
  }
  if (options.pictures_on_output() > 1) {
    throw CLI::ValidationError(say("only one picture can go to standard output"));
  }
  const auto& ends = options.section_line;
  if (!ends.empty() && options.section.empty()) {
    throw CLI::ValidationError(
        say("--section-line says where --section FILE cuts: that is missing"));
  }
  if (!std::ranges::all_of(ends, [](double cm) { return std::isfinite(cm); })) {
    throw CLI::ValidationError(say("--section-line: a coordinate is not a number; expected cm"));
  }
  if (!ends.empty() && ends[0] == ends[2] && ends[1] == ends[3]) {
    throw CLI::ValidationError(
        say("--section-line: both ends are the same point; expected a line"));
  }
  if (std::ranges::count(cases, "-") + (options.named.list == "-" ? 1 : 0) > 1) {
    throw CLI::ValidationError(say("- (standard input) can be read only once"));
  }
}

constexpr const char* examples = term(
    "Without --json or --json-lines the plan is a text summary. Of several cases, a bad one does\n"
    "not keep the others from being planned; the exit status is 2 then.\n\n"
    "Examples:\n"
    "  drapewright-batch plan leg.json\n"
    "  drapewright-batch plan leg.json --json --output leg.plan.json\n"
    "  drapewright-batch plan leg.json --pdf leg.pdf --svg leg.svg --png leg.png\n"
    "  drapewright-batch plan leg.json --svg - | less\n"
    "  drapewright-batch plan leg.json --effort 5 --cut sheets.svg --cut-scale 10\n"
    "  drapewright-batch plan leg.json --section leg-section.svg --section-line=-8,0,8,0\n"
    "  cat leg.json | drapewright-batch plan - --json\n"
    "  drapewright-batch plan cases --json-lines > plans.jsonl\n"
    "  find . -name '*.json' | drapewright-batch plan --list - --json-lines > plans.jsonl");

}  // namespace

void add_plan_command(CLI::App& app, ExitStatus& status) {
  auto* command =
      app.add_subcommand("plan", say("Plan the dressing of each case's last assessment"));
  auto options = std::make_shared<Options>();
  options->jobs = std::max(1u, std::thread::hardware_concurrency());
  options->today = todays_date();
  add_case_arguments(*command, options->named);
  auto* json =
      command->add_flag("--json", options->json,
                        say("The plan as JSON (docs/plan.schema.json); an array of several"));
  command
      ->add_flag("--json-lines", options->json_lines, say("One plan a line, written as they come"))
      ->excludes(json);
  command
      ->add_option(
          "--output", options->output,
          say("Where the plan goes instead of - (standard output); an old file is replaced "
              "whole"))
      ->type_name(say("FILE"));
  command
      ->add_option("--pdf", options->pdf,
                   say("The plan sheet as PDF, on A4; `pages` has letter and other pages"))
      ->type_name(say("FILE"));
  command->add_option("--svg", options->svg, say("The drawing to scale as SVG"))
      ->type_name(say("FILE"));
  command->add_option("--png", options->png, say("The drawing to scale as PNG"))
      ->type_name(say("FILE"));
  command
      ->add_option("--section", options->section,
                   say("A cut through wound and dressing, to scale, as SVG (or FILE.png)"))
      ->type_name(say("FILE"));
  command
      ->add_option("--section-line", options->section_line,
                   say("Where it cuts, in the case's cm; else along the largest wound's length"))
      ->type_name("X0,Y0,X1,Y1")
      ->delimiter(',')
      ->expected(4)
      ->check(CLI::Range(-1e6, 1e6));
  command->add_option("--dpi", options->dpi, say("Dots per inch of the PNG"))
      ->check(CLI::Range(20.0, 1200.0))
      ->capture_default_str();
  command
      ->add_option("--cut", options->cut,
                   say("The filler sheets to open as SVG: every piece where it is cut"))
      ->type_name(say("FILE"));
  command
      ->add_option("--cut-scale", options->cut_mm_per_cm,
                   say("mm on paper for a cm of filler in that drawing: 10 is life size, a "
                       "template; else as large as A4 holds"))
      ->check(CLI::Range(0.5, 20.0))
      ->type_name("MM");
  command
      ->add_option("--effort", options->effort_s,
                   say("Seconds to look for a better way to cut the filler; without it the plan is "
                       "the same every time"))
      ->check(CLI::Range(0.0, 86400.0))
      ->type_name(say("SECONDS"));
  command
      ->add_option("--today", options->today,
                   say("Day on which the plan is read, to say how old the assessment is ('' does "
                       "not); else the calendar's"))
      ->check(fault_of_date)
      ->type_name(say("YYYY-MM-DD"));
  command->add_option("--jobs", options->jobs, say("How many cases are planned at a time"))
      ->check(CLI::Range(1, 1024))
      ->type_name("N");
  command->footer(say(examples));
  command->callback([options, &status] {
    options->cases = case_files(options->named);
    check_usage(*options);
    status = worse(status, plan_all(*options));
  });
}

}  // namespace drapewright::batch
