#pragma once

#include <QString>

#include "core/wound/case.h"

namespace drapewright::desktop {

/// Hours of undermining and tunnels are counted round a wound's middle. Where an outline was
/// changed so that its middle moved or the wound was turned, the hours typed before may be wrong.
/// @return what to check, in a sentence; empty where nothing is in doubt
QString hours_in_doubt(const wound::Case& before, const wound::Case& after);

}  // namespace drapewright::desktop
