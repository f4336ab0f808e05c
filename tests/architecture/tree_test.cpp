#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <set>

#include "tests/architecture/rules.h"
#include "tests/support/places.h"

// The rules, on this source tree.
namespace drapewright::architecture {
namespace {

namespace fs = std::filesystem;

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

bool is_text(const fs::path& path) {
  static const std::set<std::string> endings = {".h",   ".cpp",  ".txt", ".cmake", ".md",
                                                ".sh",  ".json", ".py",  ".svg",   ".csv",
                                                ".xml", ".ts",   ".qrc", ".supp",  ".desktop"};
  return endings.contains(path.extension().string()) || path.filename() == "run";
}

/// Calls `visit` with each text file's path from the root; returns how many there were.
int for_each_file(const std::function<void(const std::string&, const std::string&)>& visit) {
  const fs::path root = support::project_folder();
  int count = 0;
  for (fs::recursive_directory_iterator at(root), end; at != end; ++at) {
    const std::string name = at->path().filename().string();
    if (at->is_directory() && (name == ".git" || name == "build")) at.disable_recursion_pending();
    if (!at->is_regular_file() || !is_text(at->path())) continue;
    visit(fs::relative(at->path(), root).generic_string(), read(at->path()));
    ++count;
  }
  return count;
}

void append(std::vector<Breach>& all, std::vector<Breach> more) {
  all.insert(all.end(), more.begin(), more.end());
}

bool is_code(const std::string& file) { return file.ends_with(".h") || file.ends_with(".cpp"); }

TEST(Tree, KeepsToTheTableOfIncludes) {
  std::vector<Breach> breaches;
  int headers_and_sources = 0;
  for_each_file([&](const std::string& file, const std::string& text) {
    if (is_code(file)) {
      append(breaches, check_code(file, text));
      ++headers_and_sources;
    } else if (file.ends_with("CMakeLists.txt")) {
      append(breaches, check_links(file, text));
    }
  });
  EXPECT_GT(headers_and_sources, 40) << "the tree was not found";
  EXPECT_TRUE(breaches.empty()) << describe(breaches);
}

TEST(Tree, NamesNoMachineAndNoTracker) {
  std::vector<Breach> breaches;
  const int files = for_each_file([&](const std::string& file, const std::string& text) {
    if (file != "DEVELOPERS.md") append(breaches, check_words(file, text));
  });
  EXPECT_GT(files, 60) << "the tree was not found";
  EXPECT_TRUE(breaches.empty()) << describe(breaches);
}

}  // namespace
}  // namespace drapewright::architecture
