#include "core/report/text_size.h"

#include <algorithm>
#include <array>
#include <sstream>
#include <utility>

namespace drapewright::report {

namespace {

// Advance widths of DejaVu Sans for the characters from space to tilde, in thousandths of the size.
constexpr std::array<int, 95> advances{
    318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361,  318, 337, 637, 637, 637,
    637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 531, 1000, 685, 687, 699, 771, 632,
    576, 775, 752, 295, 295, 656, 558, 863, 749, 788, 604, 788, 695, 635,  611, 732, 685, 989, 686,
    611, 686, 391, 337, 391, 838, 500, 500, 613, 635, 550, 635, 616, 353,  635, 634, 278, 278, 580,
    278, 975, 634, 612, 635, 635, 412, 521, 393, 634, 592, 818, 592, 592,  525, 637, 337, 637, 838};
constexpr double bold_factor = 1.13;  // of running text; single narrow letters reach 1.26
constexpr int other_letter = 750;     // Latin with accents, Greek, Cyrillic, signs
constexpr int wide_letter = 1050;     // ideographs, symbols

int advance_of(unsigned char first_byte) {
  if (first_byte >= 32 && first_byte < 127) return advances[first_byte - 32];
  if (first_byte < 0xC0) return 0;  // a control character or the rest of one counted already
  return first_byte < 0xE2 ? other_letter : wide_letter;
}

}  // namespace

double text_width_mm(std::string_view text, double size_mm, bool bold) {
  int sum = 0;
  for (const char c : text) sum += advance_of(static_cast<unsigned char>(c));
  return sum / 1000.0 * size_mm * (bold ? bold_factor : 1);
}

std::string shortened(const std::string& text, std::size_t most_bytes) {
  if (text.size() <= most_bytes) return text;
  std::size_t end = most_bytes;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end) + "\u2026";
}

std::string fitted(const std::string& text, double width_mm, double size_mm, bool bold) {
  std::string part = text;
  for (std::size_t bytes = text.size(); bytes > 0; --bytes) {
    part = shortened(text, bytes);
    if (text_width_mm(part, size_mm, bold) <= width_mm) break;
  }
  return part;
}

namespace {

/// As many whole characters of a word as the width holds, one at least.
std::size_t bytes_that_fit(const std::string& word, double width_mm, double size_mm, bool bold) {
  std::size_t fitting = 0;
  for (std::size_t end = 1; end <= word.size(); ++end) {
    const bool inside = end < word.size() && (static_cast<unsigned char>(word[end]) & 0xC0) == 0x80;
    if (inside) continue;
    if (fitting > 0 && text_width_mm(word.substr(0, end), size_mm, bold) > width_mm) break;
    fitting = end;
  }
  return fitting;
}

}  // namespace

std::vector<std::string> wrapped(const std::string& text, double width_mm, double size_mm,
                                 bool bold) {
  const auto fits = [&](const std::string& line) {
    return text_width_mm(line, size_mm, bold) <= width_mm;
  };
  std::vector<std::string> lines;
  std::istringstream paragraphs(text);
  for (std::string paragraph; std::getline(paragraphs, paragraph);) {
    std::istringstream words(paragraph);
    std::string line;
    for (std::string word; words >> word;) {
      if (!line.empty() && !fits(line + " " + word)) lines.push_back(std::exchange(line, {}));
      while (!fits(word)) {
        const std::size_t part = bytes_that_fit(word, width_mm, size_mm, bold);
        if (part >= word.size()) break;
        lines.push_back(word.substr(0, part));
        word.erase(0, part);
      }
      line += (line.empty() ? "" : " ") + word;
    }
    lines.push_back(line);
  }
  return lines;
}

geometry::Box label_box(const Label& label) {
  const double width = text_width_mm(label.text, label.size_mm, label.bold);
  const double shift = label.anchor == Label::Anchor::start    ? 0
                       : label.anchor == Label::Anchor::middle ? width / 2
                                                               : width;
  const double left = label.at.x - shift;
  return {{left, label.at.y - text_ascent * label.size_mm},
          {left + width, label.at.y + text_descent * label.size_mm}};
}

}  // namespace drapewright::report
