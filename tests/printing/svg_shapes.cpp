#include "tests/printing/svg_shapes.h"

#include <gtest/gtest.h>

#include <QXmlStreamReader>

namespace drapewright::printing {

namespace {

/// "M1 2 L3 4 Z": moves, lines, and the way back.
SvgChain chain_of(const QString& path) {
  SvgChain chain;
  QStringList parts = path.split(' ', Qt::SkipEmptyParts);
  const bool is_closed = parts.removeAll("Z") > 0;
  for (qsizetype i = 0; i + 1 < parts.size(); i += 2) {
    QString x = parts[i];
    chain.push_back({x.remove('M').remove('L').toDouble(), parts[i + 1].toDouble()});
  }
  if (is_closed) chain.push_back(chain.front());
  return chain;
}

/// One unit of the view box is one mm.
void expect_millimetres(const QXmlStreamAttributes& attributes) {
  const QString width = attributes.value("width").toString();
  EXPECT_TRUE(width.endsWith("mm"));
  EXPECT_EQ(attributes.value("viewBox").toString().split(' ').value(2) + "mm", width);
}

}  // namespace

SvgShapes read_svg(const std::string& svg) {
  SvgShapes shapes;
  QXmlStreamReader xml(QString::fromStdString(svg));
  std::string group;
  while (!xml.atEnd()) {
    if (xml.readNext() != QXmlStreamReader::StartElement) continue;
    const auto attributes = xml.attributes();
    if (xml.name() == u"svg") expect_millimetres(attributes);
    if (xml.name() == u"g") group = attributes.value("id").toString().toStdString();
    if (xml.name() == u"path" && !group.empty()) {
      shapes.chains[group].push_back(chain_of(attributes.value("d").toString()));
    }
    if (xml.name() == u"text") {
      const geometry::Point at{attributes.value("x").toDouble(), attributes.value("y").toDouble()};
      const bool bold = attributes.value("font-weight") == u"bold";
      shapes.words.push_back({at, xml.readElementText().toStdString(), bold});
    }
  }
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  return shapes;
}

}  // namespace drapewright::printing
