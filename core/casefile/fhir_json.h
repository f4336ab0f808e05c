#pragma once

#include <string_view>

#include "core/casefile/json_writer.h"

/// The data types of FHIR R4 that the bundle needs, each written as one JSON object.
namespace drapewright::casefile::fhir {

/// A CodeableConcept with one coding, or with its text alone where there is no code.
struct Concept {
  std::string_view system = {};
  std::string_view code = {};
  std::string_view text = {};
};
void write_concept(JsonWriter& out, const Concept& concept_of);

/// A unit as people read it, and its UCUM code.
struct Unit {
  std::string_view name;
  std::string_view ucum;
};

/// A Quantity to 0.01 of its unit.
void write_quantity(JsonWriter& out, double value, Unit unit);

void write_identifier(JsonWriter& out, std::string_view system, std::string_view value);

}  // namespace drapewright::casefile::fhir
