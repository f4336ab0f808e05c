#include "tests/architecture/rules.h"

#include <algorithm>
#include <map>
#include <regex>
#include <set>

namespace drapewright::architecture {
namespace {

using Names = std::set<std::string>;

const Names model_rooms = {"base",    "geometry", "wound",   "practice", "supplies",
                           "picture", "tracing", "cutting", "dressing", "healing", "forecast", "teaching"};

/// Who may include whom. A part may always include itself, and base.
const std::map<std::string, Names>& table() {
  static const Names all_of_core = [] {
    Names names = model_rooms;
    names.insert({"casefile", "report"});
    return names;
  }();
  static const Names core_and_printing = [] {
    Names names = all_of_core;
    names.insert("app/printing");
    names.insert("app/wording");
    return names;
  }();
  static const std::map<std::string, Names> who = {
      {"base", {}},
      {"geometry", {}},
      {"practice", {}},
      {"supplies", {"geometry"}},
      {"picture", {"geometry", "practice"}},
      {"tracing", {"geometry"}},
      {"wound", {"geometry", "supplies", "practice", "picture"}},
      {"cutting", {"geometry", "supplies"}},
      {"dressing", {"wound", "practice", "supplies", "cutting", "geometry"}},
      {"healing", {"wound", "geometry"}},
      {"forecast", {"dressing", "wound", "practice", "supplies", "healing", "geometry"}},
      {"teaching", {"dressing", "practice", "geometry"}},
      {"casefile", model_rooms},
      {"report", model_rooms},
      {"app/wording", {}},
      {"app/printing", {"report", "geometry", "app/wording"}},
      {"app/batch", core_and_printing},
      {"app/desktop", core_and_printing},
  };
  return who;
}

/// "core/wound/case.h" -> "wound", "app/batch/plan.cpp" -> "app/batch", else empty.
std::string part_of(const std::string& path) {
  static const std::regex shape("(core|app)/([a-z_]+)/.+");
  std::smatch found;
  if (!std::regex_match(path, found, shape)) return {};
  return found[1] == "core" ? found[2].str() : "app/" + found[2].str();
}

bool may_include(const std::string& from, const std::string& to) {
  if (from == to || to == "base") return true;
  const auto row = table().find(from);
  return row != table().end() && row->second.contains(to);
}

template <typename PerLine>
void for_each_line(std::string_view text, PerLine per_line) {
  int number = 1;
  for (std::size_t start = 0; start <= text.size(); ++number) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    per_line(number, std::string(text.substr(start, end - start)));
    start = end + 1;
  }
}

struct Forbidden {
  std::regex pattern;
  std::string why;
};

const std::vector<Forbidden>& forbidden_in_core() {
  static const std::vector<Forbidden> list = {
      {std::regex(R"(^\s*#\s*include\s*<Q\w*[/>])"), "Qt in core"},
      {std::regex(R"(\b(system_clock|steady_clock|high_resolution_clock)\b)"),
       "core reads a clock"},
      {std::regex(R"(\b(time|clock|localtime|gmtime|strftime|clock_gettime)\s*\()"),
       "core reads a clock"},
      {std::regex(R"(\b(setlocale|localeconv)\s*\(|\bstd::locale\s*(\(\s*\)|::global|\{))"),
       "core reads a locale"},
      {std::regex(R"(\b(stod|stof|stold|strtod|strtof|atof|[fs]?n?printf|[fs]?scanf)\s*\()"),
       "core reads or writes numbers as the locale says"},
      {std::regex(R"(\b(getenv|secure_getenv|setenv|putenv)\s*\()"), "core reads the environment"},
      {std::regex(R"(\b(random_device\b|s?rand\s*\(|arc4random|getrandom))"),
       "core reads randomness"},
  };
  return list;
}

void check_include(const std::string& file, int number, const std::string& line,
                   std::vector<Breach>& breaches) {
  static const std::regex shape(R"re(^\s*#\s*include\s*"([^"]+)".*)re");
  std::smatch found;
  if (!std::regex_match(line, found, shape)) return;
  const std::string target = found[1];
  const std::string from = part_of(file), to = part_of(target);
  if (from.empty()) return;
  if (to.empty()) {
    // What moc and uic write has no folder of ours.
    if (target.ends_with(".moc") || target.starts_with("ui_")) return;
    breaches.push_back({file, number, "\"" + target + "\" does not name its room"});
  } else if (!may_include(from, to)) {
    breaches.push_back({file, number, from + " may not include " + to});
  }
}

bool may_buffer(const std::string& file) {
  static const std::regex files(R"(core/geometry/(buffer\.(h|cpp)|offset\w*\.cpp))");
  return std::regex_match(file, files);
}

}  // namespace

std::string code_only(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  enum { code, line_comment, block_comment, literal } state = code;
  char quote = 0;
  bool include_line = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const char next = i + 1 < text.size() ? text[i + 1] : '\0';
    if (c == '\n') {
      if (state == line_comment || state == literal) state = code;
      include_line = false;
      out += c;
    } else if (state == code && c == '/' && (next == '/' || next == '*')) {
      state = next == '/' ? line_comment : block_comment;
      ++i;
    } else if (state == block_comment && c == '*' && next == '/') {
      state = code;
      ++i;
    } else if (state == literal) {
      if (c == '\\') {
        ++i;
      } else if (c == quote) {
        state = code;
        out += c;
      }
    } else if (state == code) {
      if (c == '#') include_line = true;
      // An apostrophe inside a number parts its digits.
      const bool parts_digits = c == '\'' && !out.empty() && std::isalnum(out.back());
      if ((c == '"' || c == '\'') && !include_line && !parts_digits) {
        state = literal;
        quote = c;
      }
      out += c;
    }
  }
  return out;
}

std::vector<Breach> check_code(const std::string& file, std::string_view text) {
  static const std::regex buffers(R"(\b(unverified_)?buffer\s*\()");
  std::vector<Breach> breaches;
  const bool is_core = file.starts_with("core/");
  if (!part_of(file).empty() && !table().contains(part_of(file))) {
    breaches.push_back({file, 1, "a part that the table of includes does not know"});
  }
  for_each_line(code_only(text), [&](int number, const std::string& line) {
    check_include(file, number, line, breaches);
    if (!is_core) return;
    for (const Forbidden& rule : forbidden_in_core()) {
      if (std::regex_search(line, rule.pattern)) breaches.push_back({file, number, rule.why});
    }
    if (!may_buffer(file) && std::regex_search(line, buffers)) {
      breaches.push_back({file, number, "only the offset may buffer: call inset or outset"});
    }
  });
  return breaches;
}

std::vector<Breach> check_links(const std::string& file, std::string_view text) {
  static const std::regex room(R"(drapewright_room\(\s*(\w+)([^)]*)\))");
  static const std::regex uses(R"(\bUSES\b([a-z_\s]*))");
  static const std::regex word("[a-z_]+");
  std::vector<Breach> breaches;
  const std::string content(text);
  for (std::sregex_iterator at(content.begin(), content.end(), room), end; at != end; ++at) {
    const std::string name = (*at)[1], rest = (*at)[2];
    std::smatch list;
    if (!std::regex_search(rest, list, uses)) continue;
    const std::string linked = list[1];
    for (std::sregex_iterator it(linked.begin(), linked.end(), word); it != end; ++it) {
      if (!may_include(name, it->str())) {
        breaches.push_back({file, 1, name + " may not link " + it->str()});
      }
    }
  }
  return breaches;
}

std::vector<Breach> check_words(const std::string& file, std::string_view text) {
  // Each pattern is broken up so that this file passes its own check.
  static const std::vector<Forbidden> list = {
      {std::regex("(^|[^\\w.])/(wor"
                  "k|hom"
                  "e|roo"
                  "t|Use"
                  "rs)/\\w|/tm"
                  "p/\\w",
                  std::regex::icase),
       "a path of somebody's machine"},
      {std::regex("\\bissu"
                  "e\\s*#?\\s*\\d",
                  std::regex::icase),
       "a tracker's number: say what it is about instead"},
      {std::regex("\\bdeb\\.deb"
                  "ian\\.org|registry\\.npm"
                  "js|\\bpy"
                  "pi\\.org",
                  std::regex::icase),
       "a package host"},
  };
  std::vector<Breach> breaches;
  for_each_line(text, [&](int number, const std::string& line) {
    for (const Forbidden& rule : list) {
      if (std::regex_search(line, rule.pattern)) breaches.push_back({file, number, rule.why});
    }
  });
  return breaches;
}

std::string describe(const std::vector<Breach>& breaches) {
  std::string out;
  for (const Breach& breach : breaches) {
    out += breach.file + ":" + std::to_string(breach.line) + ": " + breach.what + "\n";
  }
  return out;
}

}  // namespace drapewright::architecture
