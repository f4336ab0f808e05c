#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

namespace drapewright::casefile {

/// The bytes of a file; "-" is standard input.
/// @param most  refuses what is longer, so that a mistaken file (or an endless device) is not read
///              for minutes
/// @throws InputError that names the file and says what is wrong: not there, a folder, no
///         permission, too long, a fault while reading
std::string read_text(const std::filesystem::path& path, std::uintmax_t most);

/// Takes the place of a file, wholly or not at all: text is written beside it, and on `commit`
/// flushed to the disk and renamed, and the folder flushed. A link's target is replaced, not the
/// link; the old file's permissions are kept. Without a commit nothing has happened. "-" is
/// standard output; that, a device or a pipe is written to as it is.
class FileReplacement {
 public:
  /// @throws InputError that says what to do; so do `write` and `commit`, and the old file is
  ///         untouched then
  explicit FileReplacement(const std::filesystem::path& path);
  ~FileReplacement();
  FileReplacement(FileReplacement&&) noexcept;
  FileReplacement& operator=(FileReplacement&&) = delete;

  void write(std::string_view text);
  void commit();

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

/// Puts `text` in the place of a file. @throws InputError as above
void write_text(const std::filesystem::path& path, std::string_view text);

}  // namespace drapewright::casefile
