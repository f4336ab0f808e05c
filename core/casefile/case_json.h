#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/progress.h"
#include "core/wound/case.h"

namespace drapewright::casefile {

/// Case file size above which reading is refused, so that a mistaken file is not loaded for
/// minutes: 16 MB holds some half a million corner points.
inline constexpr std::uintmax_t largest_file_bytes = 16u << 20;

/// Reads a case from JSON text (docs/case.schema.json). `file` names the text in errors.
/// Unknown members are kept and written back.
/// @throws InputError with line and column, and the JSON pointer of the member, for anything that
///         is not a valid case: syntax, version, missing or misspelt member, type, number out of
///         bounds, faulty shape
/// @throws Cancelled when `progress` was told to stop
wound::Case case_from_json(std::string_view text, const std::string& file = {},
                           const Progress& progress = {});

/// The case as JSON text, indented by two spaces, points several to a line; ends with a newline.
/// Reading it back gives an equal case, and equal cases give equal text.
std::string case_to_json(const wound::Case& value);

/// @throws InputError as above, and for what cannot be read: no such file, a folder, no
///         permission, too large, empty. "-" reads standard input.
wound::Case read_case(const std::filesystem::path& path, const Progress& progress = {});

/// Writes beside the old file, flushes to the disk, then renames: either the old content or the new
/// is there, whatever happens. @throws InputError when that fails; the old file is untouched
void write_case(const std::filesystem::path& path, const wound::Case& value);

}  // namespace drapewright::casefile
