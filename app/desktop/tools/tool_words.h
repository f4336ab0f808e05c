#pragma once

#include <QString>

#include "app/wording/spoken.h"

namespace drapewright::desktop {

class PlanView;

/// What several tools say.
inline QString no_outline_words() {
  return spoken("Choose an outline in the list first, or draw one.");
}
inline QString crossing_words() { return spoken("The line crosses itself: draw it again."); }

/// "3", "10.25".
QString hour_words(double hour);

/// How near to an edge a line has to start to be meant for it: a fingertip, on any zoom.
double reach_cm(const PlanView& view);

}  // namespace drapewright::desktop
