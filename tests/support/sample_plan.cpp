#include "tests/support/sample_plan.h"

#include <cmath>

#include "core/geometry/shapes.h"

namespace drapewright::support {

using geometry::Point;

namespace {

constexpr double inset_cm = 0.3;
constexpr double border_cm = 5;

geometry::Ring grown_ellipse(double length, double width, double by, Point centre, double angle) {
  return geometry::ellipse(length + 2 * by, width + 2 * by, centre, angle, 120);
}

void add_wound(SamplePlan& sample, const std::string& id, double length, double width, Point centre,
               double angle, int layers) {
  sample.value.current().wounds.push_back(
      {.id = id, .outline_cm = grown_ellipse(length, width, 0, centre, angle)});
  dressing::WoundMeasures measures;
  measures.id = id;
  measures.length.value = length;
  measures.width.value = width;
  measures.area.value = geometry::pi / 4 * length * width;
  measures.length_direction_deg = angle;
  measures.centroid_cm = centre;
  sample.plan.wounds.push_back(measures);
  for (int index = 1; index <= layers; ++index) {
    const double inset = inset_cm + 0.3 * (index - 1);
    dressing::Layer layer{.wound = id, .index = index, .thickness_cm = 1.5};
    if (2 * inset < width) {
      layer.pieces = {{grown_ellipse(length, width, -inset, centre, angle), {}}};
    }
    sample.plan.fill.piece_count += static_cast<int>(layer.pieces.size());
    sample.plan.fill.layers.push_back(layer);
  }
}

dressing::Drape drape_over(double length, double width, Point centre, double angle) {
  dressing::Drape drape;
  drape.wounds = {"A"};
  drape.required_outline_cm = {{grown_ellipse(length, width, border_cm, centre, angle), {}}};
  drape.outline_cm = drape.required_outline_cm;
  drape.centroid_cm = centre;
  drape.least_border.value = border_cm;
  drape.port.centre_cm = centre;
  drape.port.aperture_diameter_cm = 2;
  drape.port.base_diameter_cm = 5;
  drape.port.fits = width > 2 + 2 * inset_cm;
  const double side = std::ceil(length + 2 * border_cm + 1);
  drape.sheets = {{"film " + std::to_string(static_cast<int>(side)) + " x " +
                       std::to_string(static_cast<int>(side)) + " cm",
                   {centre, side, side, angle}}};
  return drape;
}

SamplePlan empty_sample(const std::string& label) {
  SamplePlan sample;
  sample.value.label = sample.plan.label = label;
  sample.value.assessments = {{.date = "2031-03-01"}};
  return sample;
}

}  // namespace

SamplePlan sample_plan(double length_cm, double width_cm, double angle_deg) {
  SamplePlan sample = empty_sample("sample");
  add_wound(sample, "A", length_cm, width_cm, {}, angle_deg, 1);
  sample.plan.drapes = {drape_over(length_cm, width_cm, {}, angle_deg)};
  return sample;
}

SamplePlan crowded_plan() {
  SamplePlan sample = empty_sample("crowded");
  add_wound(sample, "left hip", 8, 5, {}, 90, 3);
  add_wound(sample, "B", 4, 2, {6.5, 1}, 110, 1);
  wound::Assessment& seen = sample.value.current();
  seen.wounds[0].islands_cm = {geometry::circle(1.6, {0.4, 2}, 60)};
  seen.wounds[0].undermining = {{.from_clock = 7, .to_clock = 9, .extent_cm = 1.5}};
  seen.wounds[0].tunnels = {{.clock = 11, .length_cm = 3, .explored = false}};
  seen.skin_zones = {
      {wound::ZoneKind::no_film,
       geometry::rectangle(12, 3, {1, -7}, 10),
       "skin fold at the groin",
       {}},
      {wound::ZoneKind::no_port, geometry::circle(3, {-3.5, 2}, 60), "bony point", {}}};
  dressing::Drape drape = drape_over(17, 8, {2.5, 0}, 10);
  drape.wounds = {"left hip", "B"};
  drape.least_border.value = 2.375;
  drape.least_border_line = geometry::Segment{{0.3, -4}, {0.4, -5.6}};
  drape.border_stretches = {
      {.kind = dressing::BorderKind::enough, .line = {{0.4, -4}, {3, -3}}},
      {.kind = dressing::BorderKind::too_short, .line = {{0.2, -4}, {0.4, -4}}},
      {.kind = dressing::BorderKind::none, .line = {{-0.4, -4}, {0.2, -4}}}};
  drape.port.centre_cm = Point{0, -1.4};
  drape.seams = {{{2.5, -9}, {2.5, 9}}};
  dressing::Bridge bridge{.line = {{2, 0}, {6, 1}}, .length_cm = 4.1, .width_cm = 1.5};
  bridge.strip = {{geometry::rectangle(4.1, 1.5, {4, 0.5}, 14), {}}};
  bridge.skin_protection = {{geometry::rectangle(2.4, 3.5, {3.8, 0.5}, 14), {}}};
  drape.bridges = {bridge};
  sample.plan.drapes = {drape};
  sample.plan.fill.unfilled = {{geometry::circle(0.5, {7.1, -0.6}, 24), {}}};
  sample.plan.fill.unfilled_cm2 = 0.2;
  return sample;
}

SamplePlan dense_plan(int points) {
  SamplePlan sample = sample_plan(30, 20, 0);
  const auto waves = [points](double by) {
    geometry::Ring ring;
    for (int i = 0; i < points; ++i) {
      const double t = 2 * geometry::pi * i / points;
      const double wave = 1 + 0.02 * std::sin(23 * t) + 0.001 * std::sin(700 * t);
      ring.push_back({(15 + by) * wave * std::cos(t), (10 + by) * wave * std::sin(t)});
    }
    return ring;
  };
  sample.value.current().wounds[0].outline_cm = waves(0);
  sample.plan.fill.layers[0].pieces = {{waves(-inset_cm), {}}};
  sample.plan.drapes[0].outline_cm = {{waves(border_cm), {}}};
  sample.plan.drapes[0].required_outline_cm = sample.plan.drapes[0].outline_cm;
  return sample;
}

}  // namespace drapewright::support
