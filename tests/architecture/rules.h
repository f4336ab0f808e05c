#pragma once

#include <string>
#include <string_view>
#include <vector>

/// The rules of the house (DEVELOPERS.md), as checks on the text of one file.
namespace drapewright::architecture {

struct Breach {
  std::string file;  ///< relative to the source tree
  int line = 0;
  std::string what;
};

/// Source text without comments, and without what stands in string and character literals; lines
/// stay where they are. Quoted #include names are kept.
std::string code_only(std::string_view text);

/// Who may include whom; no Qt in core; no buffering but for core/geometry/offset*.cpp; no clock,
/// locale, environment or randomness in core. For C++ files only.
/// @param file  path relative to the source tree, with '/'
std::vector<Breach> check_code(const std::string& file, std::string_view text);

/// A room's CMakeLists.txt may link only what its includes may name.
std::vector<Breach> check_links(const std::string& file, std::string_view text);

/// For every text file of the project: no path of somebody's machine, no tracker's numbers, no
/// package host.
std::vector<Breach> check_words(const std::string& file, std::string_view text);

/// One breach a line, for a failed expectation.
std::string describe(const std::vector<Breach>& breaches);

}  // namespace drapewright::architecture
