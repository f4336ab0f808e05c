#include "app/batch/page_files.h"

#include <filesystem>

#include "app/batch/calendar.h"
#include "app/batch/offscreen.h"
#include "app/batch/picture_files.h"
#include "app/printing/pdf.h"
#include "core/base/error.h"
#include "core/base/say.h"
#include "core/casefile/text_file.h"

namespace drapewright::batch {
namespace {

namespace fs = std::filesystem;

void write_pdf(const std::string& path, const report::Document& document) {
  const Offscreen offscreen;
  const QByteArray bytes = printing::to_pdf(document);
  casefile::write_text(path,
                       std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

/// "leg.svg" and 2: "leg-2.svg".
std::string numbered(const std::string& file, std::size_t number) {
  const fs::path path(file);
  fs::path name = path.stem();
  name += "-" + std::to_string(number);
  name += path.extension();
  return (path.parent_path() / name).string();
}

void write_svg(const std::string& file, const report::Document& document) {
  const auto& pages = document.pages;
  if (pages.size() == 1) return write_svg_file(file, pages.front());
  if (file == "-") {
    throw InputError(say("there are {1} pages, and an SVG file holds one", {pages.size()}),
                     say("the name of a file, which is then numbered"), Place{.file = file});
  }
  for (std::size_t i = 0; i < pages.size(); ++i) write_svg_file(numbered(file, i + 1), pages[i]);
}

bool is_same_file(const std::string& a, const std::string& b) {
  std::error_code unknown;
  return a != "-" && (a == b || fs::equivalent(a, b, unknown));
}

}  // namespace

report::PageOptions PageArguments::options() const {
  return {paper == "a4" ? report::Paper::a4 : report::Paper::letter, today};
}

void add_page_arguments(CLI::App& command, PageArguments& arguments) {
  arguments.today = todays_date();
  command.add_option("--pdf", arguments.pdf, say("The pages as PDF"))->type_name(say("FILE"));
  command
      .add_option(
          "--svg", arguments.svg,
          say("The pages as SVG, a file each: FILE-1.svg and so on where there are several"))
      ->type_name(say("FILE"));
  command.add_option("--paper", arguments.paper, say("a4 or letter"))
      ->check(CLI::IsMember({"a4", "letter"}))
      ->capture_default_str();
  command
      .add_option("--today", arguments.today,
                  say("Day of printing ('' leaves it out); else the calendar's. Pages of the same "
                      "case and day are the same to the byte"))
      ->check(fault_of_date)
      ->type_name(say("YYYY-MM-DD"));
}

void add_bars_option(CLI::App& command, std::vector<double>& bars_mm) {
  command
      .add_option("--bars", bars_mm,
                  say("What the check bars of an earlier print measured in mm, across and down: "
                      "corrects that printer"))
      ->delimiter(',')
      ->expected(2)
      ->check(CLI::Range(report::least_bar_mm, report::longest_bar_mm))
      ->type_name(say("ACROSS,DOWN"));
}

report::PrinterCorrection correction_of(const std::vector<double>& bars_mm) {
  return bars_mm.empty() ? report::PrinterCorrection{}
                         : report::PrinterCorrection{bars_mm[0], bars_mm[1]};
}

void check(const PageArguments& arguments, const std::string& input) {
  const auto& [pdf, svg, paper, today] = arguments;
  if (pdf.empty() && svg.empty()) {
    throw CLI::ValidationError(
        say("--pdf FILE or --svg FILE says where the pages go: both are missing"));
  }
  for (const std::string& file : {pdf, svg}) {
    if (!file.empty() && is_same_file(file, input)) {
      throw CLI::ValidationError(say("'{1}' would be overwritten by this command", {file}));
    }
  }
  if (!pdf.empty() && is_same_file(pdf, svg)) {
    throw CLI::ValidationError(say("--pdf and --svg name the same file"));
  }
  if (pdf == "-" && svg == "-") {
    throw CLI::ValidationError(say("only one of --pdf and --svg can go to standard output"));
  }
}

void write_pages(const PageArguments& arguments, const report::Document& document) {
  if (!arguments.pdf.empty()) write_pdf(arguments.pdf, document);
  if (!arguments.svg.empty()) write_svg(arguments.svg, document);
}

}  // namespace drapewright::batch
