// The SVG as another program reads it.
#include <gtest/gtest.h>

#include <QPointF>
#include <QSet>
#include <QXmlStreamReader>
#include <cmath>

#include "core/report/plan_drawing.h"
#include "core/report/svg.h"
#include "tests/support/sample_plan.h"

namespace drapewright::printing {
namespace {

QString svg_of(const support::SamplePlan& sample, const report::DrawingOptions& options = {}) {
  return QString::fromStdString(
      report::to_svg(report::draw_plan(sample.value, sample.plan, options)));
}

TEST(SvgReading, IsWellFormedAndSaysWhatItShows) {
  support::SamplePlan sample = support::crowded_plan();
  sample.value.label = "hip <left> & \"right\" \xC3\xA9\x01";
  QXmlStreamReader xml(svg_of(sample));
  QSet<QString> ids, words;
  QString title;
  int titles = 0, descriptions = 0;
  while (!xml.atEnd()) {
    if (xml.readNext() != QXmlStreamReader::StartElement) continue;
    if (xml.attributes().hasAttribute("id")) {
      const QString id = xml.attributes().value("id").toString();
      EXPECT_FALSE(ids.contains(id)) << id.toStdString();
      ids.insert(id);
    }
    if (xml.name() == u"title") {
      title = xml.readElementText();
      ++titles;
    } else if (xml.name() == u"desc") {
      EXPECT_FALSE(xml.readElementText().isEmpty());
      ++descriptions;
    } else if (xml.name() == u"text") {
      words.insert(xml.readElementText());
    }
  }
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  EXPECT_EQ(titles, 1);
  EXPECT_EQ(descriptions, 1);
  EXPECT_EQ(title, QString::fromUtf8("hip <left> & \"right\" \xC3\xA9, 2031-03-01"));
  EXPECT_TRUE(ids.contains("filler"));
  EXPECT_TRUE(ids.contains("filler-words"));
  EXPECT_TRUE(words.contains("border 2.37 cm"));
}

/// The corner points of a group's first path.
QList<QPointF> first_path(const QString& svg, const QString& id) {
  QXmlStreamReader xml(svg);
  bool in_group = false;
  while (!xml.atEnd()) {
    if (xml.readNext() != QXmlStreamReader::StartElement) continue;
    if (xml.name() == u"g") in_group = xml.attributes().value("id") == id;
    if (!in_group || xml.name() != u"path") continue;
    QList<QPointF> points;
    QStringList parts = xml.attributes().value("d").toString().split(' ', Qt::SkipEmptyParts);
    parts.removeAll("Z");
    for (qsizetype i = 0; i + 1 < parts.size(); i += 2) {
      QString x = parts[i];
      points << QPointF(x.remove('M').remove('L').toDouble(), parts[i + 1].toDouble());
    }
    return points;
  }
  return {};
}

TEST(SvgReading, LifeSizeIsExactInMillimetres) {
  const support::SamplePlan sample = support::sample_plan(8, 5, 0);
  const QList<QPointF> points = first_path(svg_of(sample, {.mm_per_cm = 10}), "wound");
  const auto& outline = sample.value.current().wounds[0].outline_cm;
  ASSERT_EQ(points.size(), static_cast<qsizetype>(outline.size()));
  // Lengths between corners, in mm, are ten times those in cm; figures have three decimals.
  for (qsizetype i = 1; i < points.size(); ++i) {
    const auto j = static_cast<std::size_t>(i);
    const QPointF way = points[i] - points[0];
    EXPECT_NEAR(std::hypot(way.x(), way.y()), 10 * geometry::distance(outline[0], outline[j]),
                2e-3);
  }
}

}  // namespace
}  // namespace drapewright::printing
