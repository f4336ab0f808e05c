#include "core/dressing/course_log.h"

#include <algorithm>
#include <cmath>

#include "core/base/calendar.h"
#include "core/base/error.h"
#include "core/base/say.h"
#include "core/dressing/course.h"

namespace drapewright::dressing {
namespace {

constexpr double hours_per_day = 24;

PieceCount count_of_pieces(const wound::Application& done) {
  if (!done.pieces_removed) return PieceCount::not_counted;
  return *done.pieces_removed == done.pieces_placed ? PieceCount::agrees : PieceCount::differs;
}

std::vector<wound::Application> by_date(std::vector<wound::Application> applications) {
  std::ranges::stable_sort(applications, {}, &wound::Application::date);
  return applications;
}

int whole_days(double days) { return static_cast<int>(std::floor(days + 1e-9)); }

[[noreturn]] void refuse(const std::string& problem, const std::string& expected) {
  throw InputError(problem, expected);
}

/// @returns the dressing that a change ends, or nullptr
wound::Application* last_of(wound::Case& value) {
  wound::Application* last = nullptr;
  for (wound::Application& done : value.applications) {
    if (!last || done.date >= last->date) last = &done;
  }
  return last;
}

void check_day(const Change& change, const wound::Application* last) {
  if (!day_number(change.date)) {
    refuse(say("\"{1}\" is no day of the calendar", {change.date}),
           say("a date, YYYY-MM-DD: 2031-03-01"));
  }
  if (last && change.date < last->date) {
    refuse(say("{1} is before the last dressing, of {2}", {change.date, last->date}),
           say("that day or a later one"));
  }
}

void check_counts(const Change& change, const wound::Application* last) {
  if (!change.removed && !change.placed) {
    refuse(say("Nothing came out and nothing went in"), say("a count of pieces"));
  }
  if (change.removed && *change.removed < 0) {
    refuse(say("{1} pieces cannot come out", {*change.removed}), say("0 or more"));
  }
  if (change.placed && *change.placed < 1) {
    refuse(say("A dressing cannot go on with {1} pieces of filler", {*change.placed}),
           say("1 or more"));
  }
  if (change.removed && !last) {
    refuse(say("No dressing is written down that pieces could come out of"),
           say("the count of pieces that went in"));
  }
  if (change.removed && last->pieces_removed) {
    refuse(say("The dressing of {1} was counted out already", {last->date}),
           say("the count of pieces that went in"));
  }
}

}  // namespace

bool CourseLog::any_differs() const {
  return std::ranges::find(dressings, PieceCount::differs, &LoggedDressing::count) !=
         dressings.end();
}

const LoggedDressing* CourseLog::on() const {
  const bool is_on = !dressings.empty() && dressings.back().count == PieceCount::still_on;
  return is_on ? &dressings.back() : nullptr;
}

CourseLog course_log(const wound::Case& value, const std::string& today) {
  CourseLog log{.planned =
                    applications_over(value.dressing.course_days, value.dressing.change_every_h)};
  for (const wound::Application& done : by_date(value.applications)) {
    log.dressings.push_back({.number = static_cast<int>(log.dressings.size()) + 1,
                             .date = done.date,
                             .placed = done.pieces_placed,
                             .removed = done.pieces_removed,
                             .count = count_of_pieces(done),
                             .note = done.note});
  }
  if (log.dressings.empty()) return log;
  LoggedDressing& newest = log.dressings.back();
  if (!newest.removed) newest.count = PieceCount::still_on;
  const auto first = day_number(log.dressings.front().date);
  const auto last = day_number(log.dressings.back().date);
  if (!first || !last) return log;
  const int end = *first + whole_days(value.dressing.course_days);
  const int change = *last + std::max(1, whole_days(value.dressing.change_every_h / hours_per_day));
  log.course_end = date_of_day(end);
  if (log.on()) log.next_change = date_of_day(*last <= end ? std::min(change, end) : change);
  if (const auto now = day_number(today)) {
    log.days_to_end = end - *now;
    if (const auto due = day_number(log.next_change)) log.days_to_change = *due - *now;
  }
  return log;
}

void record_change(wound::Case& value, const Change& change) {
  wound::Application* last = last_of(value);
  check_day(change, last);
  check_counts(change, last);
  if (change.removed) last->pieces_removed = change.removed;
  if (change.placed) {
    value.applications.push_back(
        {.date = change.date, .pieces_placed = *change.placed, .note = change.note});
  } else if (!change.note.empty()) {
    last->note += (last->note.empty() ? "" : "; ") + change.note;
  }
}

}  // namespace drapewright::dressing
