#include "tests/batch/program.h"

#include <sys/wait.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "tests/support/example_case.h"
#include "tests/support/places.h"

namespace drapewright::batch_tests {
namespace {

std::string in_shell_quotes(const std::string& word) {
  std::string out = "'";
  for (const char c : word) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

}  // namespace

Folder::Folder() {
  std::string name = (std::filesystem::temp_directory_path() / "drapewright-batch-XXXXXX").string();
  path_ = ::mkdtemp(name.data());
}

Folder::~Folder() { std::filesystem::remove_all(path_); }

void Folder::put(const std::string& name, const std::string& text) const {
  std::ofstream(path_ / name, std::ios::binary) << text;
}

std::string Folder::get(const std::string& name) const {
  std::ifstream file(path_ / name, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

Outcome Folder::run(const std::vector<std::string>& arguments, const std::string& input,
                    const std::string& before) const {
  const Folder streams;
  streams.put("in", input);
  std::string command = "cd " + in_shell_quotes(path_.string()) + " && ";
  if (!before.empty()) command += before + " && ";
  command += in_shell_quotes(DRAPEWRIGHT_BATCH);
  for (const auto& argument : arguments) command += " " + in_shell_quotes(argument);
  for (const auto& [sign, name] : {std::pair{"<", "in"}, {">", "out"}, {"2>", "err"}}) {
    command += std::string(" ") + sign + in_shell_quotes((streams.path() / name).string());
  }
  const int status = std::system(command.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, streams.get("out"), streams.get("err")};
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::string plain_case() { return support::example_case(); }

std::filesystem::path demo_case(const std::string& name) {
  return std::filesystem::path(support::project_folder()) / "demo_cases" / (name + ".json");
}

}  // namespace drapewright::batch_tests
