#include <boost/uuid/name_generator_sha1.hpp>
#include <boost/uuid/string_generator.hpp>
#include <boost/uuid/uuid_io.hpp>
#include <map>
#include <optional>
#include <stdexcept>

#include "core/base/numbers.h"
#include "core/casefile/exchange.h"
#include "core/casefile/fhir_terms.h"
#include "core/casefile/json_writer.h"
#include "core/geometry/clock.h"

namespace drapewright::casefile {
namespace {

using namespace fhir;
using dressing::Figure;
using dressing::WoundMeasures;

// Systems of this program's own, drawn once by lot: such names need no registry.
constexpr const char* case_system = "urn:uuid:ca1f94f1-926d-46e3-97d0-4b8b7d5814a7";
constexpr const char* observation_system = "urn:uuid:eed8b800-c828-4773-8159-51075ff5399d";

/// An angle, or a range of them clockwise; its end passes 360 where the range passes 12 o'clock, as
/// a range's end may not lie below its beginning.
struct ClockPlace {
  double from_deg = 0;
  std::optional<double> to_deg;
};

struct Observation {
  Term term;
  std::string wound;  ///< empty: all of them
  int number = 0;     ///< from 1 where a wound may have several of the kind
  std::optional<double> value = {};
  Unit unit = cm;
  double spread = 0;
  std::string_view why_absent = {};  ///< where there is no value
  std::optional<ClockPlace> place = {};
  std::vector<std::string> members = {};  ///< of a panel
};

double degrees_of(double hour) { return hour >= 12 ? 0 : 30 * hour; }

ClockPlace place_of(const wound::Undermining& pocket) {
  const double from = degrees_of(pocket.from_clock);
  return {from, from + 30 * geometry::clock_span(pocket.from_clock, pocket.to_clock)};
}

/// Writes the bundle of one case.
class BundleWriter {
 public:
  explicit BundleWriter(const wound::Case& value) : case_(value) {}

  std::string write(const MeasuresOverTime& measures) {
    out_.begin_object();
    out_.text("resourceType", "Bundle");
    out_.name("identifier");
    write_identifier(out_, case_system, case_.label);
    out_.text("type", "collection");
    out_.begin_list("entry");
    for (std::size_t i = 0; i < case_.assessments.size(); ++i) {
      write_assessment(case_.assessments[i], measures.at(i));
    }
    write_pressure();
    out_.end_list();
    out_.end_object();
    return out_.take();
  }

 private:
  void write_assessment(const wound::Assessment& assessment,
                        const std::vector<WoundMeasures>& measures) {
    date_ = assessment.date;
    const int same_day = ++visits_[date_];
    visit_ = same_day == 1 ? date_ : date_ + " no. " + std::to_string(same_day);
    for (std::size_t i = 0; i < assessment.wounds.size(); ++i) {
      const WoundMeasures& of_wound = measures.at(i);
      if (of_wound.id != assessment.wounds[i].id)
        throw std::logic_error("measures of another case");
      write_size(assessment.wounds[i], of_wound);
      write_hidden(assessment.wounds[i]);
    }
    if (assessment.exudate_ml_per_day) {
      write({.term = exudate, .value = assessment.exudate_ml_per_day, .unit = ml_per_day});
    }
  }

  /// The panel and its members.
  void write_size(const wound::Wound& wound, const WoundMeasures& measures) {
    const auto figure = [&](const Term& term, const Figure& measured, Unit unit) {
      return Observation{.term = term,
                         .wound = wound.id,
                         .value = measured.value,
                         .unit = unit,
                         .spread = measured.spread};
    };
    std::vector<Observation> members{
        figure(length, measures.length, cm), figure(width, measures.width, cm),
        figure(depth, {wound.depth_cm, 0}, cm), figure(area, measures.area, cm2),
        figure(volume, measures.volume, cm3)};
    if (wound.depth_cm == 0) {
      members[2].value.reset();
      members[2].why_absent = "Not deep, or not measured";
      members[4].value.reset();
      members[4].why_absent = "No depth to work it out from";
    }
    Observation panel{.term = size_panel, .wound = wound.id};
    for (const Observation& member : members) panel.members.push_back(url_of(member));
    write(panel);
    for (const Observation& member : members) write(member);
  }

  /// What reaches under the skin.
  void write_hidden(const wound::Wound& wound) {
    int number = 0;
    for (const auto& pocket : wound.undermining) {
      write({.term = undermining,
             .wound = wound.id,
             .number = ++number,
             .value = pocket.extent_cm,
             .place = place_of(pocket)});
    }
    number = 0;
    for (const auto& one : wound.tunnels) {
      write({.term = tunnel,
             .wound = wound.id,
             .number = ++number,
             .value = one.length_cm,
             .place = ClockPlace{degrees_of(one.clock), {}}});
    }
  }

  /// A setting of the therapy that is planned now; what earlier dressings had is not in a case.
  void write_pressure() {
    write({.term = pressure, .value = case_.dressing.pressure_mmhg, .unit = mmhg});
  }

  /// Unlike any other of the case, and always the same: the wound's id is last, as it may hold
  /// anything.
  std::string name_of(const Observation& one) const {
    std::string name = case_.label + ", " + visit_ + ", " + std::string(one.term.key);
    if (one.number > 0) name += " " + std::to_string(one.number);
    return one.wound.empty() ? name : name + ", " + one.wound;
  }

  /// A UUID by name (RFC 4122, version 5): equal cases give equal bundles.
  std::string url_of(const Observation& one) const {
    static const boost::uuids::name_generator_sha1 generate(
        boost::uuids::string_generator()(observation_system + sizeof "urn:uuid:" - 1));
    return "urn:uuid:" + boost::uuids::to_string(generate(name_of(one)));
  }

  void write(const Observation& one) {
    out_.begin_object();
    out_.text("fullUrl", url_of(one));
    out_.begin_object("resource");
    out_.text("resourceType", "Observation");
    out_.begin_list("identifier");
    write_identifier(out_, observation_system, name_of(one));
    out_.end_list();
    out_.text("status", "final");
    out_.begin_list("category");
    write_concept(
        out_, {"http://terminology.hl7.org/CodeSystem/observation-category", one.term.category});
    out_.end_list();
    write_code(one.term);
    out_.text("effectiveDateTime", date_);
    write_value(one);
    write_site(one.wound);
    if (const std::string method = method_of(one); !method.empty()) write_text("method", method);
    write_members(one.members);
    write_place(one);
    out_.end_object();
    out_.end_object();
  }

  void write_code(const Term& term) {
    out_.name("code");
    write_concept(out_, {"http://loinc.org", term.loinc, term.text});
  }

  void write_text(std::string_view member, std::string_view text) {
    out_.name(member);
    write_concept(out_, {.text = text});
  }

  void write_value(const Observation& one) {
    if (one.value) {
      out_.name("valueQuantity");
      write_quantity(out_, *one.value, one.unit);
    } else if (!one.why_absent.empty()) {
      out_.name("dataAbsentReason");
      write_concept(out_, {"http://terminology.hl7.org/CodeSystem/data-absent-reason", "unknown",
                           one.why_absent});
    }
    if (one.value && one.spread > 0) write_spread(one);
  }

  void write_spread(const Observation& one) {
    out_.begin_list("note");
    out_.begin_object();
    out_.text("text", "An outline traced " + plain_short(case_.dressing.tracing_error_mm, 2) +
                          " mm off shifts this by up to " + plain_short(one.spread, 2) + " " +
                          std::string(one.unit.name) + ".");
    out_.end_object();
    out_.end_list();
  }

  std::string method_of(const Observation& one) const {
    std::string method(one.term.method);
    if (!one.place) return method;
    const practice::BodySite* site = wound::site_of(case_);
    const auto twelve = site != nullptr ? site->twelve : practice::Twelve::head;
    return method + (method.empty() ? "" : " ") +
           "Clock position in degrees clockwise, 0 at 12 o'clock, which points to the " +
           std::string(practice::name_of(twelve)) + ".";
  }

  /// Where a wound is, and which of them.
  void write_site(const std::string& wound) {
    const practice::BodySite* known = wound::site_of(case_);
    std::string text = case_.body_site;
    if (text.empty() && known != nullptr) text = known->name;
    if (!wound.empty()) text += (text.empty() ? "Wound " : ", wound ") + wound;
    if (!text.empty()) write_text("bodySite", text);
  }

  void write_members(const std::vector<std::string>& urls) {
    if (urls.empty()) return;
    out_.begin_list("hasMember");
    for (const std::string& url : urls) {
      out_.begin_object();
      out_.text("reference", url);
      out_.end_object();
    }
    out_.end_list();
  }

  void write_place(const Observation& one) {
    if (!one.place) return;
    out_.begin_list("component");
    out_.begin_object();
    write_code(one.term.key == tunnel.key ? tunnel_clock : undermining_clock);
    if (one.place->to_deg) {
      out_.begin_object("valueRange");
      out_.name("low");
      write_quantity(out_, one.place->from_deg, degree);
      out_.name("high");
      write_quantity(out_, *one.place->to_deg, degree);
      out_.end_object();
    } else {
      out_.name("valueQuantity");
      write_quantity(out_, one.place->from_deg, degree);
    }
    out_.end_object();
    out_.end_list();
  }

  const wound::Case& case_;
  JsonWriter out_;
  std::string date_;                   ///< of the assessment that is being written
  std::string visit_;                  ///< the same, told apart from others of that day
  std::map<std::string, int> visits_;  ///< by date
};

}  // namespace

std::string fhir_bundle(const wound::Case& value, const MeasuresOverTime& measures) {
  if (measures.size() != value.assessments.size()) {
    throw std::logic_error("measures of another case");
  }
  return BundleWriter(value).write(measures);
}

}  // namespace drapewright::casefile
