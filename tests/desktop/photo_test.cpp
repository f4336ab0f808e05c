// A photograph laid under the drawing, in the real window: what is kept of it, its scale by two
// points and by a square seen at a slant, and outlines traced over it. The pictures are drawn.
#include <gtest/gtest.h>

#include <QBuffer>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QTemporaryDir>
#include <QTest>
#include <QTransform>
#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/desktop/window/drawing_pane.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/picture/calibration.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double px_per_cm = 40;
constexpr int width_px = 1200, height_px = 900;

/// A place of the scene (cm, y up, middle of the picture) in a picture taken square on.
QPointF square_on(Point cm) {
  return {width_px / 2.0 + px_per_cm * cm.x, height_px / 2.0 - px_per_cm * cm.y};
}

/// The same picture seen at a slant.
QTransform slant() {
  QTransform result;
  QTransform::quadToQuad(QPolygonF({{0, 0}, {1200, 0}, {1200, 900}, {0, 900}}),
                         QPolygonF({{230, 120}, {1010, 60}, {1180, 860}, {60, 800}}), result);
  return result;
}

const Ring wound_outline = geometry::ellipse(8, 5, {3, -1}, 20, 90);
const Ring square = {{-9, 1}, {-4, 1}, {-4, 6}, {-9, 6}};  // 5 cm

QImage scene(const QTransform& camera) {
  QImage image(width_px, height_px, QImage::Format_RGB32);
  image.fill(QColor(230, 200, 180));
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setTransform(camera);
  const auto fill = [&](const Ring& ring, const QColor& colour) {
    QPolygonF polygon;
    for (const Point& p : ring) polygon << square_on(p);
    painter.setBrush(colour);
    painter.setPen(Qt::NoPen);
    painter.drawPolygon(polygon);
  };
  fill(wound_outline, QColor(140, 40, 40));
  fill(square, Qt::black);
  return image;
}

struct PhotoTest : testing::Test {
  desktop::PhotoDesk& photo() { return driver.window().drawing().photo(); }
  desktop::TracingDesk& desk() { return driver.window().drawing().desk(); }
  QString save(const QImage& image, const QString& name) {
    const QString path = folder.filePath(name);
    EXPECT_TRUE(image.save(path));
    return path;
  }
  void open(const QImage& image) {
    photo().open(save(image, "wound.png"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return photo().has_photo(); }, 5000));
  }
  void click(Point cm) {
    const QPointF at = view.to_pixels(cm);
    const auto send = [&](QEvent::Type type, Qt::MouseButton button, Qt::MouseButtons down) {
      QMouseEvent event(type, at, view.mapToGlobal(at), button, down, {});
      QApplication::sendEvent(&view, &event);
    };
    send(QEvent::MouseMove, Qt::NoButton, Qt::NoButton);
    send(QEvent::MouseButtonPress, Qt::LeftButton, Qt::LeftButton);
    send(QEvent::MouseButtonRelease, Qt::LeftButton, Qt::NoButton);
  }
  /// Where a pixel of the picture lies on the drawing now.
  Point place_of(QPointF pixel) {
    const auto& reference = driver.document().value().current().picture->reference;
    if (reference) return picture::Calibration(*reference).to_cm({pixel.x(), pixel.y()});
    const double cm_per_px = 20.0 / width_px;
    return {(pixel.x() - width_px / 2.0) * cm_per_px, (height_px / 2.0 - pixel.y()) * cm_per_px};
  }
  void set_length(const QString& cm) {
    driver.type_only("photo_length", cm);
    driver.click("photo_set_scale");
    QCoreApplication::processEvents();
  }
  Ring traced(const QTransform& camera) {
    desk().take_up(desktop::Tool::corners);
    view.fit();
    for (const Point& p : wound_outline) click(place_of(camera.map(square_on(p))));
    QTest::keyClick(&view, Qt::Key_Return);
    driver.settle();
    return driver.document().value().current().wounds.at(0).outline_cm;
  }

  WindowDriver driver;
  desktop::PlanView& view = driver.window().plan_view();
  QTemporaryDir folder;
};

TEST_F(PhotoTest, WithoutAScaleNothingIsMeasuredOrDrawn) {
  open(scene({}));
  EXPECT_FALSE(photo().is_measured());
  EXPECT_TRUE(driver.find<QLabel>("photo_words").text().contains("no scale"));
  desk().take_up(desktop::Tool::rectangle);
  for (const Point& p : {Point{-2, 0}, Point{2, 0}, Point{0, 1}}) click(p);
  EXPECT_FALSE(driver.document().has_wounds());
}

TEST_F(PhotoTest, EnterSetsTheScaleToo) {
  open(scene({}));
  click(place_of(square_on({-9, 1})));
  click(place_of(square_on({1, 1})));
  driver.type("photo_length", "10");
  QCoreApplication::processEvents();
  EXPECT_TRUE(photo().is_measured());
}

TEST_F(PhotoTest, TwoPointsOfKnownDistanceGiveTheScale) {
  open(scene({}));
  click(place_of(square_on({-9, 1})));
  click(place_of(square_on({-4, 1})));
  EXPECT_EQ(photo().asked(), desktop::PhotoDesk::Asked::length);
  set_length("5");
  ASSERT_TRUE(photo().is_measured());
  const Ring outline = traced({});
  EXPECT_NEAR(geometry::area(outline) / geometry::area(wound_outline), 1, 0.01);
  EXPECT_TRUE(driver.find<QLabel>("photo_words").text().contains("Clicks 1 pixel off"));
  driver.press(QKeySequence::Undo);
  driver.press(QKeySequence::Undo);
  EXPECT_FALSE(photo().is_measured()) << "the scale is a step of undo";
}

TEST_F(PhotoTest, ASquareTakesTheTiltOut) {
  const QTransform camera = slant();
  open(scene(camera));
  desk().take_up(desktop::Tool::scale_square);
  for (const std::size_t corner : {0U, 2U, 1U, 3U}) {
    click(place_of(camera.map(square_on(square[corner]))));
  }
  EXPECT_EQ(photo().asked(), desktop::PhotoDesk::Asked::side);
  set_length("5");
  ASSERT_TRUE(photo().is_measured());
  const Ring outline = traced(camera);
  EXPECT_NEAR(geometry::area(outline) / geometry::area(wound_outline), 1, 0.02);
  const auto length = geometry::greatest_length(outline);
  EXPECT_NEAR(geometry::distance(length.from, length.to), 8, 0.1);
}

TEST_F(PhotoTest, TheEdgeIsFollowedBetweenClicks) {
  open(scene({}));
  click(place_of(square_on({-9, 1})));
  click(place_of(square_on({-4, 1})));
  set_length("5");
  desk().take_up(desktop::Tool::edge);
  view.fit();
  for (std::size_t i = 0; i < wound_outline.size(); i += 9) {
    click(place_of(square_on(wound_outline[i])));
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return !driver.find<QLabel>("tool_words").text().contains("Looking"); }, 20000));
  }
  QTest::keyClick(&view, Qt::Key_Return);
  driver.settle();
  ASSERT_TRUE(driver.document().has_wounds());
  const Ring& outline = driver.document().value().current().wounds.at(0).outline_cm;
  EXPECT_NEAR(geometry::area(outline) / geometry::area(wound_outline), 1, 0.02);
  EXPECT_GT(outline.size(), 14U) << "the line follows the edge between ten clicks";
}

TEST_F(PhotoTest, TheCaseKeepsPixelsAndNothingElse) {
  QImage image = scene({});
  image.setText("Description", "taken-at-home");
  open(image);
  const QString case_path = folder.filePath("case.drapewright.json");
  click(place_of(square_on({-9, 1})));
  click(place_of(square_on({-4, 1})));
  set_length("5");
  traced({});
  photo().keep_beside(case_path);
  driver.document().save_as(case_path);
  const QString file = QString::fromStdString(driver.document().value().current().picture->file);
  QFile kept(folder.filePath(file));
  ASSERT_TRUE(kept.open(QIODevice::ReadOnly)) << file.toStdString();
  EXPECT_FALSE(kept.readAll().contains("taken-at-home"));

  WindowDriver other;
  ASSERT_TRUE(other.open(case_path));
  EXPECT_TRUE(
      QTest::qWaitFor([&] { return other.window().drawing().photo().is_measured(); }, 5000));
  QFile::remove(folder.filePath(file));
  WindowDriver third;
  ASSERT_TRUE(third.open(case_path));
  EXPECT_TRUE(QTest::qWaitFor(
      [&] { return third.find<QLabel>("photo_words").text().contains("not beside the case"); },
      5000));
  EXPECT_TRUE(third.document().has_wounds()) << "the outlines stand without it";
}

TEST(Photograph, IsTurnedAsItsMetadataSaysAndKeepsNone) {
  const QTemporaryDir folder;
  const QString path = folder.filePath("turned.jpg");
  QByteArray jpeg;
  QBuffer buffer(&jpeg);
  buffer.open(QIODevice::WriteOnly);
  ASSERT_TRUE(scene({}).save(&buffer, "JPG"));
  // One entry after the start of image: orientation 6, a quarter turn to the right (Exif 2.3).
  jpeg.insert(2, QByteArray::fromHex("ffe10022457869660000"
                                     "49492a0008000000"
                                     "0100"
                                     "1201030001000000"
                                     "06000000"
                                     "00000000"));
  QFile raw(path);
  ASSERT_TRUE(raw.open(QIODevice::WriteOnly));
  raw.write(jpeg);
  raw.close();
  const desktop::Photograph photo = desktop::read_photograph(path);
  EXPECT_EQ(photo.image.size(), QSize(height_px, width_px));
  EXPECT_FALSE(photo.bytes.contains("Exif"));
  EXPECT_TRUE(photo.file.endsWith(".jpg"));
}

TEST(Photograph, ThatIsNoneIsRefusedByName) {
  const QTemporaryDir folder;
  QFile file(folder.filePath("notes.png"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("no picture");
  file.close();
  for (const QString& name : {QString("notes.png"), QString("gone.png")}) {
    try {
      desktop::read_photograph(folder.filePath(name));
      FAIL() << name.toStdString();
    } catch (const InputError& error) {
      EXPECT_NE(error.problem().find(name.toStdString()), std::string::npos);
    }
  }
}

}  // namespace
}  // namespace drapewright::desktop_test
