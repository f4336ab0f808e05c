#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "core/report/check_bars.h"
#include "core/report/paper.h"

namespace drapewright::batch {

/// Where pages go, and on what paper: shared by the commands that make them.
struct PageArguments {
  std::string pdf;
  std::string svg;
  std::string paper = "a4";
  std::string today;

  report::PageOptions options() const;
};

/// Adds `--pdf FILE`, `--svg FILE`, `--paper a4|letter` and `--today DATE`.
void add_page_arguments(CLI::App& command, PageArguments& arguments);

/// Adds `--bars ACROSS,DOWN`: what the check bars of an earlier print measured in mm.
void add_bars_option(CLI::App& command, std::vector<double>& bars_mm);
/// The correction for those; the printer is true where none were given.
report::PrinterCorrection correction_of(const std::vector<double>& bars_mm);

/// @throws CLI::ValidationError where neither file is asked for, or one would overwrite the other
///         or `input`
void check(const PageArguments& arguments, const std::string& input);

/// Writes the pages as asked: one PDF, and one SVG a page, "leg.svg" becoming "leg-1.svg" and so on
/// where there are several. "-" is standard output, for the PDF, and for an SVG of one page.
/// @throws InputError when a file cannot be written
void write_pages(const PageArguments& arguments, const report::Document& document);

}  // namespace drapewright::batch
