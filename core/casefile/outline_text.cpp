#include "core/casefile/outline_text.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <utility>
#include <vector>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/casefile/json_document.h"

namespace drapewright::casefile {
namespace {

constexpr int first_column = 1;

/// One row with a byte for each character, so that a place in it is its column: other blanks become
/// blanks, the typographic minus a hyphen; whatever else is not ASCII stays recognisably wrong.
std::string plain_row(std::string_view row) {
  std::string out;
  for (std::size_t i = 0; i < row.size(); ++i) {
    const auto byte = static_cast<unsigned char>(row[i]);
    if ((byte & 0xC0) == 0x80) continue;  // a continuation of the character before
    const bool no_break_space =
        row.substr(i, 2) == "\xC2\xA0" || row.substr(i, 3) == "\xE2\x80\xAF";
    if (no_break_space || byte == '\r' || byte == '\f' || byte == '\v') {
      out += ' ';
    } else if (row.substr(i, 3) == "\xE2\x88\x92") {
      out += '-';
    } else if (row.substr(i, 3) == "\xEF\xBB\xBF") {
      continue;  // a byte order mark is no character
    } else {
      out += byte < 0x80 ? row[i] : '\x7f';
    }
  }
  return out;
}

bool is_blank(char c) { return c == ' ' || c == '\t'; }

/// A run of characters of a row, and the column where it begins.
struct Field {
  std::string text;
  int column = first_column;
};

struct Row {
  int number = 1;
  std::string text;
  std::string shown;  ///< as pasted, for messages
};

/// Cuts the row at every character that `parts` says is a separator. Blanks around fields go;
/// `keep_empty` keeps a field with nothing in it, which is one that is missing.
template <typename Parts>
std::vector<Field> split(const std::string& row, bool keep_empty, Parts parts) {
  std::vector<Field> fields;
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= row.size(); ++i) {
    if (i < row.size() && !parts(i)) continue;
    std::size_t first = begin, last = i;
    while (first < last && is_blank(row[first])) ++first;
    while (last > first && is_blank(row[last - 1])) --last;
    if (keep_empty || last > first) {
      fields.push_back({row.substr(first, last - first), static_cast<int>(first) + first_column});
    }
    begin = i + 1;
  }
  return fields;
}

std::optional<double> number_from(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  if (text.starts_with('+')) text.erase(0, 1);
  const bool begins_well =
      !text.empty() && (std::isdigit(static_cast<unsigned char>(text.front())) != 0 ||
                        text.front() == '-' || text.front() == '.');
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (!begins_well || error != std::errc{} || end != text.data() + text.size() ||
      !std::isfinite(value)) {
    return std::nullopt;
  }
  return value;
}

class OutlineText {
 public:
  explicit OutlineText(LengthUnit unit) : unit_(unit) {}

  geometry::Ring read(std::string_view text) {
    std::vector<Row> rows = rows_of(text);
    if (!rows.empty() && is_heading(rows.front())) rows.erase(rows.begin());
    geometry::Ring ring;
    if (is_column(rows)) {
      ring = ring_of_column(rows);
    } else {
      for (const Row& row : rows) ring.push_back(point_in(row));
    }
    if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
    if (ring.size() < 3) {
      throw InputError(ring.empty()
                           ? say("there is no point")
                           : count_of(static_cast<int>(ring.size()), "an outline of {1} point",
                                      "an outline of {1} points"),
                       say("at least three corner points, one a line"));
    }
    return ring;
  }

 private:
  /// Those with something in them.
  static std::vector<Row> rows_of(std::string_view text) {
    std::vector<Row> rows;
    Row row;
    for (std::size_t begin = 0; begin <= text.size(); ++row.number) {
      const std::size_t end = std::min(text.find('\n', begin), text.size());
      row.shown = text.substr(begin, end - begin);
      row.text = plain_row(row.shown);
      begin = end + 1;
      if (row.text.find_first_not_of(" \t") != std::string::npos) rows.push_back(row);
    }
    return rows;
  }

  /// The number that stands alone in a row. A comma could part two of them.
  static std::optional<double> lone_number(const Row& row) {
    const auto fields =
        split(row.text, false, [&](std::size_t i) { return is_blank(row.text[i]); });
    const bool lone = fields.size() == 1 && row.text.find_first_of(",;") == std::string::npos;
    return lone ? number_from(fields[0].text) : std::nullopt;
  }

  /// x and y below each other, as a column of a spreadsheet is pasted.
  static bool is_column(const std::vector<Row>& rows) {
    return rows.size() > 1 &&
           std::ranges::all_of(rows, [](const Row& row) { return lone_number(row).has_value(); });
  }

  geometry::Ring ring_of_column(const std::vector<Row>& rows) const {
    if (rows.size() % 2 != 0) {
      fail(rows.back(), first_column,
           count_of(static_cast<int>(rows.size()), "a column of {1} number",
                    "a column of {1} numbers"),
           say("x and y of each point below each other: an even count"));
    }
    geometry::Ring ring;
    for (std::size_t i = 0; i < rows.size(); i += 2) {
      ring.push_back(cm_in(unit_) *
                     geometry::Point{*lone_number(rows[i]), *lone_number(rows[i + 1])});
    }
    return ring;
  }

  [[noreturn]] static void fail(const Row& row, int column, const std::string& problem,
                                const std::string& expected) {
    throw InputError(problem, expected, {.text = TextPosition{row.number, column}});
  }

  /// A first line without any number. One that names another unit than the one that was asked for
  /// is refused: sizes would be wrong by a factor of ten.
  bool is_heading(const Row& row) const {
    const auto fields = split(row.text, false, [&](std::size_t i) {
      return is_blank(row.text[i]) || row.text[i] == ';' || row.text[i] == ',';
    });
    for (const auto& field : fields) {
      if (number_from(field.text)) return false;
    }
    const auto words = split(row.text, false, [&](std::size_t i) {
      return std::isalpha(static_cast<unsigned char>(row.text[i])) == 0;
    });
    for (const auto& word : words) check_unit(row, word);
    return true;
  }

  void check_unit(const Row& row, const Field& word) const {
    std::string lower;
    for (const char c : word.text) {
      lower += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    const std::string wanted(name_of(unit_));
    if (lower == "in" || lower == "inches") lower = "inch";
    const bool is_unit = lower == "cm" || lower == "mm" || lower == "inch" || lower == "m";
    if (is_unit && lower != wanted) {
      fail(row, word.column, say("the heading says {1}", {word.text}),
           say("lengths in {1}", {wanted}));
    }
  }

  geometry::Point point_in(const Row& row) {
    const auto fields = fields_of(row);
    for (const auto& field : fields) {
      if (!number_from(field.text)) {
        const std::string found =
            row.shown == row.text
                ? in_quotes(field.text)
                : say("something other than a number");  // columns and bytes differ: do not quote
        fail(row, field.column,
             field.text.empty() ? say("there is nothing between two separators")
                                : say("found {1}", {found}),
             say("a number"));
      }
    }
    if (fields.size() != 2) {
      fail(row,
           fields.empty() ? first_column
                          : fields[std::min<std::size_t>(2, fields.size() - 1)].column,
           count_of(static_cast<int>(fields.size()), "found {1} number in the row",
                    "found {1} numbers in the row"),
           say("two: x and y"));
    }
    const double scale = cm_in(unit_);
    return {*number_from(fields[0].text) * scale, *number_from(fields[1].text) * scale};
  }

  std::vector<Field> fields_of(const Row& row) {
    const std::string& text = row.text;
    if (text.find(';') != std::string::npos) {
      note_decimal_comma(row);
      return split(text, true, [&](std::size_t i) { return text[i] == ';'; });
    }
    const std::size_t first = text.find_first_not_of(" \t");
    const std::size_t last = text.find_last_not_of(" \t");
    const bool has_blanks =
        text.substr(first, last - first).find_first_of(" \t") != std::string::npos;
    return has_blanks ? fields_between_blanks(row) : fields_between_commas(row);
  }

  /// "5.2 3.1", "5.2, 3.1", "5,2 3,1": a comma that a blank follows is no decimal comma.
  std::vector<Field> fields_between_blanks(const Row& row) {
    const std::string& text = row.text;
    auto fields = split(text, false, [&](std::size_t i) {
      const bool before_blank = i + 1 >= text.size() || is_blank(text[i + 1]);
      return is_blank(text[i]) || (text[i] == ',' && before_blank);
    });
    for (const auto& field : fields) {
      if (field.text.find(',') != std::string::npos) note_decimal_comma(row);
    }
    return fields;
  }

  /// "5.2,3.1": here the comma has to part x from y, and only one comma can.
  std::vector<Field> fields_between_commas(const Row& row) {
    const std::string& text = row.text;
    const auto commas = std::count(text.begin(), text.end(), ',');
    if (commas > 1) {
      fail(row, static_cast<int>(text.find(',')) + first_column,
           say("a comma that may part x from y or be a decimal comma"),
           say("decimal points, or x and y parted by a semicolon or a blank"));
    }
    if (commas == 1) note_parting_comma(row);
    return split(text, true, [&](std::size_t i) { return text[i] == ','; });
  }

  // "5,2" is a point where commas part x from y, but half of one where they are decimal commas.
  void note_decimal_comma(const Row& row) {
    const std::size_t comma = row.text.find(',');
    if (comma == std::string::npos) return;
    if (parting_row_ > 0) {
      fail_on_mixture(row, comma,
                      say("a comma that means something else than in row {1}, where a comma parts "
                          "x from y",
                          {parting_row_}));
    }
    if (decimal_row_ == 0) decimal_row_ = row.number;
  }
  void note_parting_comma(const Row& row) {
    if (decimal_row_ > 0) {
      fail_on_mixture(row, row.text.find(','),
                      say("a comma that means something else than in row {1}, where the comma is a "
                          "decimal comma",
                          {decimal_row_}));
    }
    if (parting_row_ == 0) parting_row_ = row.number;
  }
  [[noreturn]] static void fail_on_mixture(const Row& row, std::size_t comma,
                                           const std::string& problem) {
    fail(row, static_cast<int>(comma) + first_column, problem,
         say("one meaning of the comma in all rows"));
  }

  LengthUnit unit_;
  int parting_row_ = 0;  ///< first row in which a comma alone parts x from y
  int decimal_row_ = 0;  ///< first row with a decimal comma
};

}  // namespace

double cm_in(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::cm:
      return 1;
    case LengthUnit::mm:
      return 0.1;
    case LengthUnit::m:
      return 100;
    case LengthUnit::inch:
      return 2.54;
  }
  throw std::logic_error("a unit without a length");
}

std::string_view name_of(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::cm:
      return "cm";
    case LengthUnit::mm:
      return "mm";
    case LengthUnit::m:
      return "m";
    case LengthUnit::inch:
      return "inch";
  }
  throw std::logic_error("a unit without a name");
}

geometry::Ring outline_from_text(std::string_view text, LengthUnit unit) {
  return OutlineText(unit).read(text);
}

}  // namespace drapewright::casefile
