#include "app/desktop/photo/edge_tool.h"

#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/edge_finder.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/wording/spoken.h"
#include "core/tracing/trace.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

/// Finer only takes longer: a pixel of it is a fraction of a millimetre.
constexpr int most_px = 900;
constexpr double edge_tolerance_cm = 0.05;  ///< takes the steps of pixels away

QPoint pixel_at(QPointF share, QSize size) {
  return {static_cast<int>(share.x() * size.width()), static_cast<int>(share.y() * size.height())};
}

}  // namespace

EdgeTool::EdgeTool(TracingDesk& desk, PhotoDesk& photo)
    : ChainTool(desk, Tool::edge), photo_(photo) {}

EdgeTool::~EdgeTool() { worker_.cancel(); }

QPointF EdgeTool::share_of(Point cm) const {
  const PhotoPlace& place = *photo_.place();
  return {(cm.x - place.low().x) / (place.high().x - place.low().x),
          (place.high().y - cm.y) / (place.high().y - place.low().y)};
}

Point EdgeTool::to_cm(QPoint pixel) const {
  const PhotoPlace& place = *photo_.place();
  const QSize size = finder_->size();
  return {place.low().x + (pixel.x() + 0.5) / size.width() * (place.high().x - place.low().x),
          place.high().y - (pixel.y() + 0.5) / size.height() * (place.high().y - place.low().y)};
}

void EdgeTool::look_from(Point cm) {
  ready_ = false;
  desk().say(spoken("Looking for the edge\u2026"));
  const QImage image = photo_.place()->image();
  const bool same = finder_ != nullptr && finder_of_ == image.cacheKey();
  worker_.request([this, image, share = share_of(cm),
                   known = same ? finder_ : nullptr](const Progress&) -> Worker::Delivery {
    const auto finder = known ? known
                              : std::make_shared<EdgeFinder>(
                                    image.scaled(QSize(most_px, most_px).boundedTo(image.size()),
                                                 Qt::KeepAspectRatio, Qt::SmoothTransformation));
    finder->start_at(pixel_at(share, finder->size()));
    return [this, finder, of = image.cacheKey()] {
      finder_ = finder;
      finder_of_ = of;
      ready_ = true;
      desk().say(how_to());
      view().update();
    };
  });
}

Ring EdgeTool::way_between(Point from, Point to) const {
  Ring way{from};
  if (ready_) {
    const QPoint end = pixel_at(share_of(to), finder_->size());
    for (const QPoint& pixel : finder_->path_to(end)) way.push_back(to_cm(pixel));
  }
  way.push_back(to);
  return way;
}

void EdgeTool::point_put() {
  if (!photo_.is_measured()) {
    take_points();
    return desk().say(spoken("Open a photograph and give it a scale first."));
  }
  if (points().size() >= 2) {
    ways_.push_back(way_between(points()[points().size() - 2], points().back()));
    if (points().back() == points().front()) return finish();
  }
  look_from(points().back());
}

void EdgeTool::finish() {
  if (points().size() < 3) {
    give_up();
    return desk().say(spoken("An outline takes three clicks or more."));
  }
  Ring line;
  for (const Ring& way : ways_) line.insert(line.end(), way.begin(), way.end());
  if (!(points().back() == points().front())) {
    const Ring last = way_between(points().back(), points().front());
    line.insert(line.end(), last.begin(), last.end());
  }
  give_up();
  desk().offer(tracing::smoothed(line, tracing::Ends::joined, edge_tolerance_cm), spoken("edge"));
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
  paint_line(painter, way_between(points().back(), pen()), false);
  painter.setPen(QPen(view().palette().color(QPalette::WindowText), 2));
  painter.setBrush(view().palette().color(QPalette::Base));
  for (const Point& p : points()) painter.drawEllipse(view().to_pixels(p), 4, 4);
}

QStringList EdgeTool::words() const {
  if (points().empty()) return {};
  return {is_looking() ? spoken("Looking for the edge\u2026")
                       : spoken("Follows contrast: check every stretch.")};
}

}  // namespace drapewright::desktop
