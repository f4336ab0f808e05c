#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/forecast/patient.h"
#include "core/forecast/quantity.h"

namespace drapewright::forecast {

/// The patients of a forecast together. Keeps no patients, only which patterns of use there are and
/// how many patients follow each: memory grows with the number of different patterns.
class Caseload {
 public:
  /// @param arrivals_per_week  new patients, whose courses are those of the profiles, or else of
  /// the
  ///                           patients that were added, equally likely, from their first day
  explicit Caseload(double arrivals_per_week = 0) : arrivals_per_week_(arrivals_per_week) {}

  /// Patients without items (a course that is over) count for nothing.
  void add(const Patient& patient, int count = 1);

  /// New patients are like one of the profiles and no longer like those that are there.
  void add_profile(const Patient& patient, int count = 1);

  int patients() const { return patients_; }
  int profiles() const { return profiles_; }
  double arrivals_per_week() const { return arrivals_per_week_; }
  std::vector<std::string> items() const;  ///< by kind, then by name
  supplies::Kind kind_of(const std::string& item) const;

  /// What is used of an item from one day up to another (not part of it), by all of them.
  /// @pre 0 <= from <= to; the item is one of items()
  const Quantity& use(const std::string& item, int from, int to) const;

 private:
  using Counts = std::map<UsePattern, int>;
  struct Demand {
    Counts now, anew, profiles;
    friend bool operator==(const Demand&, const Demand&) = default;
  };
  struct Item {
    supplies::Kind kind = supplies::Kind::other;
    Demand demand;
    mutable const Item* like = nullptr;  ///< the first that is used in the same way
    mutable std::map<std::pair<int, int>, Quantity> known, known_present;
  };

  const Item& first_like(const Item& item) const;
  const Quantity& present(const Item& item, int from, int to) const;
  Quantity arrivals(const Demand& demand, int from, int to) const;
  void forget();

  double arrivals_per_week_;
  int patients_ = 0;
  int profiles_ = 0;
  std::map<std::string, Item> items_;
};

}  // namespace drapewright::forecast
