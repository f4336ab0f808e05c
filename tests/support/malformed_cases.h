#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace drapewright::support {

/// A case file with one fault, and what the line about it must say.
struct MalformedCase {
  std::string name;  ///< letters only
  std::string text;
  std::string place;                  ///< how the line goes on after "FILE:" : "6:35: ", "6:", " "
  std::vector<std::string> contains;  ///< what was found, what was expected
};

void PrintTo(const MalformedCase& value, std::ostream* out);

/// Everything that a case file can be instead of a case, shared by the tests of the reader and of
/// the programs.
std::vector<MalformedCase> malformed_cases();

}  // namespace drapewright::support
