#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/dressing/finding.h"

namespace drapewright::dressing {

/// Where the steps of the plan leave what the reader must know.
class FindingList {
 public:
  void add(Finding finding);
  /// Stops first, then warnings, then notes, each in the order of the work; leaves the list empty.
  std::vector<Finding> take_sorted();

 private:
  std::vector<Finding> findings_;
};

/// The line that a finding shows as its source: of a row in the tables of
/// core/practice, or of what is this project's own.
std::string source_of_limit(std::string_view id);
std::string source_of_rule(std::string_view id);
std::string own_rule();

}  // namespace drapewright::dressing
