#include <optional>

#include "core/base/calendar.h"
#include "core/casefile/forecast_files.h"
#include "core/casefile/json_writer.h"

namespace drapewright::casefile {
namespace {

using namespace forecast;

class ForecastWriter {
 public:
  std::string text(const Forecast& value, const Settings& settings,
                   const std::vector<PatientSummary>& patients,
                   const std::vector<Alternative>& alternatives) {
    first_day_ = value.first_day;
    out_.begin_object();
    out_.number("drapewright_forecast", 1);
    out_.text("first_day", date_of_day(value.first_day));
    out_.number("weeks", value.weeks);
    out_.number("cases", static_cast<double>(patients.size()));
    write(settings);
    write_body(value);
    write(value.recorded);
    out_.begin_list("what_if");
    for (const Alternative& alternative : alternatives) {
      out_.begin_object();
      out_.text("change", alternative.change);
      write_body(alternative.forecast);
      out_.end_object();
    }
    out_.end_list();
    out_.begin_list("cases_read");
    for (const PatientSummary& patient : patients) write(patient);
    out_.end_list();
    out_.end_object();
    return out_.take();
  }

 private:
  void write_body(const Forecast& value) {
    out_.number("patients", value.patients);
    out_.number("new_patients_per_week", value.new_patients_per_week);
    out_.number("profiles", value.profiles);
    out_.number("service_level", value.service_level);
    out_.number("cost", value.cost);
    out_.number("cost_per_patient", value.cost_per_patient);
    out_.number("order_cost", value.order_cost);
    out_.begin_list("items");
    for (const ItemForecast& item : value.items) write(item);
    out_.end_list();
    write(value.findings);
  }

  void write(const Settings& settings) {
    out_.begin_object("settings");
    for (const auto& [name, member] : numbers) out_.number(name, settings.*member);
    out_.number("review_days", settings.review_days);
    out_.end_object();
  }

  void write(const Band& band) {
    out_.begin_object();
    out_.number("mean", band.mean);
    out_.number("standard_deviation", band.spread);
    out_.number("low_90", band.low90);
    out_.number("low_50", band.low50);
    out_.number("median", band.middle);
    out_.number("high_50", band.high50);
    out_.number("high_90", band.high90);
    out_.end_object();
  }

  void write(const ItemForecast& item) {
    out_.begin_object();
    out_.text("item", item.item);
    out_.text("kind", supplies::name_of(item.kind));
    if (item.unit_cost) out_.number("unit_cost", *item.unit_cost);
    if (item.cost) out_.number("cost", *item.cost);
    out_.name("total");
    write(item.total);
    out_.begin_list("weeks");
    for (const Band& band : item.weeks) write(band);
    out_.end_list();
    out_.begin_list("enough");
    for (const int count : item.enough) out_.number(count);
    out_.end_list();
    if (item.shelf) write(*item.shelf);
    if (item.order) write(*item.order);
    out_.end_object();
  }

  void write(const ShelfForecast& shelf) {
    out_.begin_object("shelf");
    out_.number("start", shelf.start);
    out_.number("wasted_at_start", shelf.wasted_at_start);
    out_.number("received", shelf.received);
    out_.number("used", shelf.used);
    out_.number("short", shelf.short_of);
    out_.number("wasted", shelf.wasted);
    out_.number("left", shelf.left);
    write_run_out("run_out_early", shelf.run_out_week(0.05));
    write_run_out("run_out_likely", shelf.run_out_week(0.5));
    write_run_out("run_out_late", shelf.run_out_week(0.95));
    out_.begin_list("run_out");
    for (std::size_t i = 0; i < shelf.run_out_days.size(); ++i) {
      out_.begin_object();
      out_.number("chance", run_out_chances[i]);
      out_.text("date", date_of_day(first_day_ + shelf.run_out_days[i]));
      out_.end_object();
    }
    out_.end_list();
    out_.begin_list("weeks");
    for (const ShelfWeek& week : shelf.weeks) write(week);
    out_.end_list();
    out_.end_object();
  }

  void write_run_out(std::string_view name, const std::optional<int>& week) {
    if (week) out_.text(name, date_of_day(first_day_ + 7 * *week - 1));
  }

  void write(const ShelfWeek& week) {
    out_.begin_object();
    out_.number("received", week.received);
    out_.number("used", week.used);
    out_.number("short", week.short_of);
    out_.number("wasted", week.wasted);
    out_.number("run_out_chance", week.run_out);
    out_.name("left");
    write(week.band);
    out_.end_object();
  }

  void write(const Order& order) {
    out_.begin_object("order");
    out_.number("daily_mean", order.daily_mean);
    out_.number("daily_standard_deviation", order.daily_spread);
    out_.number("reorder_point", order.reorder_point);
    out_.number("textbook_reorder_point", order.textbook_reorder_point);
    out_.number("need", order.need);
    out_.number("textbook_need", order.textbook_need);
    out_.number("on_hand", order.on_hand);
    out_.number("on_order", order.on_order);
    out_.number("expiring", order.expiring);
    out_.number("packs", order.packs);
    out_.number("textbook_packs", order.textbook_packs);
    out_.number("quantity", order.quantity);
    if (order.cost) out_.number("cost", *order.cost);
    out_.text("arithmetic", order.arithmetic);
    out_.end_object();
  }

  void write(const RecordedUse& use) {
    out_.begin_object("recorded");
    out_.number("days", use.days);
    out_.number("recorded", use.recorded);
    out_.number("planned", use.planned);
    if (use.planned > 0) out_.number("bias", use.bias());
    if (use.days > 0) {
      const ExtraRate rate = extra_rate_of(use);
      out_.begin_object("extra_dressings_per_week");
      out_.number("value", rate.per_week);
      out_.number("low_95", rate.low);
      out_.number("high_95", rate.high);
      out_.end_object();
    }
    out_.begin_list("items");
    for (const auto& item : use.items) {
      out_.begin_object();
      out_.text("item", item.item);
      out_.number("recorded", item.recorded);
      out_.number("planned", item.planned);
      if (item.planned > 0) out_.number("bias", item.bias());
      out_.end_object();
    }
    out_.end_list();
    out_.end_object();
  }

  void write(const PatientSummary& patient) {
    out_.begin_object();
    out_.text("file", patient.file);
    out_.text("label", patient.label);
    out_.boolean("running", patient.running);
    out_.text("start", date_of_day(patient.start));
    out_.text("end", date_of_day(patient.end));
    if (patient.running) out_.text("next_change", date_of_day(patient.next_change));
    out_.number("overdue_days", patient.overdue_days);
    out_.number("area_cm2", patient.area_cm2);
    out_.number("area_change_per_week", patient.area_change_per_week);
    out_.boolean("change_from_series", patient.change_from_series);
    out_.number("dressings", patient.dressings);
    out_.number("cost", patient.cost);
    out_.number("stops", patient.stops);
    write(patient.findings);
    out_.end_object();
  }

  void write(const std::vector<dressing::Finding>& findings) {
    out_.begin_list("findings");
    for (const auto& finding : findings) {
      out_.begin_object();
      out_.text("severity", dressing::name_of(finding.severity));
      out_.text("code", finding.code);
      out_.text("text", finding.text);
      if (!finding.source.empty()) out_.text("source", finding.source);
      out_.end_object();
    }
    out_.end_list();
  }

  JsonWriter out_;
  int first_day_ = 0;
};

}  // namespace

std::string forecast_to_json(const Forecast& forecast, const Settings& settings,
                             const std::vector<PatientSummary>& patients,
                             const std::vector<Alternative>& alternatives) {
  return ForecastWriter().text(forecast, settings, patients, alternatives);
}

}  // namespace drapewright::casefile
