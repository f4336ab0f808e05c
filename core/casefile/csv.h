#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"

namespace drapewright::casefile {

/// One cell of a table, and where it begins in the file.
struct CsvCell {
  std::string text;  ///< without quotes, and blanks at either end unless quoted
  TextPosition at;
};
using CsvRow = std::vector<CsvCell>;

/// Reads comma-separated values (RFC 4180); the separator may be a semicolon or a tab instead, as
/// the first line has it. A byte order mark and empty lines are passed over.
/// @throws InputError with line and column for a quote that is never closed, or text after one
std::vector<CsvRow> rows_of_csv(std::string_view text, const std::string& file);

/// One line of a table: cells quoted where they must be; ends with CR LF as RFC 4180 says. A cell
/// that a spreadsheet would take for a formula stands in quotes after an apostrophe; a negative
/// number is none.
std::string csv_line(const std::vector<std::string>& cells);

/// A table whose first row names its columns, in any order.
class CsvTable {
 public:
  /// @throws InputError for a column that is not one of `known`, that is there twice, or of
  ///         `required` and missing; for a row with more cells than columns
  CsvTable(std::string_view text, std::string file, const std::vector<std::string_view>& known,
           const std::vector<std::string_view>& required);

  std::size_t rows() const { return rows_.size(); }

  // Of one row, from 0. An empty cell, or a column that is not there, is an empty text or nothing.
  std::string text(std::size_t row, std::string_view column) const;
  std::optional<int> count(std::size_t row, std::string_view column) const;
  std::optional<double> number(std::size_t row, std::string_view column, double most) const;
  std::optional<int> day(std::size_t row, std::string_view column) const;

  /// A fault in a cell: "row 3, column on_hand: ...", with line and column of the text.
  InputError fault(std::size_t row, std::string_view column, const std::string& problem,
                   const std::string& expected) const;

 private:
  const CsvCell* cell(std::size_t row, std::string_view column) const;

  std::string file_;
  std::vector<std::string> columns_;
  std::vector<CsvRow> rows_;
};

}  // namespace drapewright::casefile
