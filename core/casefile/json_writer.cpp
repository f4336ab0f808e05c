#include "core/casefile/json_writer.h"

#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>

namespace drapewright::casefile {
namespace {

constexpr std::size_t line_width = 100;  // of a list of points

std::string shortest(double value) {
  if (!std::isfinite(value)) return "null";
  if (value == 0) return "0";  // never -0
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  return std::string(digits.data(), end);
}

std::string quoted(std::string_view text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
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
  if (!compact_) out_ += '\n' + std::string(2 * filled_.size(), ' ');
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
  out_ += quoted(name) + (compact_ ? ":" : ": ");
  after_name_ = true;
}

void JsonWriter::number(double value) { raw(shortest(value)); }
void JsonWriter::text(std::string_view value) { raw(quoted(value)); }
void JsonWriter::boolean(bool value) { raw(value ? "true" : "false"); }
void JsonWriter::null() { raw("null"); }

void JsonWriter::raw(std::string_view json) {
  before_value();
  out_ += json;
}

void JsonWriter::point(geometry::Point value) { numbers(std::array{value.x, value.y}); }

void JsonWriter::numbers(std::span<const double> values) {
  std::string list;
  for (const double value : values) {
    list += (list.empty() ? "" : compact_ ? "," : ", ") + shortest(value);
  }
  raw("[" + list + "]");
}

void JsonWriter::ring(const geometry::Ring& points, bool closed) {
  before_value();
  out_ += '[';
  const std::string indent(2 * filled_.size() + 2, ' ');
  std::size_t column = line_width;
  const std::size_t count = points.size() + (closed && !points.empty() ? 1 : 0);
  for (std::size_t i = 0; i < count; ++i) {
    const auto& p = points[i % points.size()];
    const std::string text = "[" + shortest(p.x) + (compact_ ? "," : ", ") + shortest(p.y) + "]";
    if (i > 0) out_ += ',';
    column += text.size() + 2;  // with the blank before it and the comma after it
    if (compact_) {
      out_ += text;
    } else if (column > line_width) {
      out_ += '\n' + indent + text;
      column = indent.size() + text.size() + 1;
    } else {
      out_ += ' ' + text;
    }
  }
  if (!compact_ && count > 0) out_ += '\n' + std::string(2 * filled_.size(), ' ');
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
