#pragma once

#include <QString>
#include <string_view>
#include <vector>

#include "core/base/say.h"

namespace drapewright {

/// One insert of a text of the program: as core's, and Qt's strings.
class SpokenInsert : public Insert {
 public:
  using Insert::Insert;
  SpokenInsert(const QString& text) : Insert(text.toStdString()) {}
};

/// `say` for widgets: `english` in the reader's language, with the inserts at its places {1} to {9}.
inline QString spoken(std::string_view english, const std::vector<SpokenInsert>& inserts = {}) {
  return QString::fromStdString(
      say(english, std::vector<Insert>(inserts.begin(), inserts.end())));
}

/// `count_of` for widgets.
inline QString spoken_count(int count, std::string_view one, std::string_view many) {
  return QString::fromStdString(count_of(count, one, many));
}

}  // namespace drapewright
