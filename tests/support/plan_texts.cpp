#include "tests/support/plan_texts.h"

#include <nlohmann/json.hpp>
#include <regex>

#include "core/casefile/plan_json.h"
#include "core/report/text_summary.h"

namespace drapewright::support {
namespace {

/// A strip or a bridge that was cut apart to fit a sheet counts by its parts.
int pieces_in(const nlohmann::json& file) {
  std::size_t pieces = 0;
  for (const auto& strip : file.at("fill").at("strips")) {
    pieces += strip.at("parts").get<std::size_t>();
  }
  for (const auto& layer : file.at("fill").at("layers")) pieces += layer.at("pieces").size();
  for (const auto& drape : file.at("drapes")) {
    for (const auto& join : drape.at("joins")) pieces += join.at("strip").size();
    const auto& to_port = drape.at("port").at("bridge");
    if (!to_port.is_null()) pieces += to_port.at("strip").size();
  }
  return static_cast<int>(pieces);
}

/// The number before a word in the summary, 0 where it is not said; of "2 strips in 3 parts" the
/// parts.
int said(const std::string& text, const std::string& pattern) {
  std::smatch found;
  if (!std::regex_search(text, found, std::regex(pattern + "s?(?: in (\\d+) part)?"))) return 0;
  return std::stoi(found[2].matched ? found[2] : found[1]);
}

}  // namespace

std::vector<std::string> broken_texts(const dressing::Plan& plan) {
  std::vector<std::string> broken;
  const auto expect = [&](bool holds, const char* sentence) {
    if (!holds) broken.emplace_back(sentence);
  };
  const auto file = nlohmann::json::parse(casefile::plan_to_json(plan));
  expect(file.at("fill").at("piece_count") == plan.fill.piece_count,
         "the plan file has another count of pieces");
  expect(pieces_in(file) == plan.fill.piece_count, "the pieces in the plan file do not add up");
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
