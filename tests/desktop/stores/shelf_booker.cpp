// shelf_booker SHELF WHO ITEM TIMES: takes one piece so many times, and prints "taken" or "none"
// for each when the shelf has answered.
#include <QCoreApplication>
#include <cstdio>

#include "app/desktop/stores/shelf_store.h"
#include "core/base/calendar.h"
#include "core/base/error.h"

int main(int argc, char* argv[]) {
  const QCoreApplication program(argc, argv);
  const QStringList arguments = QCoreApplication::arguments();
  using namespace drapewright;
  try {
    desktop::ShelfStore shelf(desktop::shelf_place(arguments[1]), arguments[2]);
    const int today = day_number("2026-03-02").value();
    for (int n = arguments[4].toInt(); n > 0; --n) {
      try {
        shelf.take(arguments[3], 1, today, "test");
        std::puts("taken");
      } catch (const InputError& error) {
        std::puts(error.problem().find("asked for") != std::string::npos ? "none" : error.what());
      }
      std::fflush(stdout);
    }
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 2;
  }
  return 0;
}
