#include "app/desktop/panels/measure_rows.h"

#include <QStringList>
#include <utility>

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
        QString(" ± %1 %2, as the tracing error allows").arg(fixed(figure.spread, 4), unit);
  }
  if (!meaning.isEmpty()) made.detail += "\n" + meaning;
  return made;
}

void add_wound(std::vector<MeasureRow>& rows, const dressing::WoundMeasures& wound) {
  rows.push_back(group("Wound " + text_of(wound.id)));
  rows.push_back(row("Area", wound.area, "cm²", "Outline less islands."));
  rows.push_back(row("Length", wound.length, "cm", "Greatest distance between two edge points."));
  rows.push_back(row("Width", wound.width, "cm", "Extent at right angles to the length."));
  rows.push_back(row("Head to foot", wound.head_to_foot, "cm", "Clock method, 12 to 6."));
  rows.push_back(row("Side to side", wound.side_to_side, "cm", "Clock method, 3 to 9."));
  rows.push_back(row("Edges", wound.perimeter, "cm", "Length of all edges, islands included."));
  rows.push_back(row("Volume", wound.volume, "cm³",
                     "Cavity by outline, depth and wall run-in; pockets left out."));
  if (wound.pocket_volume_cm3 > 0) {
    rows.push_back(plain("Pockets", wound.pocket_volume_cm3, "cm³",
                         "Under the undermined edge, as high as the lowest layer of filler; not in "
                         "the volume above."));
  }
  rows.push_back(plain("Length x width", wound.rectangle_area_cm2, "cm²",
                       "As a ruler gives it; it overstates the area."));
  rows.push_back(plain("Ellipse of that", wound.ellipse_area_cm2, "cm²", "pi/4 x length x width."));
}

void add_filler(std::vector<MeasureRow>& rows, const dressing::Fill& fill) {
  rows.push_back(group("Filler"));
  rows.push_back({"Pieces",
                  QString::number(fill.piece_count),
                  {},
                  "Count them in, write the number on the dressing, count them out."});
  rows.push_back(plain("To cut", fill.area_cm2, "cm²",
                       "All pieces of all layers; bridges and tunnel strips are extra."));
  rows.push_back(
      plain("Filler volume", fill.volume_cm3, "cm³",
            "The pieces cut for the layers, times their thickness; bridges and strips left out."));
  rows.push_back(plain("Next to the film", fill.top_area_cm2, "cm²", "Top layers only."));
  rows.push_back(plain("Wound left unfilled", fill.unfilled_cm2, "cm²",
                       "Too narrow to take filler at this inset."));
}

QString names_of(const dressing::Drape& drape) {
  QStringList names;
  for (const auto& id : drape.wounds) names << text_of(id);
  return names.join(", ");
}

QString clock_text(const dressing::Drape& drape) {
  QStringList hours;
  for (std::size_t i = 0; i < drape.border_by_clock_cm.size(); ++i) {
    hours << QString("%1 h: %2 cm").arg(i + 1).arg(fixed(drape.border_by_clock_cm[i], 2));
  }
  return "Least border by clock hour:\n" + hours.join("\n");
}

void add_film(std::vector<MeasureRow>& rows, const dressing::Drape& drape) {
  rows.push_back(group("Film over " + names_of(drape)));
  rows.push_back(plain("Film, trimmed", drape.area_cm2, "cm²"));
  rows.push_back(
      {"Smallest rectangle",
       QString("%1 x %2 cm").arg(fixed(drape.rectangle.length_cm), fixed(drape.rectangle.width_cm)),
       {},
       QString("%1 x %2 cm at any angle")
           .arg(fixed(drape.rectangle.length_cm, 4), fixed(drape.rectangle.width_cm, 4))});
  for (const auto& sheet : drape.sheets)
    rows.push_back({"Sheet", text_of(supplies::shown_name(sheet.item)), {}, {}});
  if (drape.sheets.empty()) {
    rows.push_back({"Sheet", "none holds it", {}, "See the findings."});
  }
  rows.push_back(row("Least border", drape.least_border, "cm", clock_text(drape)));
}

QString place(const std::optional<geometry::Point>& centre) {
  return centre ? QString("%1, %2 cm").arg(fixed(centre->x), fixed(centre->y))
                : "no filler to sit on";
}

void add_bridges(std::vector<MeasureRow>& rows, const dressing::Drape& drape) {
  for (const dressing::Bridge& bridge : drape.bridges) {
    const bool to_port = bridge.pad_diameter_cm > 0;
    rows.push_back(plain(to_port ? "Bridge to the port" : "Bridge between fillers",
                         bridge.length_cm, "cm",
                         QString("Length along its middle; %1 cm wide. A strip of filler over "
                                 "film-protected skin, counted as a piece.")
                             .arg(fixed(bridge.width_cm))));
  }
}

void add_port(std::vector<MeasureRow>& rows, const dressing::Port& port) {
  rows.push_back({"Port centre", place(port.centre_cm), {}, "x, y in the drawing."});
  rows.push_back({"Aperture " + fixed(port.aperture_diameter_cm) + " cm",
                  port.fits ? "fits" : "does not fit",
                  {},
                  "It must lie wholly over filler, clear of every no-port zone."});
  rows.push_back(row("Room for the aperture", port.room, "cm",
                     port.on_bridge ? "Diameter of the largest circle round the port's centre on "
                                      "the bridge's pad."
                                    : "Diameter of the largest circle round the port's centre on "
                                      "that filler."));
  rows.push_back(row("Largest aperture", port.largest_aperture, "cm",
                     "Diameter of the largest circle that lies wholly on top filler."));
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
  rows.push_back(group("Course"));
  rows.push_back({"Applications", QString::number(plan.applications), {}, {}});
  return rows;
}

}  // namespace drapewright::desktop
