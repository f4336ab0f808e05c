#pragma once

#include <QString>
#include <vector>

#include "core/wound/case.h"

namespace drapewright::desktop {

/// An invented case that comes with the program, built into it.
struct DemoCase {
  QString name;   ///< of its file, without the ending: "two-wounds"
  QString title;  ///< "Two wounds"
};

std::vector<DemoCase> demo_cases();
/// @throws InputError when there is no such demo
wound::Case read_demo(const QString& name);

}  // namespace drapewright::desktop
