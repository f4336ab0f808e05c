#include "core/dressing/port.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/port_ground.h"
#include "core/geometry/circle.h"
#include "core/geometry/indexed_region.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

class PortPlacer {
 public:
  PortPlacer(Drape& drape, const GroupGround& ground, const wound::DressingSettings& settings,
             FindingList& findings)
      : drape_(drape),
        port_(drape.port),
        ground_(ground),
        zones_(ground.skin.zones()),
        settings_(settings),
        findings_(findings),
        no_film_(zones_.no_film),
        no_port_(zones_.no_port) {}

  void place(const std::vector<geometry::Region>& pieces) {
    geometry::Region filler;
    for (const geometry::Region& piece : pieces)
      std::ranges::copy(piece, std::back_inserter(filler));
    port_.aperture_diameter_cm = settings_.aperture_diameter_cm;
    port_.aperture_limit_cm = *practice::limit("aperture_diameter_cm").usual_maximum;
    port_.base_diameter_cm = settings_.port_base_diameter_cm;
    port_.largest_aperture.spread = both_edges_cm();  // where there is no room now, there may be
    if (filler.empty()) {
      add(Severity::stop, "no-place-for-port", say("There is no filler for the port to sit on."),
          source_of_rule("aperture-over-filler"));
      return;
    }
    if (pieces.size() > 1) join(pieces);
    place_on(filler);
    if (!port_.chosen && (!port_.fits || settings_.bridge_wanted)) lead_away(filler);
    if (!port_.fits) report_aperture_off_filler();
    if (base_on_zone_ && !port_.on_bridge) report_base_on_zone();
  }

 private:
  void add(Severity severity, std::string code, std::string text, std::string source) {
    findings_.add(
        {.severity = severity,
         .code = std::move(code),
         .text = std::move(text),
         .source = std::move(source),
         .wound = drape_.wounds.front(),
         .where_cm = port_.centre_cm ? port_.centre_cm : std::optional(drape_.centroid_cm)});
  }

  void join(const std::vector<geometry::Region>& pieces) {
    JoinedFiller joined = join_filler(pieces, ground_, settings_);
    drape_.bridges = std::move(joined.bridges);
    if (!drape_.bridges.empty()) report_joined(pieces.size());
    if (!joined.barred.empty()) report_barred(joined.barred.size());
  }

  void place_on(const geometry::Region& filler) {
    const geometry::Region open =
        zones_.no_port.empty() ? filler : geometry::subtract(filler, zones_.no_port);
    auto circle = geometry::largest_inscribed_circle(open);
    if (circle) port_.largest_aperture = {2 * circle->radius_cm, both_edges_cm()};
    if (use_chosen_place(open) || !circle) return;
    // A little less room is well spent on a base that keeps clear of bone and crease.
    if (!base_is_clear(circle->centre)) {
      if (const auto better = roomiest_with_clear_base(open)) circle = better;
    }
    take(circle->centre, 2 * circle->radius_cm);
  }

  bool use_chosen_place(const geometry::Region& open) {
    if (settings_.port_places_cm.empty()) return false;
    const geometry::IndexedRegion wounds(ground_.shape);
    const auto place = std::ranges::find_if(settings_.port_places_cm, [&](geometry::Point one) {
      return serves(one, wounds, settings_.border_cm);
    });
    if (place == settings_.port_places_cm.end()) return false;
    port_.chosen = true;
    take(*place, 2 * geometry::IndexedRegion(open).room_cm(*place));
    return true;
  }

  /// A circle's edge may be off by the tracing error on both sides.
  double both_edges_cm() const { return 2 * settings_.tracing_error_mm / 10; }

  void take(geometry::Point centre, double room_cm) {
    port_.centre_cm = centre;
    port_.room = {room_cm, both_edges_cm()};
    port_.fits = room_cm >= port_.aperture_diameter_cm;
    if (!base_is_clear(centre)) base_on_zone_ = true;
  }

  bool base_is_clear(geometry::Point centre) const {
    const double reach_cm = settings_.port_base_diameter_cm / 2;
    return no_port_.distance_cm(centre) >= reach_cm && no_film_.distance_cm(centre) >= reach_cm;
  }

  std::optional<geometry::Circle> roomiest_with_clear_base(const geometry::Region& open) const {
    const geometry::Region zones = geometry::unite(zones_.no_port, zones_.no_film);
    const geometry::Offset kept_off = geometry::outset(zones, settings_.port_base_diameter_cm / 2);
    if (!kept_off.verified) return std::nullopt;
    const auto circle =
        geometry::largest_circle_centred_in(open, geometry::subtract(open, kept_off.region));
    if (!circle || 2 * circle->radius_cm < settings_.aperture_diameter_cm) return std::nullopt;
    return circle;
  }

  void lead_away(const geometry::Region& filler) {
    auto bridge = bridge_to_port(filler, ground_, settings_);
    if (!bridge) {
      report_no_way();
      return;
    }
    port_.centre_cm = bridge->line.back();
    port_.room = {bridge->pad_diameter_cm, 0};
    port_.fits = bridge->pad_diameter_cm >= port_.aperture_diameter_cm;
    port_.on_bridge = true;
    drape_.bridges.push_back(std::move(*bridge));
    report_bridge();
  }

  void report_joined(std::size_t pieces) {
    add(Severity::note, "filler-joined",
        count_of(
            static_cast<int>(drape_.bridges.size()),
            "The film covers {2} pieces of filler that do not touch; {1} bridge of filler over "
            "film joins them, so that one port draws on all. Each bridge counts as a piece.",
            "The film covers {2} pieces of filler that do not touch; {1} bridges of filler over "
            "film join them, so that one port draws on all. Each bridge counts as a piece.",
            {pieces}),
        source_of_limit("bridge_width_cm"));
  }

  void report_barred(std::size_t pieces) {
    add(Severity::warning, "filler-not-joined",
        say("No way for a bridge leads to {1} of filler under this film: zones or other wounds bar "
            "it. The port does not draw on it; give it a port of its own.",
            {count_of(static_cast<int>(pieces), "piece", "pieces")}),
        source_of_limit("bridge_width_cm"));
  }

  void report_bridge() {
    const Bridge& bridge = drape_.bridges.back();
    add(Severity::note, "port-on-bridge",
        say("The port sits beside the wound: a bridge of filler {1} cm wide and {2} cm long leads "
            "to "
            "a pad of {3} cm, over film that protects the skin. It counts as a piece.",
            {format_short(bridge.width_cm, 2), format_number(bridge.length_cm, 1),
             format_short(bridge.pad_diameter_cm, 2)}),
        source_of_limit("bridge_width_cm"));
    if (!bridge.crosses_no_port) return;
    add(Severity::warning, "bridge-crosses-zone",
        say("The bridge crosses a zone where no port may sit, as the wound itself lies in it. Keep "
            "the strip flat there and watch the skin under it."),
        source_of_limit("bridge_width_cm"));
  }

  void report_no_way() {
    add(Severity::warning, "no-way-for-bridge",
        say("No way was found for a bridge to a place where the port can sit: zones or other "
            "wounds "
            "bar it."),
        source_of_limit("bridge_width_cm"));
  }

  void report_aperture_off_filler() {
    add(port_.centre_cm ? Severity::warning : Severity::stop, "aperture-off-filler",
        say("The aperture of {1} cm does not lie wholly over filler: the largest that does here is "
            "{2} cm across.",
            {format_short(settings_.aperture_diameter_cm, 2), format_number(port_.room.value, 2)}),
        source_of_rule("aperture-over-filler"));
  }

  void report_base_on_zone() {
    add(Severity::warning, "base-on-zone",
        say("The port's base of {1} cm reaches into a zone where no port or film may be: pressure "
            "on "
            "a bony place or a crease. Choose another place, or ask for a bridge.",
            {format_short(settings_.port_base_diameter_cm, 2)}),
        own_rule());
  }

  Drape& drape_;
  Port& port_;
  const GroupGround& ground_;
  const Zones& zones_;
  const wound::DressingSettings& settings_;
  FindingList& findings_;
  geometry::IndexedRegion no_film_, no_port_;
  bool base_on_zone_ = false;
};

}  // namespace

void place_port(Drape& drape, const std::vector<geometry::Region>& pieces,
                const GroupGround& ground, const wound::DressingSettings& settings,
                FindingList& findings) {
  PortPlacer(drape, ground, settings, findings).place(pieces);
}

void check_port_base(const Drape& drape, FindingList& findings) {
  if (!drape.port.centre_cm || drape.outline_cm.empty()) return;
  const geometry::Point centre = *drape.port.centre_cm;
  const double room_cm = geometry::IndexedRegion(drape.outline_cm).room_cm(centre);
  if (room_cm >= drape.port.base_diameter_cm / 2) return;
  findings.add({.severity = Severity::warning,
                .code = "base-off-film",
                .text = say("The port's base of {1} cm reaches beyond the film.",
                            {format_short(drape.port.base_diameter_cm, 2)}),
                .source = own_rule(),
                .wound = drape.wounds.front(),
                .where_cm = centre});
}

}  // namespace drapewright::dressing
