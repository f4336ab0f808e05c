#pragma once

#include <string>

namespace drapewright::support {

/// A small valid case as text, with a marker to cut at: `wound` are the members of the only wound
/// after its id, `rest` are further members of the case, each with a leading comma.
inline std::string example_case(
    const std::string& wound = R"("outline_cm": [[0, 0], [8, 0], [8, 5], [0, 5]])",
    const std::string& rest = {}) {
  return "{\n  \"drapewright_case\": 1,\n  \"label\": \"demo\",\n  \"assessments\": [\n"
         "    { \"date\": \"2026-03-02\", \"wounds\": [\n      { \"id\": \"A\", " +
         wound + " }\n    ] }\n  ]" + rest + "\n}\n";
}

}  // namespace drapewright::support
