#include "app/desktop/panels/measure_rows.h"

#include <QStringList>
#include <utility>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

using dressing::Figure;

QString fixed(double value, int decimals = 1) {
  return QString::fromStdString(format_number(value, decimals));
}

QString text_of(const std::string& text) { return QString::fromStdString(text); }

MeasureRow group(const QString& name) { return {name, {}, {}, {}}; }

MeasureRow plain(const QString& name, double value, const QString& unit,
                 const QString& meaning = {}) {
  const QString digits = fixed(value, 4) + " " + unit;
  return {
      name, fixed(value) + " " + unit, {}, meaning.isEmpty() ? digits : digits + "\n" + meaning};
}

MeasureRow row(const QString& name, const Figure& figure, const QString& unit,
               const QString& meaning = {}) {
  MeasureRow made = plain(name, figure.value, unit, {});
  if (figure.spread > 0) {
    made.spread = "± " + fixed(figure.spread);
    made.detail +=
        " " + spoken("± {1} {2}, as the tracing error allows", {fixed(figure.spread, 4), unit});
  }
  if (!meaning.isEmpty()) made.detail += "\n" + meaning;
  return made;
}

void add_wound(std::vector<MeasureRow>& rows, const dressing::WoundMeasures& wound) {
  rows.push_back(group(spoken("Wound {1}", {wound.id})));
  rows.push_back(row(spoken("Area"), wound.area, "cm²", spoken("Outline less islands.")));
  rows.push_back(row(spoken("Length"), wound.length, "cm",
                     spoken("Greatest distance between two edge points.")));
  rows.push_back(
      row(spoken("Width"), wound.width, "cm", spoken("Extent at right angles to the length.")));
  rows.push_back(
      row(spoken("Head to foot"), wound.head_to_foot, "cm", spoken("Clock method, 12 to 6.")));
  rows.push_back(
      row(spoken("Side to side"), wound.side_to_side, "cm", spoken("Clock method, 3 to 9.")));
  rows.push_back(row(spoken("Edges"), wound.perimeter, "cm",
                     spoken("Length of all edges, islands included.")));
  rows.push_back(row(spoken("Volume"), wound.volume, "cm³",
                     spoken("Cavity by outline, depth and wall run-in; pockets left out.")));
  if (wound.pocket_volume_cm3 > 0) {
    rows.push_back(
        plain(spoken("Pockets"), wound.pocket_volume_cm3, "cm³",
              spoken("Under the undermined edge, as high as the lowest layer of filler; not in "
                     "the volume above.")));
  }
  rows.push_back(plain(spoken("Length x width"), wound.rectangle_area_cm2, "cm²",
                       spoken("As a ruler gives it; it overstates the area.")));
  rows.push_back(plain(spoken("Ellipse of that"), wound.ellipse_area_cm2, "cm²",
                       spoken("pi/4 x length x width.")));
}

void add_filler(std::vector<MeasureRow>& rows, const dressing::Fill& fill) {
  rows.push_back(group(spoken("Filler")));
  rows.push_back({spoken("Pieces"),
                  QString::number(fill.piece_count),
                  {},
                  spoken("Count them in, write the number on the dressing, count them out.")});
  rows.push_back(plain(spoken("To cut"), fill.area_cm2, "cm²",
                       spoken("All pieces of all layers; bridges and tunnel strips are extra.")));
  rows.push_back(plain(
      spoken("Filler volume"), fill.volume_cm3, "cm³",
      spoken(
          "The pieces cut for the layers, times their thickness; bridges and strips left out.")));
  rows.push_back(
      plain(spoken("Next to the film"), fill.top_area_cm2, "cm²", spoken("Top layers only.")));
  rows.push_back(plain(spoken("Wound left unfilled"), fill.unfilled_cm2, "cm²",
                       spoken("Too narrow to take filler at this inset.")));
}

QString names_of(const dressing::Drape& drape) {
  QStringList names;
  for (const auto& id : drape.wounds) names << text_of(id);
  return names.join(", ");
}

QString clock_text(const dressing::Drape& drape) {
  QStringList hours;
  for (std::size_t i = 0; i < drape.border_by_clock_cm.size(); ++i) {
    hours << spoken("{1} h: {2} cm", {i + 1, fixed(drape.border_by_clock_cm[i], 2)});
  }
  return spoken("Least border by clock hour:") + "\n" + hours.join("\n");
}

void add_film(std::vector<MeasureRow>& rows, const dressing::Drape& drape) {
  rows.push_back(group(spoken("Film over {1}", {names_of(drape)})));
  rows.push_back(plain(spoken("Film, trimmed"), drape.area_cm2, "cm²"));
  rows.push_back(
      {spoken("Smallest rectangle"),
       spoken("{1} x {2} cm", {fixed(drape.rectangle.length_cm), fixed(drape.rectangle.width_cm)}),
       {},
       spoken("{1} x {2} cm at any angle",
              {fixed(drape.rectangle.length_cm, 4), fixed(drape.rectangle.width_cm, 4)})});
  for (const auto& sheet : drape.sheets)
    rows.push_back({spoken("Sheet"), text_of(supplies::shown_name(sheet.item)), {}, {}});
  if (drape.sheets.empty()) {
    rows.push_back({spoken("Sheet"), spoken("none holds it"), {}, spoken("See the findings.")});
  }
  rows.push_back(row(spoken("Least border"), drape.least_border, "cm", clock_text(drape)));
}

QString place(const std::optional<geometry::Point>& centre) {
  return centre ? spoken("{1}, {2} cm", {fixed(centre->x), fixed(centre->y)})
                : spoken("no filler to sit on");
}

void add_bridges(std::vector<MeasureRow>& rows, const dressing::Drape& drape) {
  for (const dressing::Bridge& bridge : drape.bridges) {
    const bool to_port = bridge.pad_diameter_cm > 0;
    rows.push_back(plain(to_port ? spoken("Bridge to the port") : spoken("Bridge between fillers"),
                         bridge.length_cm, "cm",
                         spoken("Length along its middle; {1} cm wide. A strip of filler over "
                                "film-protected skin, counted as a piece.",
                                {fixed(bridge.width_cm)})));
  }
}

void add_port(std::vector<MeasureRow>& rows, const dressing::Port& port) {
  rows.push_back(
      {spoken("Port centre"), place(port.centre_cm), {}, spoken("x, y in the drawing.")});
  rows.push_back({spoken("Aperture {1} cm", {fixed(port.aperture_diameter_cm)}),
                  port.fits ? spoken("fits") : spoken("does not fit"),
                  {},
                  spoken("It must lie wholly over filler, clear of every no-port zone.")});
  rows.push_back(row(spoken("Room for the aperture"), port.room, "cm",
                     port.on_bridge
                         ? spoken("Diameter of the largest circle round the port's centre on "
                                  "the bridge's pad.")
                         : spoken("Diameter of the largest circle round the port's centre on "
                                  "that filler.")));
  rows.push_back(row(spoken("Largest aperture"), port.largest_aperture, "cm",
                     spoken("Diameter of the largest circle that lies wholly on top filler.")));
}

}  // namespace

std::vector<MeasureRow> measure_rows(const dressing::Plan& plan) {
  std::vector<MeasureRow> rows;
  for (const auto& wound : plan.wounds) add_wound(rows, wound);
  add_filler(rows, plan.fill);
  for (const auto& drape : plan.drapes) {
    add_film(rows, drape);
    add_bridges(rows, drape);
    add_port(rows, drape.port);
  }
  rows.push_back(group(spoken("Course")));
  rows.push_back({spoken("Applications"), QString::number(plan.applications), {}, {}});
  return rows;
}

}  // namespace drapewright::desktop
