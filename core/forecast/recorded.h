#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/forecast/patient.h"

namespace drapewright::forecast {

/// What was recorded against what was planned for the same days. What a case records are the
/// dressings that were put on; an item's use follows from them by the case's plan.
struct RecordedUse {
  struct Item {
    std::string item;
    double recorded = 0;
    double planned = 0;
    double bias() const { return planned > 0 ? recorded / planned - 1 : 0; }
  };
  int days = 0;  ///< of all patients together
  int recorded = 0;
  double planned = 0;
  std::vector<Item> items;

  double bias() const { return planned > 0 ? recorded / planned - 1 : 0; }
};

/// The rate of extra dressings with which the plans would have come out at what was recorded, and
/// the 95 % interval of the Poisson count behind it; all three are 0 at least.
struct ExtraRate {
  double per_week = 0, low = 0, high = 0;
};

class RecordedUseCounter {
 public:
  void add(const Patient& patient);
  RecordedUse counted() const;

 private:
  RecordedUse total_;
  std::map<std::string, RecordedUse::Item> items_;
};

/// @pre use.days > 0
ExtraRate extra_rate_of(const RecordedUse& use);

}  // namespace drapewright::forecast
