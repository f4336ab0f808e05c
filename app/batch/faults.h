#pragma once

#include <exception>
#include <string>

namespace drapewright::batch {

/// What the program leaves with. The worse one wins: a failure of the program above a fault of its
/// input.
enum class ExitStatus { good = 0, bad_input = 2, internal_failure = 1 };

ExitStatus worse(ExitStatus a, ExitStatus b);

/// One thing that went wrong: a line for standard error, and what it is.
struct Fault {
  std::string line;
  ExitStatus status = ExitStatus::bad_input;
};

/// The fault that an exception stands for: an InputError says where it lies by itself, anything
/// else is a failure of the program while it worked on `file`.
Fault fault_of(const std::exception& error, const std::string& file);

/// The same where the error may not say yet in which file it lies: it lies in `file`.
Fault fault_in(const std::string& file, const std::exception& error);

/// Writes the fault to standard error as exactly one line, and returns its status.
ExitStatus report(const Fault& fault);

}  // namespace drapewright::batch
