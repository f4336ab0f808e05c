#include "app/desktop/photo/edge_tool.h"

#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/edge_finder.h"
#include "app/desktop/photo/photo_desk.h"
#include "core/tracing/trace.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

/// Finer only takes longer: a pixel of it is a fraction of a millimetre.
constexpr int most_px = 900;
constexpr double edge_tolerance_cm = 0.05;  ///< takes the steps of pixels away

}  // namespace

EdgeTool::EdgeTool(TracingDesk& desk, PhotoDesk& photo)
    : ChainTool(desk, Tool::edge), photo_(photo) {}

EdgeTool::~EdgeTool() { worker_.cancel(); }

QPoint EdgeTool::to_pixel(Point cm) const {
  const PhotoPlace& place = *photo_.place();
  const QSize size = finder_->size();
  const double x = (cm.x - place.low().x) / (place.high().x - place.low().x) * size.width();
  const double y = (place.high().y - cm.y) / (place.high().y - place.low().y) * size.height();
  return {static_cast<int>(x), static_cast<int>(y)};
}

Point EdgeTool::to_cm(QPoint pixel) const {
  const PhotoPlace& place = *photo_.place();
  const QSize size = finder_->size();
  return {place.low().x + (pixel.x() + 0.5) / size.width() * (place.high().x - place.low().x),
          place.high().y - (pixel.y() + 0.5) / size.height() * (place.high().y - place.low().y)};
}

void EdgeTool::look_from(Point cm) {
  ready_ = false;
  desk().say("Looking for the edge\u2026");
  const QImage image = photo_.place()->image();
  const bool same = finder_ != nullptr && finder_of_ == image.cacheKey();
  finder_of_ = image.cacheKey();
  const PhotoPlace& place = *photo_.place();
  const double share_x = (cm.x - place.low().x) / (place.high().x - place.low().x);
  const double share_y = (place.high().y - cm.y) / (place.high().y - place.low().y);
  worker_.request([this, image, share_x, share_y,
                   known = same ? finder_ : nullptr](const Progress&) -> Worker::Delivery {
    const auto finder = known ? known
                              : std::make_shared<EdgeFinder>(
                                    image.scaled(QSize(most_px, most_px).boundedTo(image.size()),
                                                 Qt::KeepAspectRatio, Qt::SmoothTransformation));
    finder->start_at({static_cast<int>(share_x * finder->size().width()),
                      static_cast<int>(share_y * finder->size().height())});
    return [this, finder] {
      finder_ = finder;
      ready_ = true;
      desk().say(how_to());
      view().update();
    };
  });
}

Ring EdgeTool::way_to(Point cm) const {
  Ring way{points().back()};
  if (ready_) {
    for (const QPoint& pixel : finder_->path_to(to_pixel(cm))) way.push_back(to_cm(pixel));
  }
  way.push_back(cm);
  return way;
}

void EdgeTool::point_put() {
  if (!photo_.is_measured()) {
    take_points();
    return desk().say("Open a photograph and give it a scale first.");
  }
  if (points().size() >= 2) {
    Ring way{points()[points().size() - 2]};
    if (ready_) {
      for (const QPoint& pixel : finder_->path_to(to_pixel(points().back()))) {
        way.push_back(to_cm(pixel));
      }
    }
    way.push_back(points().back());
    ways_.push_back(std::move(way));
    if (points().back() == points().front()) return finish();
  }
  look_from(points().back());
}

void EdgeTool::finish() {
  if (points().size() < 3) {
    give_up();
    return desk().say("An outline takes three clicks or more.");
  }
  Ring line;
  for (const Ring& way : ways_) line.insert(line.end(), way.begin(), way.end());
  if (!(points().back() == points().front())) {
    const Ring last = way_to(points().front());
    line.insert(line.end(), last.begin(), last.end());
  }
  give_up();
  desk().offer(tracing::smoothed(line, tracing::Ends::joined, edge_tolerance_cm), "edge");
}

bool EdgeTool::take_back() {
  if (!ChainTool::take_back()) return false;
  if (!ways_.empty()) ways_.pop_back();
  if (!points().empty()) look_from(points().back());
  return true;
}

void EdgeTool::give_up() {
  worker_.cancel();
  ready_ = false;
  ways_.clear();
  ChainTool::give_up();
}

void EdgeTool::paint_drawing(QPainter& painter) const {
  for (const Ring& way : ways_) paint_line(painter, way, false);
  if (points().empty() || photo_.place() == nullptr) return;
  paint_line(painter, way_to(pen()), false);
  painter.setPen(QPen(view().palette().color(QPalette::WindowText), 2));
  painter.setBrush(view().palette().color(QPalette::Base));
  for (const Point& p : points()) painter.drawEllipse(view().to_pixels(p), 4, 4);
}

QStringList EdgeTool::words() const {
  if (points().empty()) return {};
  return {is_looking() ? "Looking for the edge\u2026" : "Follows contrast: check every stretch."};
}

}  // namespace drapewright::desktop
