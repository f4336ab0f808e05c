#include "tests/support/outline_files.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <utility>

#include "core/casefile/case_json.h"

namespace drapewright::support {
namespace {

geometry::Ring ring_of(const nlohmann::json& points) {
  geometry::Ring ring;
  for (const auto& p : points) ring.push_back({p.at(0).get<double>(), p.at(1).get<double>()});
  // A case file may repeat the first point at the end; a ring does not.
  if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
  return ring;
}

wound::Case case_of_outline(const nlohmann::json& file, double depth_cm, double run_in_cm) {
  wound::Wound wound{.id = file.value("id", "A").substr(0, 16),
                     .outline_cm = ring_of(file.at("outline")),
                     .depth_cm = depth_cm,
                     .wall_run_in_cm = run_in_cm};
  for (const auto& island : file.value("islands", nlohmann::json::array())) {
    wound.islands_cm.push_back(ring_of(island));
  }
  wound::Case value{.label = wound.id};
  value.assessments.push_back({.date = "2026-01-01", .wounds = {std::move(wound)}});
  value.cautions.reviewed = true;
  return value;
}

}  // namespace

std::vector<std::string> json_files(const std::string& folder) {
  std::vector<std::string> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (entry.path().extension() == ".json") files.push_back(entry.path().string());
  }
  std::ranges::sort(files);
  return files;
}

wound::Case read_case_or_outline(const std::string& path, double depth_cm, double run_in_cm) {
  std::ifstream in(path);
  const auto json = nlohmann::json::parse(in, nullptr, false);
  if (json.is_object() && json.contains("outline")) {
    return case_of_outline(json, depth_cm, run_in_cm);
  }
  return casefile::read_case(path);
}

}  // namespace drapewright::support
