#include "core/casefile/json_writer.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>

namespace drapewright::casefile {
namespace {

constexpr std::size_t line_width = 100;  // of a list of points

void append_number(double value, std::string& out) {
  if (!std::isfinite(value)) {
    out += "null";
    return;
  }
  if (value == 0) value = 0;  // never -0
  std::array<char, 32> digits;
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  out.append(digits.data(), end);
}

bool is_plain(char c) { return c >= 0x20 && c < 0x7f && c != '"' && c != '\\'; }

void append_quoted(std::string_view text, std::string& out) {
  if (std::ranges::all_of(text, is_plain)) {
    ((out += '"') += text) += '"';
    return;
  }
  out += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace

void JsonWriter::before_value() {
  if (after_name_) {
    after_name_ = false;
    return;
  }
  if (filled_.empty()) return;
  if (filled_.back()) out_ += ',';
  filled_.back() = true;
  new_line();
}

void JsonWriter::new_line() {
  if (compact_) return;
  out_ += '\n';
  out_.append(2 * filled_.size(), ' ');
}

void JsonWriter::end(char bracket) {
  const bool filled = filled_.back();
  filled_.pop_back();
  if (filled) new_line();
  out_ += bracket;
}

void JsonWriter::begin_object() {
  before_value();
  out_ += '{';
  filled_.push_back(false);
}
void JsonWriter::end_object() { end('}'); }

void JsonWriter::begin_list() {
  before_value();
  out_ += '[';
  filled_.push_back(false);
}
void JsonWriter::end_list() { end(']'); }

void JsonWriter::name(std::string_view name) {
  before_value();
  append_quoted(name, out_);
  out_ += compact_ ? ":" : ": ";
  after_name_ = true;
}

void JsonWriter::number(double value) {
  before_value();
  append_number(value, out_);
}
void JsonWriter::text(std::string_view value) {
  before_value();
  append_quoted(value, out_);
}
void JsonWriter::boolean(bool value) { raw(value ? "true" : "false"); }
void JsonWriter::null() { raw("null"); }

void JsonWriter::raw(std::string_view json) {
  before_value();
  out_ += json;
}

void JsonWriter::point(geometry::Point value) { numbers(std::array{value.x, value.y}); }

void JsonWriter::numbers(std::span<const double> values) {
  before_value();
  append_list(values);
}

void JsonWriter::append_list(std::span<const double> values) {
  out_ += '[';
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (i > 0) out_ += compact_ ? "," : ", ";
    append_number(values[i], out_);
  }
  out_ += ']';
}

void JsonWriter::ring(const geometry::Ring& points, bool closed) {
  before_value();
  out_ += '[';
  const std::size_t indent = 2 * filled_.size() + 2;
  std::size_t line_begin = out_.size();
  const std::size_t count = points.size() + (closed && !points.empty() ? 1 : 0);
  for (std::size_t i = 0; i < count; ++i) {
    const auto& p = points[i % points.size()];
    if (i > 0) out_ += ',';
    const std::size_t begin = out_.size();
    if (!compact_) out_ += ' ';
    append_list(std::array{p.x, p.y});
    // The comma to come counts as well.
    if (compact_ || (i > 0 && out_.size() - line_begin < line_width)) continue;
    out_.replace(begin, 1, '\n' + std::string(indent, ' '));
    line_begin = begin + 1;
  }
  if (!compact_ && count > 0) {
    out_ += '\n';
    out_.append(indent - 2, ' ');
  }
  out_ += ']';
}

void JsonWriter::extra(const ExtraMembers& members) {
  for (const auto& [member, json] : members) {
    name(member);
    raw(json);
  }
}

std::string JsonWriter::take() {
  if (!compact_) out_ += '\n';
  return std::move(out_);
}

}  // namespace drapewright::casefile
