#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <string>

#include "tests/support/places.h"

// docs/hazards.md promises that a test shows each control: a test that is renamed or dropped must
// not leave the promise standing.
namespace drapewright::architecture {
namespace {

namespace fs = std::filesystem;

const fs::path root = support::project_folder();

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::set<std::string> matches(const std::string& text, const std::regex& shape) {
  std::set<std::string> found;
  for (std::sregex_iterator at(text.begin(), text.end(), shape), end; at != end; ++at) {
    found.insert((*at)[1].str() + "." + (*at)[2].str());
  }
  return found;
}

std::set<std::string> tests_that_exist() {
  static const std::regex shape(R"(\bTEST(?:_F|_P)?\(\s*(\w+)\s*,\s*(\w+)\s*\))");
  std::set<std::string> names;
  for (const auto& entry : fs::recursive_directory_iterator(root / "tests")) {
    if (entry.path().extension() == ".cpp") names.merge(matches(read(entry.path()), shape));
  }
  return names;
}

TEST(Hazards, NameOnlyTestsThatExist) {
  const auto named = matches(read(root / "docs/hazards.md"), std::regex(R"(`(\w+)\.([A-Z]\w+)`)"));
  const auto exist = tests_that_exist();
  EXPECT_GT(named.size(), 40u) << "the page was not read";
  for (const std::string& name : named) EXPECT_TRUE(exist.contains(name)) << name;
}

}  // namespace
}  // namespace drapewright::architecture
