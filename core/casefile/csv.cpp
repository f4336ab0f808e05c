#include "core/casefile/csv.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::casefile {
namespace {

/// Digits with a mark, of either language.
bool is_amount(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789.,") == std::string_view::npos;
}

/// What a spreadsheet would take for a formula, whatever blanks it stands behind; written after an
/// apostrophe, and read back without. A minus begins one, too, unless it is a number's.
bool is_formula(std::string_view cell) {
  const std::size_t first = cell.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return false;
  if (cell[first] == '-') return !is_amount(cell.substr(first + 1));
  return std::string_view("=+@").find(cell[first]) != std::string_view::npos;
}

bool is_blank(char c) { return c == ' ' || c == '\t'; }

std::string trimmed(std::string text) {
  while (!text.empty() && is_blank(text.back())) text.pop_back();
  const auto first = std::find_if_not(text.begin(), text.end(), is_blank);
  text.erase(text.begin(), first);
  return text;
}

char separator_of(std::string_view text) {
  const std::string_view first = text.substr(0, text.find('\n'));
  for (const char candidate : {',', ';', '\t'}) {
    if (first.find(candidate) != std::string_view::npos) return candidate;
  }
  return ',';
}

class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file) : text_(text), file_(file) {
    if (text_.starts_with("\xEF\xBB\xBF")) text_.remove_prefix(3);
    separator_ = separator_of(text_);
  }

  std::vector<CsvRow> read() {
    std::vector<CsvRow> rows;
    while (at_ < text_.size()) {
      CsvRow row = read_row();
      const bool empty = std::ranges::all_of(row, [](const CsvCell& c) { return c.text.empty(); });
      if (!empty) rows.push_back(std::move(row));
    }
    return rows;
  }

 private:
  bool ended() const { return at_ >= text_.size(); }
  char now() const { return text_[at_]; }

  void step() {
    const char c = text_[at_++];
    if (c == '\n') {
      ++place_.line;
      place_.column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) {
      ++place_.column;
    }
  }

  CsvRow read_row() {
    CsvRow row;
    while (true) {
      row.push_back(read_cell());
      if (ended()) return row;
      const char end = now();
      step();
      if (end == separator_) continue;
      if (end == '\r' && !ended() && now() == '\n') step();
      return row;
    }
  }

  CsvCell read_cell() {
    while (!ended() && now() == ' ') step();
    CsvCell cell{{}, place_};
    if (!ended() && now() == '"') {
      cell.text = read_quoted(cell.at);
      const std::string_view inside = cell.text;
      if (inside.starts_with('\'') && is_formula(inside.substr(1))) cell.text.erase(0, 1);
      while (!ended() && now() == ' ') step();
      if (!at_end_of_cell()) fail(say("text follows a closing quote"), say("a separator"), place_);
      return cell;
    }
    while (!at_end_of_cell()) {
      cell.text += now();
      step();
    }
    cell.text = trimmed(std::move(cell.text));
    return cell;
  }

  bool at_end_of_cell() const {
    return ended() || now() == separator_ || now() == '\n' || now() == '\r';
  }

  std::string read_quoted(TextPosition from) {
    std::string text;
    for (step(); !ended();) {
      const char c = now();
      step();
      if (c != '"') {
        text += c;
      } else if (!ended() && now() == '"') {
        text += '"';
        step();
      } else {
        return text;
      }
    }
    fail(say("a quote is never closed"), say("a second \""), from);
  }

  [[noreturn]] void fail(const std::string& problem, const std::string& expected,
                         TextPosition at) const {
    throw InputError(problem, expected, {.file = file_, .text = at});
  }

  std::string_view text_;
  const std::string& file_;
  char separator_ = ',';
  std::size_t at_ = 0;
  TextPosition place_;
};

std::string listed(const std::vector<std::string_view>& names) {
  std::string text;
  for (const auto name : names) text += (text.empty() ? "" : ", ") + std::string(name);
  return text;
}

}  // namespace

std::vector<CsvRow> rows_of_csv(std::string_view text, const std::string& file) {
  return CsvReader(text, file).read();
}

std::string csv_line(const std::vector<std::string>& cells) {
  std::string line;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) line += ',';
    const std::string& cell = cells[i];
    const bool formula = is_formula(cell);
    if (!formula && cell.find_first_of(",;\t\"\r\n") == std::string::npos &&
        cell == trimmed(cell)) {
      line += cell;
      continue;
    }
    line += formula ? "\"'" : "\"";
    for (const char c : cell) line += c == '"' ? std::string("\"\"") : std::string(1, c);
    line += '"';
  }
  return line + "\r\n";
}

CsvTable::CsvTable(std::string_view text, std::string file,
                   const std::vector<std::string_view>& known,
                   const std::vector<std::string_view>& required)
    : file_(std::move(file)), rows_(rows_of_csv(text, file_)) {
  if (rows_.empty()) {
    throw InputError(say("the table is empty"), say("a first row with {1}", {listed(required)}),
                     {.file = file_});
  }
  for (const CsvCell& cell : rows_.front()) {
    const bool is_known = std::ranges::find(known, cell.text) != known.end();
    const bool is_double = std::ranges::find(columns_, cell.text) != columns_.end();
    if (!is_known || is_double) {
      throw InputError(is_known ? say("row 1: the column '{1}' is there twice", {cell.text})
                                : say("row 1: the column '{1}' is not known", {cell.text}),
                       is_known ? say("each column once") : say("one of {1}", {listed(known)}),
                       {.file = file_, .text = cell.at});
    }
    columns_.push_back(cell.text);
  }
  for (const auto name : required) {
    if (std::ranges::find(columns_, name) != columns_.end()) continue;
    throw InputError(say("row 1: the column '{1}' is missing", {name}),
                     say("a first row with {1}", {listed(required)}),
                     {.file = file_, .text = TextPosition{}});
  }
  rows_.erase(rows_.begin());
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    if (rows_[row].size() <= columns_.size()) continue;
    throw InputError(
        say("row {1} has {2} cells", {row + 2, rows_[row].size()}),
        count_of(static_cast<int>(columns_.size()), "{1} cell at most", "{1} cells at most"),
        {.file = file_, .text = rows_[row][columns_.size()].at});
  }
}

const CsvCell* CsvTable::cell(std::size_t row, std::string_view column) const {
  const auto found = std::ranges::find(columns_, column);
  const auto index = static_cast<std::size_t>(found - columns_.begin());
  return index < rows_[row].size() ? &rows_[row][index] : nullptr;
}

std::string CsvTable::text(std::size_t row, std::string_view column) const {
  const CsvCell* found = cell(row, column);
  return found == nullptr ? std::string() : found->text;
}

InputError CsvTable::fault(std::size_t row, std::string_view column, const std::string& problem,
                           const std::string& expected) const {
  const CsvCell* found = cell(row, column);
  const CsvCell& at = found != nullptr ? *found : rows_[row].front();
  return InputError(say("row {1}, column {2}: {3}", {row + 2, column, problem}), expected,
                    {.file = file_, .text = at.at});
}

std::optional<double> CsvTable::number(std::size_t row, std::string_view column,
                                       double most) const {
  const std::string given = text(row, column);
  if (given.empty()) return {};
  double value = 0;
  const auto read = std::from_chars(given.data(), given.data() + given.size(), value);
  const bool whole = read.ec == std::errc{} && read.ptr == given.data() + given.size();
  if (whole && value >= 0 && value <= most) return value;
  throw fault(row, column,
              say("'{1}' is not a number from 0 to {2}", {given, format_short(most, 0)}),
              say("digits, with a point before decimals"));
}

std::optional<int> CsvTable::count(std::size_t row, std::string_view column) const {
  constexpr double most = 1e6;
  const auto value = number(row, column, most);
  if (!value) return {};
  if (*value == std::floor(*value)) return static_cast<int>(*value);
  throw fault(row, column, say("'{1}' is not a whole number", {text(row, column)}), say("pieces"));
}

std::optional<int> CsvTable::day(std::size_t row, std::string_view column) const {
  const std::string given = text(row, column);
  if (given.empty()) return {};
  if (const auto day = day_number(given)) return day;
  throw fault(row, column, say("'{1}' is not a day of the calendar", {given}), say("YYYY-MM-DD"));
}

}  // namespace drapewright::casefile
