#include "core/dressing/finding.h"

#include <algorithm>
#include <utility>

#include "core/base/say.h"
#include "core/dressing/finding_list.h"
#include "core/practice/limits.h"
#include "core/practice/rules.h"

namespace drapewright::dressing {

std::string_view name_of(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return term("stop");
    case Severity::warning:
      return term("warning");
    case Severity::note:
      break;
  }
  return term("note");
}

std::string source_of_limit(std::string_view id) {
  return practice::describe(practice::limit(id).source);
}

std::string source_of_rule(std::string_view id) {
  return practice::describe(practice::rule(id).source);
}

std::string own_rule() { return practice::describe({practice::Standing::own_setting, {}}); }

void FindingList::add(Finding finding) { findings_.push_back(std::move(finding)); }

std::vector<Finding> FindingList::take_sorted() {
  std::ranges::stable_sort(findings_, {}, &Finding::severity);
  return std::exchange(findings_, {});
}

}  // namespace drapewright::dressing
