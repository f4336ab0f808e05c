#include "tests/support/plan_invariants.h"

#include <algorithm>
#include <cmath>
#include <regex>

#include "core/base/numbers.h"
#include "tests/support/plan_audit.h"

namespace drapewright::support {
namespace {

void audit_findings(Audit& audit) {
  static const std::regex code_shape("[a-z0-9]+(-[a-z0-9]+)*");
  audit.expect(std::ranges::is_sorted(audit.plan.findings, {}, &dressing::Finding::severity),
               "the findings are not in the order of their weight");
  for (const dressing::Finding& finding : audit.plan.findings) {
    audit.expect(std::regex_match(finding.code, code_shape), "'" + finding.code + "' is no code");
    audit.expect(finding.text.ends_with('.'), finding.code + ": the text is no sentence");
    audit.expect(!finding.source.empty(), finding.code + " has no source");
    audit.expect(finding.wound.empty() || audit.shapes.contains(finding.wound),
                 finding.code + " names no wound");
    if (finding.where_cm) {
      audit.expect(std::isfinite(finding.where_cm->x) && std::isfinite(finding.where_cm->y),
                   finding.code + " lies nowhere");
    }
  }
}

}  // namespace

Audit::Audit(const wound::Case& audited, const dressing::Plan& made)
    : value(audited), plan(made), seen(audited.current()) {
  for (const wound::Wound& one : seen.wounds) {
    shapes.emplace(one.id,
                   GeosShape(geometry::Polygon{one.outline_cm, one.islands_cm}).made_valid());
  }
  for (const wound::SkinZone& zone : seen.skin_zones) {
    GeosShape& all = zone.kind == wound::ZoneKind::no_film ? no_film : no_port;
    all = all | GeosShape(geometry::Polygon{zone.outline_cm, {}}).made_valid();
  }
}

void Audit::expect(bool holds, const std::string& sentence) {
  if (!holds) broken.push_back(sentence);
}

void Audit::expect_near(double found, double wanted, double tolerance, const std::string& what) {
  expect(std::fabs(found - wanted) <= tolerance,
         what + " is " + format_number(found, 5) + ", expected " + format_number(wanted, 5));
}

bool Audit::has_finding(const std::set<std::string>& codes) const {
  return std::ranges::any_of(plan.findings,
                             [&](const auto& finding) { return codes.contains(finding.code); });
}

int Audit::count_findings(const std::string& code, const std::string& id) const {
  return static_cast<int>(std::ranges::count_if(plan.findings, [&](const auto& finding) {
    return finding.code == code && finding.wound == id;
  }));
}

const wound::Wound& Audit::wound(const std::string& id) const {
  return *std::ranges::find(seen.wounds, id, &wound::Wound::id);
}

GeosShape Audit::wounds(const std::vector<std::string>& ids) const {
  GeosShape all;
  for (const std::string& id : ids) all = all | shapes.at(id);
  return all;
}

GeosShape sewn(const geometry::Region& parts) {
  GeosShape all;
  for (const geometry::Polygon& part : parts) all = all | GeosShape(part);
  return parts.size() > 1 ? all.buffered(hair_cm / 2, 2).buffered(-hair_cm / 2, 2) : all;
}

GeosShape Audit::pieces_of(const dressing::Layer& layer) const {
  const bool seamed = std::ranges::any_of(plan.fill.seams, [&](const dressing::Seam& seam) {
    return seam.wound == layer.wound && seam.layer == layer.index;
  });
  return seamed ? sewn(layer.pieces) : GeosShape(layer.pieces);
}

GeosShape Audit::top_layer(const std::vector<std::string>& ids) const {
  GeosShape all;
  for (const dressing::Layer& layer : plan.fill.layers) {
    const bool ours = std::ranges::find(ids, layer.wound) != ids.end();
    if (ours && layer.index == 1) all = all | pieces_of(layer);
  }
  return all;
}

GeosShape Audit::top_filler(const std::vector<std::string>& ids) const {
  GeosShape all;
  for (const dressing::Layer& layer : plan.fill.layers) {
    if (layer.index != 1 || std::ranges::find(ids, layer.wound) == ids.end()) continue;
    GeosShape pieces = pieces_of(layer);
    if (layer.reaches_into_pockets) pieces = pieces & shapes.at(layer.wound);
    all = all | pieces;
  }
  return all;
}

std::vector<std::string> broken_promises(const wound::Case& value, const dressing::Plan& plan) {
  Audit audit(value, plan);
  audit_measures(audit);
  audit_fill(audit);
  audit_films(audit);
  audit_cut(audit);
  audit_findings(audit);
  return std::move(audit.broken);
}

}  // namespace drapewright::support
