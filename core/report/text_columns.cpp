#include "core/report/text_columns.h"

#include <algorithm>
#include <cstdlib>
#include <sstream>
#include <string_view>

namespace drapewright::report {
namespace {

constexpr std::size_t line_width = 80;

std::size_t characters_of(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

}  // namespace

std::string Columns::row(const std::vector<std::string>& cells) const {
  std::string line = " ";
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const auto width = static_cast<std::size_t>(std::abs(widths_[i]));
    const std::size_t used = characters_of(cells[i]);
    const std::string gap(used < width ? width - used : 0, ' ');
    line += " " + (widths_[i] < 0 ? gap + cells[i] : cells[i] + gap);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

std::string wrapped(const std::string& text, std::size_t indent) {
  std::istringstream words(text);
  std::string out, line(indent, ' ');
  bool empty = true;
  for (std::string word; words >> word; empty = false) {
    if (!empty && characters_of(line) + 1 + characters_of(word) > line_width) {
      out += line + "\n";
      line = std::string(2 * indent, ' ');
      empty = true;
    }
    line += (empty ? "" : " ") + word;
  }
  return out + line + "\n";
}

}  // namespace drapewright::report
