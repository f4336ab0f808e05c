#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

namespace drapewright::batch {

/// Which case files a command is to work on.
struct CaseArguments {
  std::vector<std::string> named;  ///< files and folders as the user gave them; - is standard input
  std::string list;                ///< a file with one more of them a line, - standard input
};

/// Adds `CASE...` and `--list FILE` to a command, of which one must be given.
void add_case_arguments(CLI::App& command, CaseArguments& arguments);

/// The files in the order of the arguments, then those of the list. A folder stands for the .json
/// files that lie in it, in the order of their names; folders inside it are not looked into.
/// @throws InputError for a folder or a list that cannot be read or holds no case
std::vector<std::string> case_files(const CaseArguments& arguments);

}  // namespace drapewright::batch
