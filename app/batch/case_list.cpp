#include "app/batch/case_list.h"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <iterator>
#include <string_view>
#include <system_error>

#include "core/base/error.h"
#include "core/base/say.h"
#include "core/casefile/text_file.h"

namespace drapewright::batch {
namespace {

namespace fs = std::filesystem;

/// Room for a hundred thousand long paths.
constexpr std::uintmax_t longest_list = 64 << 20;

std::vector<std::string> files_in(const std::string& folder) {
  std::vector<std::string> files;
  std::error_code error;
  for (fs::directory_iterator at(folder, error); !error && at != fs::directory_iterator();
       at.increment(error)) {
    std::error_code unknown;
    if (at->path().extension() == ".json" && !at->is_directory(unknown)) {
      files.push_back(at->path().string());
    }
  }
  if (error) {
    throw InputError(say("the folder cannot be read: {1}", {error.message()}),
                     say("a folder of case files"), {.file = folder});
  }
  if (files.empty()) {
    throw InputError(say("no case file lies in this folder"), say("files that end in .json"),
                     {.file = folder});
  }
  std::ranges::sort(files);
  return files;
}

std::vector<std::string> lines_of(const std::string& list) {
  const std::string text = casefile::read_text(list, longest_list);
  std::vector<std::string> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    std::string_view line = std::string_view(text).substr(begin, end - begin);
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (!line.empty()) lines.emplace_back(line);
    begin = end + 1;
  }
  if (lines.empty()) {
    throw InputError(say("the list names no case file"), say("one file or folder a line"),
                     {.file = list});
  }
  return lines;
}

void append(const std::vector<std::string>& named, std::vector<std::string>& files) {
  for (const std::string& name : named) {
    std::error_code unknown;
    if (name != "-" && fs::is_directory(name, unknown)) {
      std::ranges::move(files_in(name), std::back_inserter(files));
    } else {
      files.push_back(name);
    }
  }
}

}  // namespace

void add_case_arguments(CLI::App& command, CaseArguments& arguments) {
  auto* group =
      command.add_option_group(say("Cases"), say("what to work on, one of these or both"));
  group->add_option("CASE", arguments.named,
                    say("Case files (docs/case.schema.json), or folders of .json files; - is "
                        "standard input"));
  group
      ->add_option(
          "--list", arguments.list,
          say("A file that names more of them, one a line, for more than a command line holds"))
      ->type_name(say("FILE"));
  group->require_option(1, 2);
}

std::vector<std::string> case_files(const CaseArguments& arguments) {
  std::vector<std::string> files;
  append(arguments.named, files);
  if (!arguments.list.empty()) append(lines_of(arguments.list), files);
  return files;
}

}  // namespace drapewright::batch
