#include "app/batch/forecast_command.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "app/batch/calendar.h"
#include "app/batch/case_list.h"
#include "app/batch/in_order.h"
#include "core/base/calendar.h"
#include "core/base/say.h"
#include "core/casefile/case_json.h"
#include "core/casefile/forecast_files.h"
#include "core/casefile/stock_csv.h"
#include "core/casefile/text_file.h"
#include "core/casefile/what_if.h"
#include "core/forecast/study.h"
#include "core/practice/limits.h"
#include "core/report/forecast_text.h"

namespace drapewright::batch {
namespace {

struct Options {
  CaseArguments named;
  forecast::Settings settings;
  std::string today;
  std::string stock;
  std::vector<std::string> what_if;
  std::vector<std::string> new_patients_like;
  std::string use_csv, orders_csv, picks_csv, cases_csv, template_csv;
  bool json = false;
  std::size_t jobs = 1;
};

/// A case under the settings as they are, and under each alternative; the alternatives that change
/// no case share the first.
struct Read {
  std::vector<forecast::Patient> patients;
  std::optional<Fault> fault;
};

/// The settings and one alternative after another, read side by side, so that no case is read
/// twice.
class ForecastRun {
 public:
  explicit ForecastRun(const Options& options) : options_(options), stock_(read_stock()) {
    studies_.emplace_back(options.settings, stock_);
    for (const std::string& words : options.what_if) {
      const casefile::WhatIf& what_if = alternatives_.emplace_back(words);
      forecast::Settings settings = options.settings;
      what_if.apply(settings);
      studies_.emplace_back(settings, stock_);
    }
  }

  ExitStatus run() {
    ExitStatus status = ExitStatus::good;
    const auto files = case_files(options_.named);
    read_profiles();
    in_order(
        files.size(), options_.jobs, [&](std::size_t i) { return read(files[i]); },
        [&](const Read& outcome) {
          if (outcome.fault) status = worse(status, report(*outcome.fault));
          const std::string& file = files[done_++];
          for (std::size_t i = 0; i < outcome.patients.size(); ++i) {
            studies_[i].add(file, outcome.patients[i]);
          }
        });
    write();
    return status;
  }

 private:
  forecast::Shelf read_stock() const {
    if (options_.stock.empty()) return {};
    return casefile::shelf_from_csv(
        casefile::read_text(options_.stock, casefile::largest_file_bytes), options_.stock);
  }

  /// A profile that cannot be read would change the mix unseen: it ends the run.
  void read_profiles() {
    if (options_.new_patients_like.empty()) return;
    for (const std::string& file : case_files({options_.new_patients_like, {}})) {
      const wound::Case value = forecast::as_newcomer(casefile::read_case(file));
      for (std::size_t i = 0; i < studies_.size(); ++i) {
        studies_[i].add_profile(patient_under(i, value));
      }
    }
  }

  /// @param study  the settings as they are, or an alternative
  forecast::Patient patient_under(std::size_t study, wound::Case value) const {
    if (study > 0) alternatives_[study - 1].apply(value);
    return forecast::patient_of(value, studies_[study].settings(), [](const wound::Case& one) {
      return dressing::plan_dressing(one);
    });
  }

  Read read(const std::string& file) const {
    Read outcome;
    try {
      const wound::Case value = casefile::read_case(file);
      for (std::size_t i = 0; i < studies_.size(); ++i) {
        outcome.patients.push_back(patient_under(i, value));
      }
    } catch (const std::exception& error) {
      outcome = {{}, fault_in(file, error)};
    }
    return outcome;
  }

  void write() const {
    const forecast::Forecast forecast = studies_.front().forecast();
    const auto& patients = studies_.front().patients();
    write_file(options_.use_csv, casefile::use_to_csv(forecast));
    write_file(options_.orders_csv, casefile::orders_to_csv(forecast));
    write_file(options_.picks_csv, casefile::picks_to_csv(forecast, 0));
    write_file(options_.cases_csv, casefile::patients_to_csv(patients));
    std::vector<report::NamedForecast> others;
    for (std::size_t i = 0; i < alternatives_.size(); ++i) {
      others.emplace_back(alternatives_[i].words(), studies_[i + 1].forecast());
    }
    if (writes_table_to_output()) return;
    casefile::write_text("-", options_.json ? as_json(forecast, others)
                                            : report::forecast_summary(forecast, patients, others));
  }

  bool writes_table_to_output() const {
    return std::ranges::any_of(
        std::vector{options_.use_csv, options_.orders_csv, options_.picks_csv, options_.cases_csv},
        [](const std::string& file) { return file == "-"; });
  }

  static void write_file(const std::string& file, const std::string& text) {
    if (!file.empty()) casefile::write_text(file, text);
  }

  std::string as_json(const forecast::Forecast& forecast,
                      const std::vector<report::NamedForecast>& others) const {
    std::vector<casefile::Alternative> alternatives;
    for (const auto& [change, value] : others) alternatives.push_back({change, value});
    return casefile::forecast_to_json(forecast, options_.settings, studies_.front().patients(),
                                      alternatives);
  }

  const Options& options_;
  forecast::Shelf stock_;
  std::vector<casefile::WhatIf> alternatives_;
  std::vector<forecast::Study> studies_;  ///< the settings as they are, then each alternative
  std::size_t done_ = 0;
};

ExitStatus forecast_all(Options options) {
  try {
    if (!options.template_csv.empty()) {
      casefile::write_text(options.template_csv,
                           casefile::shelf_to_csv(forecast::stock_template()));
      return ExitStatus::good;
    }
    options.settings.first_day = day_number(options.today).value();
    return ForecastRun(options).run();
  } catch (const std::exception& error) {
    return report(fault_of(error, "forecast"));
  }
}

std::string option_of(std::string_view setting) {
  std::string name(setting);
  if (name == "service_level_share") name = "service_level";
  std::ranges::replace(name, '_', '-');
  return "--" + name;
}

/// A value on the border that a limit leaves out is refused when the run starts.
void add_settings(CLI::App& command, forecast::Settings& settings) {
  const auto bounds = [](std::string_view id) {
    const practice::Limit& limit = practice::limit(id);
    return CLI::Range(limit.minimum, limit.maximum);
  };
  command.add_option("--weeks", settings.weeks, say("How far to look ahead"))
      ->check(bounds("forecast_weeks"))
      ->capture_default_str();
  for (const auto& [name, member] : forecast::numbers) {
    const practice::Limit& limit = practice::limit(name);
    command
        .add_option(option_of(name), settings.*member,
                    say(limit.meaning) + " [" + practice::bounds_in_words(limit) + "]")
        ->check(bounds(name))
        ->capture_default_str();
  }
  command
      .add_option("--review-days", settings.review_days, say("Days between two looks at the shelf"))
      ->check(bounds("review_days"))
      ->capture_default_str();
}

constexpr const char* examples = term(
    "Every case is planned, and its use over the weeks is worked out as a distribution: a bad "
    "file\n"
    "does not keep the others from being read; the exit status is 2 then. The same cases, stock "
    "and\n"
    "day give the same forecast every time. docs/forecast.md has the formulas.\n\n"
    "Examples:\n"
    "  drapewright-batch forecast cases --weeks 8 --service-level 0.95\n"
    "  drapewright-batch forecast cases --stock stock.csv --orders orders.csv\n"
    "  drapewright-batch forecast cases --new-patients-per-week 2 --new-patients-like heel.json\n"
    "  drapewright-batch forecast cases --what-if change_every_h=48 --what-if canister_ml=500\n"
    "  drapewright-batch forecast --stock-template stock.csv");

void add_files(CLI::App& command, Options& options) {
  const auto file = [&](const char* name, std::string& value, const char* what) {
    command.add_option(name, value, say(what))->type_name(say("FILE"));
  };
  file("--stock", options.stock,
       term("The stock list as CSV: a row for each lot and each delivery"));
  file("--csv", options.use_csv, term("Use by item and week as CSV"));
  file("--orders", options.orders_csv, term("The order list as CSV, with its arithmetic"));
  file("--pick-list", options.picks_csv,
       term("What to take off the shelf for the first week, as CSV"));
  file("--cases", options.cases_csv, term("One row for each case, as CSV"));
}

}  // namespace

void add_forecast_command(CLI::App& app, ExitStatus& status) {
  auto* command =
      app.add_subcommand("forecast", say("What a caseload will use, and what to order"));
  auto options = std::make_shared<Options>();
  options->jobs = std::max(1u, std::thread::hardware_concurrency());
  options->today = todays_date();
  command->add_option("CASE", options->named.named, say("Folders of case files, or case files"));
  command
      ->add_option("--list", options->named.list, say("A file that names more of them, one a line"))
      ->type_name(say("FILE"));
  add_settings(*command, options->settings);
  add_files(*command, *options);
  command
      ->add_option("--what-if", options->what_if,
                   say("The same with a setting changed, side by side: of each case's dressing, or "
                       "of the forecast; may be given several times"))
      ->type_name(say("NAME=VALUE"))
      ->expected(1)
      ->take_all();
  command
      ->add_option("--new-patients-like", options->new_patients_like,
                   "Case files, or folders of them, that new patients are like, each as often as "
                   "it is named; else they are like the present ones")
      ->type_name("CASE")
      ->expected(1)
      ->take_all()
      ->needs("--new-patients-per-week");
  command
      ->add_option("--stock-template", options->template_csv,
                   say("Writes a stock list to start from, and nothing else"))
      ->type_name(say("FILE"));
  command->add_flag("--json", options->json, say("As JSON (docs/forecast.schema.json)"));
  command
      ->add_option("--today", options->today, say("The forecast's first day; else the calendar's"))
      ->check([](const std::string& text) {
        return text.empty() ? say("a day, YYYY-MM-DD, is needed") : fault_of_date(text);
      })
      ->type_name(say("YYYY-MM-DD"));
  command->add_option("--jobs", options->jobs, say("How many cases are read at a time"))
      ->check(CLI::Range(1, 1024))
      ->type_name("N");
  command->footer(say(examples));
  command->callback([options, &status] {
    const auto& named = options->named;
    if (named.named.empty() && named.list.empty() && options->template_csv.empty()) {
      throw CLI::ValidationError(say("forecast needs a folder of cases"));
    }
    status = worse(status, forecast_all(*options));
  });
}

}  // namespace drapewright::batch
