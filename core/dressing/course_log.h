#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/wound/case.h"

namespace drapewright::dressing {

/// Whether what came out of a dressing is what went in.
enum class PieceCount {
  still_on,     ///< the newest, not counted out yet
  not_counted,  ///< another followed, and nobody wrote down what came out
  agrees,       ///< as many came out as went in
  differs,      ///< a stop: the difference is to be found
};

struct LoggedDressing {
  int number = 1;  ///< from 1, the oldest first
  std::string date;
  int placed = 0;
  std::optional<int> removed;
  PieceCount count = PieceCount::not_counted;
  std::string note;
};

/// The dressings of a case that were put on, and what is due after the last of them.
struct CourseLog {
  std::vector<LoggedDressing> dressings;  ///< by date
  int planned = 0;                        ///< dressings over the whole course

  // What follows is empty until a dressing was put on.
  std::string next_change;  ///< the latest day for it; empty when no dressing is on
  std::string course_end;

  // And these where a day was given; below 0: so many days ago.
  std::optional<int> days_to_change;
  std::optional<int> days_to_end;

  bool any_differs() const;
  /// The dressing that is on; nullptr when none is.
  const LoggedDressing* on() const;
};

/// Days are whole: a change after 60 hours is due on the second day, since the third is too late;
/// and a dressing comes off when the course ends.
/// @param today  YYYY-MM-DD; empty: days are not counted
CourseLog course_log(const wound::Case& value, const std::string& today = {});

/// A change of dressing as it is written down.
struct Change {
  std::string date;  ///< YYYY-MM-DD
  std::optional<int>
      removed;                ///< pieces that came out of the dressing before; nothing: not counted
  std::optional<int> placed;  ///< pieces that went in; nothing: no dressing follows
  std::string note;           ///< kept with the dressing put on, or with the last where none is
};

/// Writes a change into the case: what came out goes to the last dressing, what went in makes a new
/// one. The case is as it was when anything is refused.
/// @throws InputError for what is no day of the calendar, a day before the last dressing's, a count
///         below 0, a count out of no dressing or of one that was counted out already, a dressing
///         without a piece, or a change in which nothing happened
void record_change(wound::Case& value, const Change& change);

}  // namespace drapewright::dressing
