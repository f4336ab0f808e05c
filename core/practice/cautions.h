#pragma once

#include <span>
#include <string_view>

#include "core/practice/source.h"

namespace drapewright::practice {

enum class CautionKind {
  contraindication,  ///< present: stop
  risk_factor,       ///< present: warning
};

/// A question to be answered before anything is planned.
struct Caution {
  std::string_view id;  ///< stored in the case: "untreated-osteomyelitis"
  CautionKind kind = CautionKind::risk_factor;
  std::string_view text;    ///< what may be present, in words of the trade
  std::string_view advice;  ///< what to do about it; defers to the prescriber
  Source source;
};

/// Contraindications first, then risk factors.
std::span<const Caution> cautions();
/// nullptr for an id that is not in the table (a newer program's file).
const Caution* find_caution(std::string_view id);

}  // namespace drapewright::practice
