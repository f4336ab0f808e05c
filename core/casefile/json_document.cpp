#include "core/casefile/json_document.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <unordered_set>

#include "core/base/say.h"
#include "core/casefile/json_fault.h"

namespace drapewright::casefile {
namespace {

constexpr std::string_view blanks = " \t\r\n";

std::size_t skip_blanks(std::string_view text, std::size_t offset) {
  return std::min(text.find_first_not_of(blanks, offset), text.size());
}

/// End of a token that is known to be well formed.
std::size_t end_of_token(std::string_view text, std::size_t begin) {
  switch (text[begin]) {
    case '{':
    case '}':
    case '[':
    case ']':
      return begin + 1;
    case '"':
      for (std::size_t i = begin + 1;; ++i) {
        if (text[i] == '\\') {
          ++i;
        } else if (text[i] == '"') {
          return i + 1;
        }
      }
    case 'f':
      return begin + 5;
    case 't':
    case 'n':
      return begin + 4;
    default:
      return end_of_number(text, begin);
  }
}

std::string decode(std::string_view quoted) {
  if (quoted.find('\\') == std::string_view::npos) {
    return std::string(quoted.substr(1, quoted.size() - 2));
  }
  return nlohmann::json::parse(quoted).get<std::string>();
}

std::string escaped_controls(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7f) {
      out += c;
    } else {
      constexpr std::string_view hex = "0123456789abcdef";
      out += std::string("\\u00") + hex[static_cast<unsigned char>(c) >> 4] + hex[c & 15];
    }
  }
  return out;
}

}  // namespace

/// Takes the events of nlohmann's non-recursive parser and notes where each value lies. The parser
/// does not say where, but it reports tokens one by one and in order, and has checked each: so the
/// next token begins after blanks and at most one separator.
class JsonIndexer {
 public:
  JsonIndexer(JsonDocument& document, const Progress& progress)
      : document_(document), progress_(progress), text_(document.text_) {
    if (text_.substr(0, 3) == "\xEF\xBB\xBF") at_ = 3;
  }

  bool null() { return add(JsonKind::null); }
  bool boolean(bool) { return add(JsonKind::boolean); }
  bool number_integer(std::int64_t) { return add(JsonKind::number); }
  bool number_unsigned(std::uint64_t) { return add(JsonKind::number); }
  bool number_float(double, const std::string&) { return add(JsonKind::number); }
  bool string(const std::string&) { return add(JsonKind::text); }
  bool binary(const std::vector<std::uint8_t>&) { return false; }  // never in JSON text

  bool key(const std::string& name) {
    add(JsonKind::text, true);
    if (!names_.back().insert(name).second) {
      fail(say("the member {1} stands here a second time", {in_quotes(name)}),
           say("each name once in an object"), document_.entries_.back().begin,
           pointer_step(JsonValue(document_, open_.back()).pointer(), name));
    }
    return true;
  }
  bool start_object(std::size_t) { return open(JsonKind::object); }
  bool start_array(std::size_t) { return open(JsonKind::list); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool parse_error(std::size_t, const std::string&, const nlohmann::json::exception&) {
    const auto& entries = document_.entries_;
    BrokenJson broken{.text = text_, .after = at_};
    if (open_.empty()) {
      broken.value_read = !entries.empty();
    } else {
      broken.in_object = entries[open_.back()].kind == JsonKind::object;
      broken.in_list = !broken.in_object;
      broken.opened_at = entries[open_.back()].begin;
      broken.name_read = entries.back().is_name;
    }
    const JsonFault fault = explain(broken);
    fail(fault.problem, fault.expected, fault.offset,
         open_.empty() ? std::string() : JsonValue(document_, open_.back()).pointer());
  }

 private:
  std::size_t next_token() {
    std::size_t begin = skip_blanks(text_, at_);
    if (text_[begin] == ',' || text_[begin] == ':') begin = skip_blanks(text_, begin + 1);
    at_ = end_of_token(text_, begin);
    return begin;
  }

  bool add(JsonKind kind, bool is_name = false) {
    const auto begin = static_cast<std::uint32_t>(next_token());
    auto& entries = document_.entries_;
    const auto index = static_cast<std::uint32_t>(entries.size());
    entries.push_back({kind, is_name, begin, static_cast<std::uint32_t>(at_), index + 1,
                       open_.empty() ? index : open_.back()});
    if (index % values_per_report == 0) {
      progress_.at(static_cast<double>(at_) / static_cast<double>(text_.size()));
    }
    return true;
  }

  bool open(JsonKind kind) {
    add(kind);
    const auto index = static_cast<std::uint32_t>(document_.entries_.size() - 1);
    if (open_.size() >= JsonDocument::deepest) {
      // The pointer would be as long as the nesting is deep and say no more.
      fail(say("objects and lists are nested too deeply"),
           say("at most {1} inside each other", {JsonDocument::deepest}),
           document_.entries_[index].begin, {});
    }
    open_.push_back(index);
    names_.emplace_back();
    return true;
  }

  bool close() {
    next_token();
    auto& entry = document_.entries_[open_.back()];
    entry.end = static_cast<std::uint32_t>(at_);
    entry.next = static_cast<std::uint32_t>(document_.entries_.size());
    open_.pop_back();
    names_.pop_back();
    return true;
  }

  [[noreturn]] void fail(const std::string& problem, const std::string& expected,
                         std::size_t offset, const std::string& pointer) const {
    throw InputError(
        problem, expected,
        {.file = document_.file_, .text = position_of(text_, offset), .pointer = pointer});
  }

  static constexpr std::uint32_t values_per_report = 16384;  ///< some milliseconds

  JsonDocument& document_;
  const Progress& progress_;
  std::string_view text_;
  std::size_t at_ = 0;  ///< end of the last token
  std::vector<std::uint32_t> open_;
  std::vector<std::unordered_set<std::string>> names_;  ///< of each open object
};

JsonDocument::JsonDocument(std::string_view text, std::string file, const Progress& progress)
    : text_(text), file_(std::move(file)) {
  if (text_.size() >= UINT32_MAX) {
    throw InputError(say("the text is too long"), say("less than 4 GB"), {.file = file_});
  }
  if (text_.empty())
    throw InputError(say("the file is empty"), say("a case in JSON"), {.file = file_});
  if (const auto zero = text_.find('\0'); zero != std::string_view::npos) {
    throw InputError(say("this is not a text file: it holds a zero byte"), say("JSON in UTF-8"),
                     {.file = file_, .text = position_of(text_, zero)});
  }
  JsonIndexer indexer(*this, progress);
  nlohmann::json::sax_parse(text_.begin(), text_.end(), &indexer);
}

JsonValue JsonDocument::nearest(std::string_view pointer) const {
  JsonValue value = root();
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    std::string name(pointer.substr(0, pointer.find('/')));
    pointer.remove_prefix(name.size());
    for (auto at = name.find("~1"); at != std::string::npos; at = name.find("~1", at + 1)) {
      name.replace(at, 2, "/");
    }
    for (auto at = name.find("~0"); at != std::string::npos; at = name.find("~0", at + 1)) {
      name.replace(at, 2, "~");
    }
    if (value.kind() == JsonKind::object) {
      const auto inner = value.member(name);
      if (!inner) return value;
      value = *inner;
      continue;
    }
    const auto items = value.items();
    std::size_t index = 0;
    const auto [end, error] = std::from_chars(name.data(), name.data() + name.size(), index);
    if (error != std::errc{} || end != name.data() + name.size() || index >= items.size()) {
      return value;
    }
    value = items[index];
  }
  return value;
}

std::string JsonDocument::name_at(std::uint32_t index) const {
  const Entry& entry = entries_[index];
  return decode(text_.substr(entry.begin, entry.end - entry.begin));
}

JsonKind JsonValue::kind() const { return document_->entries_[index_].kind; }

std::string_view JsonValue::raw() const {
  const auto& entry = document_->entries_[index_];
  return document_->text_.substr(entry.begin, entry.end - entry.begin);
}

double JsonValue::number() const {
  const std::string_view digits = raw();
  double value = 0;
  const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  // Too small to tell from nothing; too large was refused on reading.
  if (result.ec == std::errc::result_out_of_range) return 0;
  return value;
}

std::string JsonValue::text() const { return document_->name_at(index_); }

std::vector<JsonValue> JsonValue::items() const {
  std::vector<JsonValue> out;
  if (kind() != JsonKind::list) return out;
  const auto& entries = document_->entries_;
  for (auto i = index_ + 1; i < entries[index_].next; i = entries[i].next) {
    out.emplace_back(*document_, i);
  }
  return out;
}

std::vector<JsonValue::Member> JsonValue::members() const {
  std::vector<Member> out;
  if (kind() != JsonKind::object) return out;
  const auto& entries = document_->entries_;
  for (auto i = index_ + 1; i < entries[index_].next; i = entries[i + 1].next) {
    out.push_back({document_->name_at(i), {*document_, i}, {*document_, i + 1}});
  }
  return out;
}

std::optional<JsonValue> JsonValue::member(std::string_view name) const {
  for (const auto& member : members()) {
    if (member.name == name) return member.value;
  }
  return std::nullopt;
}

std::string JsonValue::pointer() const {
  const auto& entries = document_->entries_;
  std::vector<std::string> steps;
  for (auto i = index_; entries[i].holder != i; i = entries[i].holder) {
    const auto holder = entries[i].holder;
    if (entries[holder].kind == JsonKind::object) {
      steps.push_back(document_->name_at(entries[i].is_name ? i : i - 1));
      continue;
    }
    std::size_t place = 0;
    for (auto sibling = holder + 1; sibling < i; sibling = entries[sibling].next) ++place;
    steps.push_back(std::to_string(place));
  }
  std::string out;
  for (auto step = steps.rbegin(); step != steps.rend(); ++step) out = pointer_step(out, *step);
  return out;
}

Place JsonValue::place() const {
  return {.file = document_->file_,
          .text = position_of(document_->text_, document_->entries_[index_].begin),
          .pointer = pointer()};
}

std::string JsonValue::in_words() const {
  switch (kind()) {
    case JsonKind::null:
      return "null";
    case JsonKind::boolean:
      return std::string(raw());
    case JsonKind::number:
      return say("the number {1}", {raw().substr(0, 40)});
    case JsonKind::text:
      return say("the text {1}", {in_quotes(text())});
    case JsonKind::list:
      return say("a list");
    case JsonKind::object:
      return say("an object");
  }
  throw std::logic_error("a JSON kind without words");
}

void JsonValue::fail(const std::string& problem, const std::string& expected) const {
  throw InputError(problem, expected, place());
}

TextPosition position_of(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, offset);
  const auto line_start = before.rfind('\n') + 1;  // npos + 1 is 0
  const std::string_view line = before.substr(line_start);
  const auto is_first_byte = [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; };
  auto column = 1 + std::count_if(line.begin(), line.end(), is_first_byte);
  if (line.substr(0, 3) == "\xEF\xBB\xBF" && line_start == 0) --column;  // the mark is no character
  return {static_cast<int>(1 + std::count(before.begin(), before.end(), '\n')),
          static_cast<int>(column)};
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t longest = 40;
  std::size_t end = std::min(text.size(), longest);
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return "\"" + escaped_controls(text.substr(0, end)) + (end < text.size() ? "...\"" : "\"");
}

std::string pointer_step(const std::string& pointer, std::string_view name) {
  std::string step;
  for (const char c : escaped_controls(name)) {
    if (c == '~') {
      step += "~0";
    } else if (c == '/') {
      step += "~1";
    } else {
      step += c;
    }
  }
  return pointer + "/" + step;
}

}  // namespace drapewright::casefile
