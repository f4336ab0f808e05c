#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace drapewright::casefile {

/// The bytes of a file; "-" is standard input.
/// @param most  refuses what is longer, so that a mistaken file (or an endless device) is not read
///              for minutes
/// @throws InputError that names the file and says what is wrong: not there, a folder, no
///         permission, too long, a fault while reading
std::string read_text(const std::filesystem::path& path, std::uintmax_t most);

/// Puts `text` in the place of a file, wholly or not at all: written beside it, flushed to the
/// disk, renamed, and the folder flushed. A link's target is replaced, not the link; the old
/// file's permissions are kept. "-" is standard output; a device or a pipe is written to as it is.
/// @throws InputError that says what to do; the old file is untouched then
void write_text(const std::filesystem::path& path, std::string_view text);

}  // namespace drapewright::casefile
