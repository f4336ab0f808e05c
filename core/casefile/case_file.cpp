#include "core/casefile/case_json.h"
#include "core/casefile/text_file.h"

namespace drapewright::casefile {

wound::Case read_case(const std::filesystem::path& path, const Progress& progress) {
  return case_from_json(read_text(path, largest_file_bytes), path.string(), progress);
}

void write_case(const std::filesystem::path& path, const wound::Case& value) {
  write_text(path, case_to_json(value));
}

}  // namespace drapewright::casefile
