#include "app/desktop/tools/port_words.h"

#include <cmath>

#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

QString cm(double value) { return QString::fromStdString(format_short(value, 2)) + " cm"; }

}  // namespace

QString out_of_reach_words(const dressing::PortGround& ground) {
  return QString("Too far from the wound: more than the film border of %1.")
      .arg(cm(ground.border_cm()));
}

QStringList words_for(const dressing::PortPlace& place, const dressing::PortGround& ground) {
  if (!place.in_reach) return {out_of_reach_words(ground)};
  const double room_cm = std::floor(place.room_cm * 100) / 100;  // never said larger than it is
  QStringList lines{
      place.room_cm > 0
          ? QString("Room on filler: %1 cm.").arg(QString::fromStdString(format_number(room_cm, 2)))
          : QString("No room: its middle is not over filler.")};
  const QString aperture = QString("The aperture of %1 ").arg(cm(ground.aperture_diameter_cm()));
  const QString base = QString("The base of %1 ").arg(cm(ground.base_diameter_cm()));
  lines << aperture + (place.aperture_fits ? "fits." : "does not lie wholly over filler.");
  if (!place.base_clear) lines << base + "reaches into a zone of no port or no film.";
  if (!place.base_on_film) lines << base + "reaches beyond the film.";
  if (place.base_clear && place.base_on_film) lines << base + "lies on film.";
  return lines;
}

dressing::Severity severity_of(const dressing::PortPlace& place) {
  if (!place.in_reach) return dressing::Severity::stop;
  return place.good() ? dressing::Severity::note : dressing::Severity::warning;
}

}  // namespace drapewright::desktop
