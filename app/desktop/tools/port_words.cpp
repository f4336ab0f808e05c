#include "app/desktop/tools/port_words.h"

#include <cmath>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

QString cm(double value) { return QString::fromStdString(format_short(value, 2)) + " cm"; }

}  // namespace

QString out_of_reach_words(const dressing::PortGround& ground) {
  return spoken("Too far from the wound: more than the film border of {1}.",
                {cm(ground.border_cm())});
}

QStringList words_for(const dressing::PortPlace& place, const dressing::PortGround& ground) {
  if (!place.in_reach) return {out_of_reach_words(ground)};
  const double room_cm = std::floor(place.room_cm * 100) / 100;  // never said larger than it is
  QStringList lines{place.room_cm > 0 ? spoken("Room on filler: {1} cm.",
                                               {QString::fromStdString(format_number(room_cm, 2))})
                                      : spoken("No room: its middle is not over filler.")};
  const QString aperture = cm(ground.aperture_diameter_cm()), base = cm(ground.base_diameter_cm());
  lines << (place.aperture_fits
                ? spoken("The aperture of {1} fits.", {aperture})
                : spoken("The aperture of {1} does not lie wholly over filler.", {aperture}));
  if (!place.base_clear) {
    lines << spoken("The base of {1} reaches into a zone of no port or no film.", {base});
  }
  if (!place.base_on_film) lines << spoken("The base of {1} reaches beyond the film.", {base});
  if (place.base_clear && place.base_on_film)
    lines << spoken("The base of {1} lies on film.", {base});
  return lines;
}

dressing::Severity severity_of(const dressing::PortPlace& place) {
  if (!place.in_reach) return dressing::Severity::stop;
  return place.good() ? dressing::Severity::note : dressing::Severity::warning;
}

}  // namespace drapewright::desktop
