#pragma once

#include <QStringList>

#include "app/desktop/theme/marks.h"
#include "core/dressing/port_ground.h"

namespace drapewright::desktop {

/// What a port finds at a place, in words: the room first, then what speaks against it.
QStringList words_for(const dressing::PortPlace& place, const dressing::PortGround& ground);
QString out_of_reach_words(const dressing::PortGround& ground);
/// Stop where the place serves nobody, warning where the plan will warn, else a note.
dressing::Severity severity_of(const dressing::PortPlace& place);

}  // namespace drapewright::desktop
