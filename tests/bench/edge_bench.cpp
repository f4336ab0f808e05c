// How well the edge help follows drawn wounds of known shape: area error and mean distance from the
// true edge, under noise, blur, uneven light and glare. Clicks lie up to 0.05 cm off the edge.
#include <QGuiApplication>
#include <QPainter>
#include <QRadialGradient>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <random>

#include "app/desktop/photo/edge_finder.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/tracing/edge_place.h"
#include "core/tracing/trace.h"

namespace drapewright {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr int side_px = 800;
constexpr double px_per_cm = 50;
constexpr int clicks = 10;
constexpr double click_error_cm = 0.05;

QPointF to_px(Point cm) {
  return {side_px / 2.0 + px_per_cm * cm.x, side_px / 2.0 - px_per_cm * cm.y};
}
Point to_cm(QPoint px) {
  return {(px.x() + 0.5 - side_px / 2.0) / px_per_cm, (side_px / 2.0 - px.y() - 0.5) / px_per_cm};
}

Ring lobed(double radius, double depth, int lobes) {
  Ring ring;
  for (int i = 0; i < 240; ++i) {
    const double t = 2 * geometry::pi * i / 240;
    const double r = radius * (1 + depth * std::sin(lobes * t + 0.6));
    ring.push_back({r * std::cos(t), r * std::sin(t)});
  }
  return ring;
}

struct Shape {
  const char* name;
  Ring outline;
};

QImage drawn(const Ring& outline) {
  QImage image(side_px, side_px, QImage::Format_RGB32);
  image.fill(QColor(226, 190, 170));
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  QPolygonF polygon;
  for (const Point& p : outline) polygon << to_px(p);
  painter.setPen(Qt::NoPen);
  painter.setBrush(QColor(150, 60, 60));
  painter.drawPolygon(polygon);
  return image;
}

void add_noise(QImage& image, double sigma) {
  std::mt19937 random(5);
  std::normal_distribution<double> noise(0, sigma);
  for (int y = 0; y < image.height(); ++y) {
    auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < image.width(); ++x) {
      const int by = static_cast<int>(noise(random));
      const auto with = [by](int value) { return std::clamp(value + by, 0, 255); };
      line[x] = qRgb(with(qRed(line[x])), with(qGreen(line[x])), with(qBlue(line[x])));
    }
  }
}

QImage blurred(const QImage& image, int factor) {
  return image.scaled(image.size() / factor, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
      .scaled(image.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
}

void add_uneven_light(QImage& image) {
  QPainter painter(&image);
  QLinearGradient shade(0, 0, side_px, side_px);
  shade.setColorAt(0, QColor(0, 0, 0, 0));
  shade.setColorAt(1, QColor(0, 0, 0, 150));
  painter.fillRect(image.rect(), shade);
}

/// Two white spots of 1.8 cm across, on the edge.
void add_glare(QImage& image, const Ring& truth) {
  QPainter painter(&image);
  for (const Point& at : {truth[37], truth[151]}) {
    QRadialGradient spot(to_px(at), 45);
    spot.setColorAt(0, QColor(255, 255, 255, 255));
    spot.setColorAt(1, QColor(255, 255, 255, 0));
    painter.fillRect(image.rect(), spot);
  }
}

struct Condition {
  const char* name;
  std::function<QImage(QImage, const Ring&)> spoil;
};

std::vector<Condition> conditions() {
  return {{"clean", [](QImage image, const Ring&) { return image; }},
          {"noise, sigma 15",
           [](QImage image, const Ring&) {
             add_noise(image, 15);
             return image;
           }},
          {"blur, 6 px", [](QImage image, const Ring&) { return blurred(image, 6); }},
          {"uneven light",
           [](QImage image, const Ring&) {
             add_uneven_light(image);
             return image;
           }},
          {"two glare spots",
           [](QImage image, const Ring& truth) {
             add_glare(image, truth);
             return image;
           }},
          {"all of these", [](QImage image, const Ring& truth) {
             add_uneven_light(image);
             add_glare(image, truth);
             image = blurred(image, 4);
             add_noise(image, 10);
             return image;
           }}};
}

Ring followed(const QImage& image, const Ring& truth) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> off(-click_error_cm, click_error_cm);
  desktop::EdgeFinder finder(image);
  std::vector<QPoint> places;
  for (int i = 0; i < clicks; ++i) {
    const Point p = truth[truth.size() * static_cast<std::size_t>(i) / clicks];
    places.push_back(to_px({p.x + off(random), p.y + off(random)}).toPoint());
  }
  Ring line;
  for (int i = 0; i < clicks; ++i) {
    finder.start_at(places[static_cast<std::size_t>(i)]);
    for (const QPoint& p : finder.path_to(places[static_cast<std::size_t>((i + 1) % clicks)])) {
      line.push_back(to_cm(p));
    }
  }
  return tracing::smoothed(line, tracing::Ends::joined, 0.05);
}

double mean_distance_mm(const Ring& found, const Ring& truth) {
  double sum = 0;
  for (const Point& p : found) sum += tracing::nearest_on_edge(truth, p).distance_cm;
  return 10 * sum / static_cast<double>(found.size());
}

}  // namespace

int run() {
  const Shape shapes[] = {{"ellipse 8 x 5 cm", geometry::ellipse(8, 5, {}, 20, 240)},
                          {"three lobes", lobed(3, 0.18, 3)},
                          {"seven lobes", lobed(3, 0.1, 7)}};
  std::puts("| picture | shape | area error | mean distance |\n|---|---|---|---|");
  for (const Condition& condition : conditions()) {
    for (const Shape& shape : shapes) {
      const Ring found =
          followed(condition.spoil(drawn(shape.outline), shape.outline), shape.outline);
      std::printf("| %s | %s | %+.1f %% | %.2f mm |\n", condition.name, shape.name,
                  100 * (geometry::area(found) / geometry::area(shape.outline) - 1),
                  mean_distance_mm(found, shape.outline));
    }
  }
  return 0;
}

}  // namespace drapewright

int main(int count, char** arguments) {
  QGuiApplication program(count, arguments);
  return drapewright::run();
}
