#pragma once

#include <span>
#include <string_view>

#include "core/practice/source.h"

namespace drapewright::practice {

/// Something that happens while therapy runs, and what is done about it, in the order of doing.
/// Of the trade: how a device shows or asks it stands in the device's instructions.
struct Event {
  std::string_view id;
  std::string_view title;
  std::string_view signs;
  std::span<const std::string_view> steps;
  Source source;
};

/// The most urgent first.
std::span<const Event> events();

}  // namespace drapewright::practice
