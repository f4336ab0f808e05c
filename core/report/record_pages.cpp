#include "core/report/record_pages.h"

#include <algorithm>
#include <array>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/practice/steps.h"
#include "core/report/column_flow.h"
#include "core/report/plan_words.h"
#include "core/report/text_size.h"

namespace drapewright::report {

using dressing::CourseLog;
using dressing::LoggedDressing;
using dressing::PieceCount;
using geometry::Point;

namespace {

constexpr double writing_line_mm = 9;  ///< room for a line written by hand
constexpr TextLook count_look{.size_mm = 5, .bold = true};

class RecordSheet {
 public:
  RecordSheet(const wound::Case& value, const dressing::Plan& plan, const CourseLog& log,
              const PageOptions& options)
      : value_(value), plan_(plan), log_(log), options_(options) {}

  Document laid_out() {
    Document document{.title = say("Application record: {1}, {2}", {plan_.label, plan_.date}),
                      .date = options_.today};
    flow_.emplace(
        document, options_.paper,
        PageHeading{say("Application record"), case_line(plan_.label, plan_.date, options_.today)},
        1);
    add_stops();
    add_head();
    add_steps();
    add_numbers();
    add_counts();
    add_dressings();
    add_due();
    add_signatures();
    flow_->finish();
    number_pages(document);
    return document;
  }

 private:
  /// A plan that says stop is not carried out before it was looked at.
  void add_stops() {
    const std::string words = stops_in_words(plan_);
    if (!words.empty()) flow_->framed(words);
  }

  /// Words with a line to write on behind them, side by side over the page.
  void add_blanks(const std::vector<std::string>& names) {
    const double each = flow_->page_width() / static_cast<double>(names.size());
    flow_->across(writing_line_mm, [&](Page& page, Point at) {
      const double y = at.y + writing_line_mm - 2;
      for (std::size_t i = 0; i < names.size(); ++i) {
        const double x = at.x + static_cast<double>(i) * each;
        page.text({x, y}, names[i], {.bold = true});
        page.line({{x + text_width_mm(names[i], page_text_mm, true) + 2, y + 0.6},
                   {x + each - 5, y + 0.6}});
      }
    });
  }

  void add_head() {
    add_blanks({say("Date"), say("Time"), say("Dressing no.")});
    const auto& dressing = value_.dressing;
    flow_->row(say("Ordered"), say("{1} mmHg, change every {2} h, {3} over {4} days",
                                   {glued(format_short(dressing.pressure_mmhg, 1)),
                                    glued(format_short(dressing.change_every_h, 1)),
                                    count_of(plan_.applications, "dressing", "dressings"),
                                    glued(format_short(dressing.course_days, 1))}));
    flow_->row(say("Planned"),
               say("{1} of filler", {count_of(plan_.fill.piece_count, "piece", "pieces")}));
    flow_->keep();
  }

  void add_steps() {
    flow_->heading(say("Steps, in the order of the work"));
    for (const practice::Step& step : practice::steps()) {
      flow_->box_row(say(step.text));
      flow_->gap(1);
      flow_->keep();
    }
    flow_->paragraph(
        say("Steps of common practice; what local policy and the device's "
            "instructions say goes before them."));
    flow_->keep();
  }

  void add_numbers() {
    add_blanks({say("Pressure, mmHg"), say("Canister at, mL"), say("Fluid, colour")});
  }

  /// In the order of the work: the old dressing is counted out before the new one is counted in.
  void add_counts() {
    flow_->heading(say("Count out: the dressing that comes off"));
    flow_->keep();
    add_blanks({say("Pieces by its label"), say("Pieces that came OUT"), say("Counted by")});
    flow_->box_row(say("As many came out as its label says."));
    flow_->box_row(
        say("NOT as many: stop. Find the difference before the next dressing goes on, "
            "and tell the prescriber."));
    flow_->keep();
    flow_->heading(say("Count in: the dressing that goes on"));
    flow_->keep();
    add_blanks({say("Pieces that went IN"), say("Counted by"), say("Next change by")});
    flow_->paragraph(say("Planned: {1}. Where another number went in, say why:",
                         {count_of(plan_.fill.piece_count, "piece", "pieces")}));
    flow_->keep();
    add_blanks({say("Why")});
  }

  void add_dressings() {
    flow_->heading(say("Dressings so far"));
    if (log_.dressings.empty()) {
      flow_->paragraph(say("None is written down in the case."));
      flow_->keep();
      return;
    }
    add_table();
    for (const LoggedDressing& done : log_.dressings) {
      if (done.note.empty()) continue;
      flow_->paragraph(say("Note to {1}: {2}", {done.number, done.note}));
    }
    flow_->keep();
  }

  void add_table() {
    constexpr double number = 10, date = 14, in = 52, out = 66, words = 70;
    const auto row = [&](const std::array<std::string, 5>& text, bool bold) {
      flow_->cells({{number, text[0], Label::Anchor::end, bold},
                    {date, text[1], Label::Anchor::start, bold},
                    {in, text[2], Label::Anchor::end, bold},
                    {out, text[3], Label::Anchor::end, bold},
                    {words, text[4], Label::Anchor::start, bold}});
    };
    row({say("No."), say("date"), say("in"), say("out"), say("count")}, true);
    for (const LoggedDressing& done : log_.dressings) {
      row({std::to_string(done.number), done.date, std::to_string(done.placed),
           done.removed ? std::to_string(*done.removed) : "-", in_words(done.count)},
          done.count == PieceCount::differs);
    }
  }

  void add_due() {
    if (log_.dressings.empty()) return;
    flow_->heading(say("Due"));
    flow_->row(say("Next change"), next_change_in_words(log_));
    flow_->row(say("Course ends"), course_end_in_words(log_));
    flow_->row(say("Put on"),
               say("{1} of {2} planned", {static_cast<int>(log_.dressings.size()), log_.planned}));
    flow_->keep();
  }

  void add_signatures() { add_blanks({say("Put on by"), say("Checked by")}); }

  const wound::Case& value_;
  const dressing::Plan& plan_;
  const CourseLog& log_;
  const PageOptions& options_;
  std::optional<ColumnFlow> flow_;
};

constexpr double label_width_mm = 59, label_height_mm = 49, label_inside_mm = 3;

/// What one label says; empty: a line to write on.
struct LabelText {
  std::string count, put_on, next_change;
  std::string reminder;  ///< of what must come out
};

void draw_label(Page& page, Point corner, const std::string& case_label, const LabelText& label) {
  const Point end{corner.x + label_width_mm, corner.y + label_height_mm};
  page.box({corner, end});
  const double x = corner.x + label_inside_mm, right = end.x - label_inside_mm;
  double y = corner.y + label_inside_mm + count_look.size_mm;
  const auto row = [&](const std::string& name, const std::string& words, const TextLook& look) {
    page.text({x, y}, name);
    if (words.empty()) {
      page.line({{x + text_width_mm(name, page_text_mm) + 2, y + 0.6}, {right, y + 0.6}});
    } else {
      TextLook at_right = look;
      at_right.anchor = Label::Anchor::end;
      page.text({right, y}, words, at_right);
    }
    y += 7.5;
  };
  row(say("Filler pieces inside"), label.count, count_look);
  row(say("Put on"), label.put_on, {.bold = true});
  row(say("Next change by"), label.next_change, {.bold = true});
  const TextLook small{.size_mm = least_text_mm};
  y = page.paragraph({x, y - 4.5}, right - x, label.reminder, small);
  page.paragraph({x, y}, right - x, case_label, small);
}

/// The filled-in one first, then blank ones for the rest of the course.
std::vector<LabelText> label_texts(const CourseLog& log, int planned) {
  std::vector<LabelText> labels;
  if (const LoggedDressing* on = log.on()) {
    labels.push_back({std::to_string(on->placed), on->date, log.next_change,
                      say("Dressing {1}, on already. All {2} must come out.",
                          {on->number, count_of(on->placed, "piece", "pieces")})});
  }
  const int left = std::max(1, log.planned - static_cast<int>(log.dressings.size()));
  const LabelText blank{.reminder = say("All that went in must come out. The plan has {1}.",
                                        {count_of(planned, "piece", "pieces")})};
  labels.resize(labels.size() + static_cast<std::size_t>(left), blank);
  return labels;
}

/// "in 2 days", "today", "2 days overdue".
std::string due_in_words(int days) {
  if (days == 0) return say("today");
  return days > 0 ? count_of(days, "in {1} day", "in {1} days")
                  : count_of(-days, "{1} day overdue", "{1} days overdue");
}

std::string day_in_words(const std::string& day, const std::optional<int>& days) {
  return days ? say("{1} ({2})", {day, due_in_words(*days)}) : day;
}

}  // namespace

std::string in_words(PieceCount count) {
  switch (count) {
    case PieceCount::still_on:
      return say("still on");
    case PieceCount::not_counted:
      return say("what came out was not written down");
    case PieceCount::agrees:
      return say("agrees");
    case PieceCount::differs:
      return say("DIFFERS: find it before the next dressing");
  }
  return {};
}

std::string next_change_in_words(const CourseLog& log) {
  return log.on() ? day_in_words(log.next_change, log.days_to_change) : say("no dressing is on");
}

std::string course_end_in_words(const CourseLog& log) {
  return day_in_words(log.course_end, log.days_to_end);
}

Document record_pages(const wound::Case& value, const dressing::Plan& plan, const CourseLog& log,
                      const PageOptions& options) {
  return RecordSheet(value, plan, log, options).laid_out();
}

Document label_page(const dressing::Plan& plan, const CourseLog& log, const PageOptions& options) {
  Document document{.title = say("Labels for the dressing: {1}, {2}", {plan.label, plan.date}),
                    .date = options.today};
  Page page(size_of(options.paper));
  const geometry::Box room =
      frame(page, {say("Labels for the dressing"),
                   with_stops(case_line(plan.label, plan.date, options.today), plan)});
  const double top = page.paragraph(room.low, room.width(),
                                    say("Cut along the lines. Stick one on every dressing, beside "
                                        "the port and not over an edge of "
                                        "the film."));
  const int columns = static_cast<int>(room.width() / label_width_mm);
  const int rows = static_cast<int>((room.high.y - top - 2) / label_height_mm);
  std::vector<LabelText> labels = label_texts(log, plan.fill.piece_count);
  labels.resize(std::min(labels.size(), static_cast<std::size_t>(columns * rows)));
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const auto column = static_cast<int>(i) % columns, row = static_cast<int>(i) / columns;
    draw_label(page, {room.low.x + column * label_width_mm, top + 2 + row * label_height_mm},
               plan.label, labels[i]);
  }
  document.pages.push_back(page.finish(document.title, say("Labels to be cut out.")));
  number_pages(document);
  return document;
}

}  // namespace drapewright::report
