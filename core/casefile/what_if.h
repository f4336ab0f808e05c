#pragma once

#include <string>
#include <vector>

#include "core/forecast/settings.h"
#include "core/wound/case.h"

namespace drapewright::casefile {

/// "change_every_h=48": one setting of every case's dressing or of the forecast, taken as another;
/// several of them, joined by commas, at once. `filler_items=NAME` cuts from that sheet alone.
class WhatIf {
 public:
  /// @throws InputError for a name that is no setting, and a value out of its bounds
  explicit WhatIf(const std::string& words);

  const std::string& words() const { return words_; }
  bool changes_cases() const;
  void apply(wound::Case& value) const;
  void apply(forecast::Settings& settings) const;

 private:
  struct Change {
    std::string name;
    double value = 0;
    std::string text;
  };
  Change change_in(const std::string& text) const;

  std::string words_;
  std::vector<Change> changes_;
};

}  // namespace drapewright::casefile
