#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace drapewright::batch_tests {

/// What a run of the command line left behind.
struct Outcome {
  int status = -1;
  std::string out;
  std::string err;
};

/// A folder of a test's own, in which the command line is run.
class Folder {
 public:
  Folder();
  ~Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  const std::filesystem::path& path() const { return path_; }
  void put(const std::string& name, const std::string& text) const;
  std::string get(const std::string& name) const;
  bool has(const std::string& name) const { return std::filesystem::exists(path_ / name); }

  /// Runs `drapewright-batch` with these arguments and `input` as its standard input.
  /// @param before  a shell command to run first, such as `ulimit`
  Outcome run(const std::vector<std::string>& arguments, const std::string& input = {},
              const std::string& before = {}) const;

 private:
  std::filesystem::path path_;
};

std::vector<std::string> lines_of(const std::string& text);

/// A valid case with one wound of 8 x 5 cm.
std::string plain_case();
std::filesystem::path demo_case(const std::string& name);

}  // namespace drapewright::batch_tests
