#include "core/report/xml_text.h"

#include <cstdint>

namespace drapewright::report {

namespace {

struct Decoded {
  char32_t character = 0xFFFD;
  std::size_t bytes = 1;
};

/// The character at `at`; U+FFFD over one byte where the text is not UTF-8 (RFC 3629).
Decoded decode(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
  const std::uint8_t first = byte(at);
  if (first < 0x80) return {first, 1};
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return {};
  char32_t character = first & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0) != 0x80) return {};
    character = character << 6 | (byte(at + i) & 0x3Fu);
  }
  const char32_t least = length == 2 ? 0x80 : length == 3 ? 0x800 : 0x10000;
  const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
  if (character < least || character > 0x10FFFF || surrogate) return {};
  return {character, length};
}

/// XML 1.0, production 2 (Char).
bool allowed(char32_t c) {
  return c == 9 || c == 10 || c == 13 || (c >= 0x20 && c != 0xFFFE && c != 0xFFFF);
}

}  // namespace

std::string xml_text(std::string_view text) {
  std::string escaped;
  for (std::size_t at = 0; at < text.size();) {
    const Decoded next = decode(text, at);
    const std::string_view bytes = text.substr(at, next.bytes);
    at += next.bytes;
    if (!allowed(next.character)) continue;
    switch (next.character) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case 0xFFFD:
        escaped += "\xEF\xBF\xBD";
        break;
      default:
        escaped += bytes;
    }
  }
  return escaped;
}

}  // namespace drapewright::report
