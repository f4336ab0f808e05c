#include "core/casefile/spelling.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <vector>

namespace drapewright::casefile {
namespace {

/// Small letters and digits only: "Depth-cm", "depthCm" and "depth_cm" are one spelling.
std::string plain(std::string_view word) {
  std::string out;
  for (const char c : word) {
    const auto letter = static_cast<unsigned char>(c);
    if (c != '_' && c != '-' && c != ' ') out += static_cast<char>(std::tolower(letter));
  }
  return out;
}

/// The name less its unit: "depth" of "depth_cm". Nothing when it carries none.
std::string_view less_unit(std::string_view word) {
  constexpr std::array<std::string_view, 22> units{
      "_cm",  "_mm",   "_m",   "_in",  "_inch", "_inches", "_ml",   "_l",
      "_cc",  "_h",    "_min", "_d",   "_day",  "_hours",  "_days", "_deg",
      "_rad", "_mmhg", "_kpa", "_hpa", "_usd",  "_eur"};
  for (const auto unit : units) {
    if (word.size() > unit.size() && word.ends_with(unit)) {
      return word.substr(0, word.size() - unit.size());
    }
  }
  return {};
}

int slips_allowed(std::string_view known) { return known.size() >= 6 ? 2 : 1; }

}  // namespace

int edit_distance(std::string_view a, std::string_view b) {
  const std::size_t width = b.size() + 1;
  std::vector<int> two_back(width), back(width), row(width);
  for (std::size_t j = 0; j < width; ++j) back[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j < width; ++j) {
      const int exchanged = back[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({back[j] + 1, row[j - 1] + 1, exchanged});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], two_back[j - 2] + 1);
      }
    }
    std::swap(two_back, back);
    std::swap(back, row);
  }
  return back[b.size()];
}

bool looks_like(std::string_view word, std::string_view known) {
  if (word.starts_with("x_") || word.size() > known.size() + 12) return false;
  if (edit_distance(plain(word), plain(known)) <= slips_allowed(known)) return true;
  const std::string_view stem = less_unit(known);
  if (stem.empty()) return false;
  std::string lower;
  for (const char c : word) {
    lower += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  const std::string_view word_stem = less_unit(lower);
  return edit_distance(plain(word_stem.empty() ? lower : word_stem), plain(stem)) <= 1;
}

std::string_view nearest_name(std::string_view word, std::span<const std::string_view> known) {
  std::string_view nearest;
  int least = 1000;
  for (const auto name : known) {
    if (!looks_like(word, name)) continue;
    const int edits = edit_distance(word, name);
    if (edits < least) {
      least = edits;
      nearest = name;
    }
  }
  return nearest;
}

}  // namespace drapewright::casefile
