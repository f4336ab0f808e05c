#include "core/dressing/port.h"

#include <string>

#include "core/base/numbers.h"
#include "core/dressing/fill.h"
#include "core/geometry/circle.h"
#include "core/geometry/distance.h"
#include "core/geometry/overlay.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

class PortPlacer {
 public:
  PortPlacer(Drape& drape, const geometry::Region& no_port, const wound::DressingSettings& settings,
             FindingList& findings)
      : drape_(drape), no_port_(no_port), settings_(settings), findings_(findings) {}

  void place(const geometry::Region& filler) {
    Port& port = drape_.port;
    port.aperture_diameter_cm = settings_.aperture_diameter_cm;
    port.aperture_limit_cm = *practice::limit("aperture_diameter_cm").usual_maximum;
    port.base_diameter_cm = settings_.port_base_diameter_cm;
    const geometry::Region ground =
        no_port_.empty() ? filler : geometry::subtract(filler, no_port_);
    const auto circle = geometry::largest_inscribed_circle(ground);
    if (!circle) {
      report_no_place(filler.empty());
      return;
    }
    port.centre_cm = circle->centre;
    port.largest_aperture = {2 * circle->radius_cm, 2 * settings_.tracing_error_mm / 10};
    port.fits = port.largest_aperture.value >= port.aperture_diameter_cm;
    if (!port.fits) report_aperture_off_filler();
    check_base();
    if (filler.size() > 1) report_filler_apart(filler.size());
  }

 private:
  void add(Severity severity, std::string code, std::string text, std::string source) {
    findings_.add({.severity = severity,
                   .code = std::move(code),
                   .text = std::move(text),
                   .source = std::move(source),
                   .wound = drape_.wounds.front(),
                   .where_cm = drape_.port.centre_cm ? drape_.port.centre_cm
                                                     : std::optional(drape_.centroid_cm)});
  }

  void report_no_place(bool no_filler) {
    add(Severity::stop, "no-place-for-port",
        no_filler ? "There is no filler for the port to sit on."
                  : "All filler lies where no port may sit: a bridge of filler must lead to a "
                    "place beside it. Where it runs is not yet worked out.",
        source_of_rule("aperture-over-filler"));
  }

  void report_aperture_off_filler() {
    add(Severity::warning, "bridge-needed",
        "The aperture of " + format_short(settings_.aperture_diameter_cm, 2) +
            " cm does not lie wholly over filler: the largest that does is " +
            format_number(drape_.port.largest_aperture.value, 2) +
            " cm across. Cut a smaller one, or lead a bridge of filler over film to a place "
            "where the port can sit. Where it runs is not yet worked out.",
        source_of_rule("aperture-over-filler"));
  }

  void check_base() {
    const geometry::Point centre = *drape_.port.centre_cm;
    const double radius_cm = settings_.port_base_diameter_cm / 2;
    if (!drape_.outline_cm.empty()) {
      const bool on_film =
          geometry::contains(drape_.outline_cm, centre) &&
          geometry::EdgeIndex(drape_.outline_cm).nearest(centre).distance_cm >= radius_cm;
      if (!on_film) {
        add(Severity::warning, "base-off-film",
            "The port's base of " + format_short(settings_.port_base_diameter_cm, 2) +
                " cm reaches beyond the film.",
            own_rule());
      }
    }
    if (!no_port_.empty() &&
        geometry::EdgeIndex(no_port_).nearest(centre).distance_cm < radius_cm) {
      add(Severity::warning, "base-on-no-port-zone",
          "The aperture lies clear of where no port may sit, but the port's base of " +
              format_short(settings_.port_base_diameter_cm, 2) +
              " cm reaches into it: pressure on a bony place or a crease. Choose another place, or "
              "lead a bridge away.",
          own_rule());
    }
  }

  void report_filler_apart(std::size_t pieces) {
    add(Severity::warning, "filler-not-joined",
        "One film covers " + std::to_string(pieces) +
            " pieces of filler that do not touch: the port draws only on the one that it sits on. "
            "Join them with bridges of filler over film, or give each a port. Where bridges run "
            "is not yet worked out.",
        own_rule());
  }

  Drape& drape_;
  const geometry::Region& no_port_;
  const wound::DressingSettings& settings_;
  FindingList& findings_;
};

}  // namespace

void place_port(Drape& drape, const Fill& fill, const geometry::Region& no_port,
                const wound::DressingSettings& settings, FindingList& findings) {
  PortPlacer(drape, no_port, settings, findings).place(top_filler(fill, drape.wounds));
}

}  // namespace drapewright::dressing
