#pragma once

#include <string>

#include "core/dressing/course_log.h"
#include "core/dressing/plan.h"
#include "core/report/paper.h"

namespace drapewright::report {

/// The application record: the steps of the work with a box each, the count in and the count out,
/// the dressings so far and what is due.
/// @param log  of the same case, its days counted from options.today
Document record_pages(const wound::Case& value, const dressing::Plan& plan,
                      const dressing::CourseLog& log, const PageOptions& options = {});

/// Labels to be cut out and stuck on the dressing: count, date, next change. The first is filled in
/// when a dressing is on; one more for every dressing that the course still takes, as far as the
/// page holds them.
Document label_page(const dressing::Plan& plan, const dressing::CourseLog& log,
                    const PageOptions& options = {});

/// "agrees", "DIFFERS: find it before the next dressing".
std::string in_words(dressing::PieceCount count);

/// "2031-03-04 (in 2 days)", "2031-03-04 (2 days overdue)"; "no dressing is on".
std::string next_change_in_words(const dressing::CourseLog& log);
/// The same for the end of the course. @pre a dressing was put on
std::string course_end_in_words(const dressing::CourseLog& log);

}  // namespace drapewright::report
