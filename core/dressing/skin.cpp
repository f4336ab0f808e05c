#include "core/dressing/skin.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

using geometry::Region;

std::optional<Region> verified(geometry::Offset offset) {
  if (!offset.verified) return std::nullopt;
  return std::move(offset.region);
}

void append(const Region& part, Region& all) { all.insert(all.end(), part.begin(), part.end()); }

}  // namespace

struct Skin::Impl {
  Impl(const std::vector<PreparedWound>& all, const Zones& of_case,
       const wound::DressingSettings& chosen)
      : wounds(all), zones(of_case), settings(chosen), strip_round_wound(all.size()) {}

  using Grown = std::optional<Region>;

  const Grown& round_wound(std::size_t i) {
    auto& kept = strip_round_wound[i];
    if (!kept) kept = verified(geometry::outset(*wounds[i].map, settings.bridge_width_cm / 2));
    return *kept;
  }

  const Grown& round_zones(const Region& zone, std::optional<Grown>& kept) {
    if (!kept) kept = verified(geometry::outset(zone, settings.bridge_width_cm / 2));
    return *kept;
  }

  Grown port_barriers() const {
    std::vector<Region> parts;
    const auto add = [&](geometry::Offset offset) {
      if (offset.verified) parts.push_back(std::move(offset.region));
      return offset.verified;
    };
    for (const PreparedWound& wound : wounds) {
      if (!add(geometry::outset(*wound.map, pad_diameter(settings) / 2))) return std::nullopt;
    }
    const double widest_cm = std::max(settings.port_base_diameter_cm, pad_diameter(settings));
    for (const Region* zone : {&zones.no_film, &zones.no_port}) {
      if (zone->empty()) continue;
      if (!add(geometry::outset(*zone, widest_cm / 2))) return std::nullopt;
    }
    return parts.size() == 1 ? std::move(parts.front()) : geometry::unite(parts);
  }

  Region all_closed_to_film() const {
    std::vector<Region> parts{zones.no_film};
    for (const PreparedWound& wound : wounds) parts.push_back(wound.shape);
    return geometry::unite(parts);
  }

  const std::vector<PreparedWound>& wounds;
  const Zones& zones;
  const wound::DressingSettings& settings;
  std::optional<Region> film;
  std::vector<std::optional<Grown>> strip_round_wound;
  std::optional<Grown> strip_round_no_film, strip_round_no_port, ports;
};

Skin::Skin(const std::vector<PreparedWound>& wounds, const Zones& zones,
           const wound::DressingSettings& settings)
    : impl_(std::make_unique<Impl>(wounds, zones, settings)) {}
Skin::~Skin() = default;

const Zones& Skin::zones() const { return impl_->zones; }

const Region* Skin::closed_to_ports() const {
  if (!impl_->ports) impl_->ports = impl_->port_barriers();
  return *impl_->ports ? &**impl_->ports : nullptr;
}

const Region& Skin::closed_to_film() const {
  if (!impl_->film) impl_->film = impl_->all_closed_to_film();
  return *impl_->film;
}

std::optional<Region> Skin::closed_to_strips(const std::vector<std::size_t>& group,
                                             bool may_cross_no_port) const {
  Region all;
  const auto add = [&](const Impl::Grown& grown) {
    if (grown) append(*grown, all);
    return grown.has_value();
  };
  const Zones& zones = impl_->zones;
  if (!add(impl_->round_zones(zones.no_film, impl_->strip_round_no_film))) return std::nullopt;
  if (!may_cross_no_port && !add(impl_->round_zones(zones.no_port, impl_->strip_round_no_port))) {
    return std::nullopt;
  }
  for (std::size_t i = 0; i < impl_->wounds.size(); ++i) {
    if (std::ranges::find(group, i) != group.end()) continue;
    if (!add(impl_->round_wound(i))) return std::nullopt;
  }
  return all;
}

double pad_diameter(const wound::DressingSettings& settings) {
  const double margin_cm = practice::limit("pad_margin_cm").standard;
  return std::max(settings.bridge_width_cm, settings.aperture_diameter_cm + 2 * margin_cm);
}

}  // namespace drapewright::dressing
