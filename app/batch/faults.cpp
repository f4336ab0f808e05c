#include "app/batch/faults.h"

#include <cstdio>

#include "core/base/error.h"
#include "core/base/say.h"

namespace drapewright::batch {

ExitStatus worse(ExitStatus a, ExitStatus b) {
  if (a == ExitStatus::internal_failure || b == ExitStatus::good) return a;
  return b;
}

Fault fault_of(const std::exception& error, const std::string& file) {
  if (dynamic_cast<const InputError*>(&error) != nullptr) {
    return {error.what(), ExitStatus::bad_input};
  }
  return {say("{1}: the program failed, which is a fault of its own: {2}", {file, error.what()}),
          ExitStatus::internal_failure};
}

Fault fault_in(const std::string& file, const std::exception& error) {
  const auto* input = dynamic_cast<const InputError*>(&error);
  return input == nullptr ? fault_of(error, file) : fault_of(input->within({.file = file}), file);
}

ExitStatus report(const Fault& fault) {
  std::string line = fault.line;
  for (char& c : line) {
    // A file's name may hold anything; a fault is one line all the same.
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
  }
  line += '\n';
  std::fwrite(line.data(), 1, line.size(), stderr);
  return fault.status;
}

}  // namespace drapewright::batch
