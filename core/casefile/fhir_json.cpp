#include "core/casefile/fhir_json.h"

#include "core/base/numbers.h"

namespace drapewright::casefile::fhir {

void write_concept(JsonWriter& out, const Concept& concept_of) {
  out.begin_object();
  if (!concept_of.code.empty()) {
    out.begin_list("coding");
    out.begin_object();
    out.text("system", concept_of.system);
    out.text("code", concept_of.code);
    out.end_object();
    out.end_list();
  }
  if (!concept_of.text.empty()) out.text("text", concept_of.text);
  out.end_object();
}

void write_quantity(JsonWriter& out, double value, Unit unit) {
  out.begin_object();
  out.name("value");
  out.raw(plain_short(value, 2));
  out.text("unit", unit.name);
  out.text("system", "http://unitsofmeasure.org");
  out.text("code", unit.ucum);
  out.end_object();
}

void write_identifier(JsonWriter& out, std::string_view system, std::string_view value) {
  out.begin_object();
  out.text("system", system);
  out.text("value", value);
  out.end_object();
}

}  // namespace drapewright::casefile::fhir
