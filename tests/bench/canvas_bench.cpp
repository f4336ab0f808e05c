// How long the canvas takes to paint, by the number of corner points of each outline (wound,
// filler, film, required border). Processor time of this process, so that a busy machine blurs it
// less; the median of 25 paints, none of them the first.
#include <QApplication>
#include <QImage>
#include <QKeyEvent>
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <functional>
#include <memory>
#include <vector>

#include "app/desktop/canvas/plan_view.h"
#include "tests/support/sample_plan.h"

namespace drapewright {
namespace {

double median_ms(const std::function<void(int)>& step) {
  std::vector<double> times;
  for (int i = 0; i < 26; ++i) {
    const std::clock_t start = std::clock();
    step(i);
    if (i > 0) times.push_back(1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  std::ranges::nth_element(times, times.begin() + 12);
  return times[12];
}

void press(desktop::PlanView& view, Qt::Key key) {
  QKeyEvent event(QEvent::KeyPress, key, Qt::NoModifier);
  QApplication::sendEvent(&view, &event);
}

void bench(int points) {
  const support::SamplePlan sample = support::dense_plan(points);
  const auto value = std::make_shared<wound::Case>(sample.value);
  const auto plan = std::make_shared<dressing::Plan>(sample.plan);
  desktop::PlanView view;
  view.resize(1000, 700);
  view.show();
  view.show_plan(value, plan);
  QApplication::processEvents();
  QImage picture(view.size(), QImage::Format_ARGB32_Premultiplied);
  const double still = median_ms([&](int) { view.render(&picture); });
  const double pan = median_ms([&](int i) {
    press(view, i % 2 ? Qt::Key_Left : Qt::Key_Right);
    view.render(&picture);
  });
  const double zoom = median_ms([&](int i) {
    i % 8 < 4 ? view.zoom_in() : view.zoom_out();
    view.render(&picture);
  });
  const double change = median_ms([&](int) {
    view.show_plan(value, plan);
    view.render(&picture);
  });
  std::printf("%6d points: still %6.2f ms, pan %6.2f ms, zoom %6.2f ms, new plan %6.2f ms\n",
              points, still, pan, zoom, change);
}

}  // namespace
}  // namespace drapewright

int main(int argc, char* argv[]) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication program(argc, argv);
  for (const int points : {50, 500, 5000, 20000}) drapewright::bench(points);
}
