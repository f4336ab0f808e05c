#include "tests/support/plan_texts.h"

#include <nlohmann/json.hpp>
#include <regex>

#include "core/casefile/plan_json.h"
#include "core/report/text_summary.h"

namespace drapewright::support {
namespace {

std::size_t bridges_in(const nlohmann::json& drape) {
  return drape.at("joins").size() + (drape.at("port").at("bridge").is_null() ? 0 : 1);
}

std::size_t pieces_in(const nlohmann::json& file) {
  std::size_t pieces = file.at("fill").at("strips").size();
  for (const auto& layer : file.at("fill").at("layers")) pieces += layer.at("pieces").size();
  for (const auto& drape : file.at("drapes")) pieces += bridges_in(drape);
  return pieces;
}

/// The number before a word in the summary, 0 where it is not said.
int said(const std::string& text, const std::string& pattern) {
  std::smatch found;
  if (!std::regex_search(text, found, std::regex(pattern))) return 0;
  return std::stoi(found[1]);
}

}  // namespace

std::vector<std::string> broken_texts(const dressing::Plan& plan) {
  std::vector<std::string> broken;
  const auto expect = [&](bool holds, const char* sentence) {
    if (!holds) broken.emplace_back(sentence);
  };
  const auto file = nlohmann::json::parse(casefile::plan_to_json(plan));
  const auto count = static_cast<std::size_t>(plan.fill.piece_count);
  expect(file.at("fill").at("piece_count") == plan.fill.piece_count,
         "the plan file has another count of pieces");
  expect(pieces_in(file) == count, "the pieces in the plan file do not add up");
  expect(file.at("drapes").size() == plan.drapes.size(), "the plan file has other films");
  expect(file.at("findings").size() == plan.findings.size(), "the plan file has other findings");

  const std::string text = report::text_summary(plan);
  expect(said(text, "Filler: (\\d+) piece") == plan.fill.piece_count,
         "the summary has another count of pieces");
  if (text.find("\n  Count ") != std::string::npos) {
    const int parts = said(text, "Count +(?:.*, )?(\\d+) in layers") +
                      said(text, "Count +(?:.*, | .* and )?(\\d+) strip") +
                      said(text, "Count +(?:.*, | .* and )?(\\d+) bridge");
    expect(parts == plan.fill.piece_count, "the summary's parts of the count do not add up");
  }
  return broken;
}

}  // namespace drapewright::support
