// Templates as they come out of the printer: measured on pictures of the PDF, and read from SVG.
#include "core/report/template_pages.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QPrinter>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "app/printing/on_printer.h"
#include "app/printing/pdf.h"
#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/report/svg.h"
#include "tests/printing/poppler.h"
#include "tests/printing/svg_shapes.h"
#include "tests/support/places.h"

namespace drapewright::printing {
namespace {

using geometry::Point;
using report::Document;
using report::LayerKind;
using report::Paper;
using report::TemplatePart;

/// What a template may be off by.
constexpr double exact_mm = 0.1;

struct Planned {
  explicit Planned(const std::string& demo)
      : value(casefile::read_case(support::project_folder() + "/demo_cases/" + demo + ".json")),
        plan(dressing::plan_dressing(value)) {}
  wound::Case value;
  dressing::Plan plan;

  Document templates(report::TemplatePageOptions options) const {
    options.page.today = "2031-03-02";
    return report::template_pages(value, plan, options);
  }
};

// The check bars.

constexpr int fine_dpi = 508;
constexpr double dots_per_mm = 20;

const report::Stroke& longest_stroke(const report::Drawing& page, LayerKind kind, bool level) {
  const auto layer = std::ranges::find(page.layers, kind, &report::DrawnLayer::kind);
  const auto length = [&](const report::Stroke& stroke) {
    const Point way = stroke.points.back() - stroke.points.front();
    return std::fabs(level ? way.x : way.y);
  };
  return *std::ranges::max_element(layer->strokes, {}, length);
}

/// The middles of dark runs along a row or a column of a picture, in mm.
std::vector<double> dark_places(const QImage& picture, double at_mm, double from_mm, double to_mm,
                                bool level) {
  std::vector<double> middles;
  std::optional<int> start;
  const int line = static_cast<int>(std::lround(at_mm * dots_per_mm));
  for (int i = static_cast<int>(from_mm * dots_per_mm); i < static_cast<int>(to_mm * dots_per_mm);
       ++i) {
    const int x = level ? i : line, y = level ? line : i;
    const bool dark = picture.valid(x, y) && qGray(picture.pixel(x, y)) < 128;
    if (dark && !start) start = i;
    if (!dark && start) {
      middles.push_back(0.5 * (*start + i) / dots_per_mm);
      start.reset();
    }
  }
  return middles;
}

/// How long the bar is on the picture: from the middle of one end's tick to that of the other, cut
/// where the ticks stand alone, beside the bar itself.
double measured_bar(const QImage& picture, const report::Drawing& page, bool level) {
  const report::Stroke& bar = longest_stroke(page, LayerKind::check_bar, level);
  const Point from = bar.points.front();
  constexpr double beside_mm = -1.7, around_mm = 1.2;
  const double start = level ? from.x : from.y;
  const auto ticks = dark_places(picture, (level ? from.y : from.x) + beside_mm, start - around_mm,
                                 start + 101 + around_mm, level);
  EXPECT_EQ(ticks.size(), 2u);
  return ticks.size() == 2 ? ticks[1] - ticks[0] : 0;
}

TEST(CheckBars, MeasureAHundredMillimetresOnBothPapers) {
  const Planned planned("plain-heel");
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const Document document = planned.templates({.page = {paper, {}}});
    const QByteArray pdf = to_pdf(document);
    const QImage picture = drawn_by_poppler(pdf, 1, fine_dpi);
    for (const bool level : {true, false}) {
      const double measured = measured_bar(picture, document.pages[0], level);
      RecordProperty(std::string(report::name_of(paper)) + (level ? " across" : " down"),
                     std::to_string(measured));
      EXPECT_NEAR(measured, 100, exact_mm);
    }
  }
}

// A printer that prints 99.2 mm for 100 is given a page that is longer by as much.
TEST(CheckBars, AreStretchedAgainstThePrintersFault) {
  const Planned planned("plain-heel");
  const Document document = planned.templates({.printer = {99.2, 100.8}});
  const QImage picture = drawn_by_poppler(to_pdf(document), 1, fine_dpi);
  EXPECT_NEAR(measured_bar(picture, document.pages[0], true) * 0.992, 100, exact_mm);
  EXPECT_NEAR(measured_bar(picture, document.pages[0], false) * 1.008, 100, exact_mm);
}

// What a printer gets from the window, instead of a file of ours: the same length.
TEST(CheckBars, MeasureTheSameThroughAPrinter) {
  const Planned planned("plain-heel");
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const Document document = planned.templates({.page = {paper, {}}});
    const QTemporaryDir folder;
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(folder.filePath("printed.pdf"));
    ASSERT_TRUE(print(document, printer));
    QFile file(folder.filePath("printed.pdf"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QImage picture = drawn_by_poppler(file.readAll(), 1, fine_dpi);
    for (const bool level : {true, false}) {
      EXPECT_NEAR(measured_bar(picture, document.pages[0], level), 100, exact_mm);
    }
  }
}

// Every line of the page model is where the PDF shows it.
TEST(TemplatePdf, ShowsEveryCutLineInItsPlace) {
  const Planned planned("plain-heel");
  const Document document = planned.templates({});
  const QImage picture = drawn_by_poppler(to_pdf(document), 1, fine_dpi);
  const auto& page = document.pages[0];
  const auto layer = std::ranges::find(page.layers, LayerKind::cut_line, &report::DrawnLayer::kind);
  const auto dark_near = [&](Point mm) {
    const int reach = static_cast<int>(exact_mm * dots_per_mm);
    const int x = static_cast<int>(mm.x * dots_per_mm), y = static_cast<int>(mm.y * dots_per_mm);
    for (int dy = -reach; dy <= reach; ++dy) {
      for (int dx = -reach; dx <= reach; ++dx) {
        if (qGray(picture.pixel(x + dx, y + dy)) < 128) return true;
      }
    }
    return false;
  };
  int seen = 0;
  for (const report::Stroke& stroke : layer->strokes) {
    for (const Point p : stroke.points) {
      EXPECT_TRUE(dark_near(p)) << p.x << ", " << p.y;
      ++seen;
    }
  }
  EXPECT_GT(seen, 100);
}

TEST(TemplatePdf, CarriesTitleLanguageDateAndRealText) {
  const Planned planned("plain-heel");
  const Document document = planned.templates({});
  const QByteArray pdf = to_pdf(document);
  EXPECT_EQ(pdf, to_pdf(document)) << "the same pages, the same bytes";
  EXPECT_TRUE(pdf.contains("/Lang (en)"));
  EXPECT_TRUE(pdf.contains("/PrintScaling /None"));
  const QString info = info_by_poppler(pdf);
  EXPECT_TRUE(info.contains(QString::fromStdString(document.title))) << info.toStdString();
  EXPECT_TRUE(info.contains("Sun Mar  2")) << info.toStdString();
  EXPECT_TRUE(info.contains("2031"));
  const QString text = text_by_poppler(pdf);
  for (const char* words : {"Both bars must measure 100.0 mm", "Film 1 of 1", "Piece 1 of 1",
                            "the prescriber, local policy and the device's instructions decide"}) {
    EXPECT_TRUE(text.contains(words)) << words << " not in:\n" << text.toStdString();
  }
  Document undated = document;
  undated.date.clear();
  EXPECT_FALSE(to_pdf(undated).contains("CreationDate"));
}

// Outlines.

double distance_to(Point p, const SvgChain& chain) {
  double least = 1e9;
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    const Point way = chain[i + 1] - chain[i];
    const double length2 = dot(way, way);
    const double share = length2 > 0 ? std::clamp(dot(p - chain[i], way) / length2, 0.0, 1.0) : 0;
    least = std::min(least, distance(p, chain[i] + share * way));
  }
  return least;
}

double distance_to(Point p, const std::vector<SvgChain>& chains) {
  double least = 1e9;
  for (const SvgChain& chain : chains) least = std::min(least, distance_to(p, chain));
  return least;
}

/// Points along the chains, close together: between corners a line may be off as well.
std::vector<Point> along(const std::vector<SvgChain>& chains) {
  std::vector<Point> points;
  for (const SvgChain& chain : chains) {
    for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
      const int steps = 1 + static_cast<int>(distance(chain[i], chain[i + 1]));
      for (int k = 0; k <= steps; ++k) {
        points.push_back(chain[i] + (1.0 * k / steps) * (chain[i + 1] - chain[i]));
      }
    }
  }
  return points;
}

/// The greatest distance of any point of either from the other.
double hausdorff_mm(const std::vector<SvgChain>& a, const std::vector<SvgChain>& b) {
  double greatest = 0;
  for (const Point p : along(a)) greatest = std::max(greatest, distance_to(p, b));
  for (const Point p : along(b)) greatest = std::max(greatest, distance_to(p, a));
  return greatest;
}

/// What the plan says, in mm with y down; mirrored where asked.
std::vector<SvgChain> expected(const geometry::Region& region, bool mirror = false) {
  std::vector<SvgChain> chains;
  const auto add = [&](const geometry::Ring& ring) {
    SvgChain chain;
    for (const Point p : ring) chain.push_back({(mirror ? -10 : 10) * p.x, -10 * p.y});
    chain.push_back(chain.front());
    chains.push_back(std::move(chain));
  };
  for (const geometry::Polygon& polygon : region) {
    add(polygon.outer);
    std::ranges::for_each(polygon.holes, add);
  }
  return chains;
}

Point corner_of(const std::vector<SvgChain>& chains) {
  const std::vector<Point> points = along(chains);
  return geometry::bounding_box(points).low;
}

void move(std::vector<SvgChain>& chains, Point by) {
  for (SvgChain& chain : chains) {
    for (Point& p : chain) p = p + by;
  }
}

/// Where marks stand on a page, by their number. A mark is two lines and a ring.
std::map<std::string, Point> marks_of(const SvgShapes& page) {
  std::map<std::string, Point> marks;
  const auto found = page.chains.find("registration");
  if (found == page.chains.end()) return marks;
  for (std::size_t i = 0; i + 2 < found->second.size(); i += 3) {
    const SvgChain& level = found->second[i];
    const Point at = 0.5 * (level.front() + level.back());
    const auto nearest = std::ranges::min_element(
        page.words, {}, [&](const auto& word) { return word.bold ? distance(word.at, at) : 1e9; });
    EXPECT_LT(distance(nearest->at, at), 8);
    EXPECT_TRUE(marks.emplace(nearest->text, at).second) << "mark " << nearest->text << " twice";
  }
  return marks;
}

/// Lays the pages on one another by their marks, as one does at the table.
std::vector<SvgChain> joined(const Document& document, const std::string& group) {
  std::vector<SvgChain> whole;
  std::map<std::string, Point> placed;
  std::vector<SvgShapes> waiting;
  for (const auto& page : document.pages) waiting.push_back(read_svg(report::to_svg(page)));
  bool first = true;
  while (!waiting.empty()) {
    const auto next = std::ranges::find_if(waiting, [&](const SvgShapes& page) {
      return first || std::ranges::any_of(marks_of(page), [&](const auto& mark) {
               return placed.contains(mark.first);
             });
    });
    if (next == waiting.end()) {
      ADD_FAILURE() << "a tile has no mark in common with the others";
      return whole;
    }
    const auto marks = marks_of(*next);
    std::optional<Point> by;
    if (first) by = Point{};
    for (const auto& [number, at] : marks) {
      if (!placed.contains(number)) continue;
      const Point shift = placed.at(number) - at;
      EXPECT_LT(distance(by.value_or(shift), shift), 0.01) << "mark " << number;
      by = shift;
    }
    for (const auto& [number, at] : marks) placed.emplace(number, at + *by);
    std::vector<SvgChain> chains = next->chains[group];
    move(chains, *by);
    std::ranges::move(chains, std::back_inserter(whole));
    waiting.erase(next);
    first = false;
  }
  return whole;
}

void expect_same(std::vector<SvgChain> printed, const std::vector<SvgChain>& planned,
                 const std::string& name) {
  ASSERT_FALSE(printed.empty()) << name;
  move(printed, corner_of(planned) - corner_of(printed));
  const double off_mm = hausdorff_mm(printed, planned);
  testing::Test::RecordProperty("hausdorff_mm " + name, std::to_string(off_mm));
  EXPECT_LT(off_mm, exact_mm) << name;
}

/// Film and aperture: what is cut.
std::vector<SvgChain> film_of(const dressing::Drape& drape, bool mirror) {
  auto chains = expected(drape.outline_cm, mirror);
  if (drape.port.centre_cm) {
    const auto ring = geometry::circle(drape.port.aperture_diameter_cm, *drape.port.centre_cm);
    std::ranges::move(expected({{ring, {}}}, mirror), std::back_inserter(chains));
  }
  return chains;
}

TEST(FilmTemplate, TilesJoinedAtTheirMarksGiveThePlan) {
  std::size_t tiles = 0;
  for (const char* demo : {"plain-heel", "larger-than-any-sheet", "film-cut-short"}) {
    const Planned planned(demo);
    for (const bool mirror : {false, true}) {
      for (const Paper paper : {Paper::a4, Paper::letter}) {
        const Document document = planned.templates(
            {.page = {paper, {}}, .parts = {TemplatePart::film}, .mirror_film = mirror});
        tiles += document.pages.size();
        expect_same(joined(document, "cut-line"), film_of(planned.plan.drapes[0], mirror),
                    std::string(demo) + " " + std::string(report::name_of(paper)) +
                        (mirror ? " mirrored" : ""));
      }
    }
  }
  EXPECT_GT(tiles, 30u);
}

// The flank has a full border of 5 cm: the trim line is the outer of the two.
TEST(FilmTemplate, BordersTwoLinesAreACentimetreApart) {
  const Planned planned("larger-than-any-sheet");
  const Document document = planned.templates({.parts = {TemplatePart::film}});
  const auto outer = joined(document, "usual-border"), inner = joined(document, "least-border");
  for (const Point p : along(inner)) EXPECT_NEAR(distance_to(p, outer), 10, 0.2);
  auto trim = joined(document, "cut-line");
  for (const Point p : along(outer)) EXPECT_LT(distance_to(p, trim), 0.1) << "trimmed at 5 cm";
}

double area_mm2(const SvgChain& closed) {
  geometry::Ring ring(closed.begin(), closed.end() - 1);
  return geometry::area(ring);
}

// Read from the SVG: each piece on its own page or its tiles.
TEST(FillerTemplate, IsThePlansPieceInShapeAndArea) {
  int compared = 0;
  for (const char* demo : {"plain-heel", "island-of-skin", "traced-150-points"}) {
    const Planned planned(demo);
    for (const auto& layer : planned.plan.fill.layers) {
      for (const auto& piece : layer.pieces) {
        dressing::Plan alone = planned.plan;
        alone.cut_layout.clear();
        alone.fill.layers = {layer};
        alone.fill.layers[0].pieces = {piece};
        const Document document =
            report::template_pages(planned.value, alone, {.parts = {TemplatePart::filler}});
        const auto printed = joined(document, "cut-line");
        expect_same(printed, expected({piece}), demo);
        if (document.pages.size() > 1) continue;
        double area = area_mm2(printed[0]);
        for (std::size_t i = 1; i < printed.size(); ++i) area -= area_mm2(printed[i]);
        EXPECT_NEAR(area / (100 * geometry::area(piece)), 1, 1e-3) << demo;
        ++compared;
      }
    }
  }
  EXPECT_GT(compared, 2);
}

}  // namespace
}  // namespace drapewright::printing
