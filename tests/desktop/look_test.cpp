// What a user must be able to see, reach and hear: WCAG 2.2 AA contrast and target sizes, names for
// a screen reader, and a window that fits a small screen.
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QTabWidget>
#include <QTest>
#include <set>

#include "app/desktop/theme/palette.h"
#include "app/desktop/theme/style.h"
#include "app/desktop/window/help.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using desktop::contrast_ratio;

constexpr double text_contrast = 4.5;  // WCAG 2.2, 1.4.3
constexpr double mark_contrast = 3;    // WCAG 2.2, 1.4.11
constexpr int least_target_px = 24;    // WCAG 2.2, 2.5.8

// On white: #767676 passes 4.5 (4.542), #777777 fails (4.478). Calculated from WCAG's formula.
TEST(Contrast, FollowsWcagFormula) {
  EXPECT_NEAR(contrast_ratio(QColor("#767676"), Qt::white), 4.542, 5e-4);
  EXPECT_NEAR(contrast_ratio(QColor("#777777"), Qt::white), 4.478, 5e-4);
  EXPECT_NEAR(contrast_ratio(Qt::black, Qt::white), 21, 1e-9);
}

struct PaletteTest : testing::TestWithParam<bool> {
  QPalette palette = GetParam() ? desktop::dark_palette() : desktop::light_palette();

  void expect_contrast(QPalette::ColorRole ink, QPalette::ColorRole ground, double least,
                       QPalette::ColorGroup group = QPalette::Active) const {
    EXPECT_GE(contrast_ratio(palette.color(group, ink), palette.color(group, ground)), least)
        << "role " << ink << " on role " << ground;
  }
};

TEST_P(PaletteTest, TextIsReadable) {
  for (const auto group : {QPalette::Active, QPalette::Inactive, QPalette::Disabled}) {
    expect_contrast(QPalette::WindowText, QPalette::Window, text_contrast, group);
    expect_contrast(QPalette::Text, QPalette::Base, text_contrast, group);
    expect_contrast(QPalette::Text, QPalette::AlternateBase, text_contrast, group);
    expect_contrast(QPalette::ButtonText, QPalette::Button, text_contrast, group);
    expect_contrast(QPalette::HighlightedText, QPalette::Highlight, text_contrast, group);
    expect_contrast(QPalette::PlaceholderText, QPalette::Base, text_contrast, group);
    expect_contrast(QPalette::PlaceholderText, QPalette::Window, text_contrast, group);
    expect_contrast(QPalette::Link, QPalette::Base, text_contrast, group);
    expect_contrast(QPalette::ToolTipText, QPalette::ToolTipBase, text_contrast, group);
  }
}

TEST_P(PaletteTest, InksAreReadable) {
  const auto inks = desktop::inks(palette);
  for (const auto ground : {QPalette::Window, QPalette::Base, QPalette::AlternateBase}) {
    for (const QColor& ink : {inks.stop, inks.warning, inks.note, inks.muted}) {
      EXPECT_GE(contrast_ratio(ink, palette.color(ground)), text_contrast)
          << ink.name().toStdString() << " on role " << ground;
    }
    EXPECT_GE(contrast_ratio(inks.outline, palette.color(ground)), mark_contrast) << ground;
    EXPECT_GE(contrast_ratio(palette.color(QPalette::Highlight), palette.color(ground)),
              mark_contrast)
        << "the focus mark";
  }
}

INSTANTIATE_TEST_SUITE_P(Both, PaletteTest, testing::Bool(),
                         [](const auto& of) { return of.param ? "Dark" : "Light"; });

/// Every widget of ours that takes the focus; Qt's own inner parts are reached through them.
std::vector<QWidget*> focusable(QWidget& window) {
  std::vector<QWidget*> all;
  for (auto* widget : window.findChildren<QWidget*>()) {
    const bool inner = widget->objectName().startsWith("qt_") ||
                       qobject_cast<QAbstractSpinBox*>(widget->parentWidget()) != nullptr;
    if (widget->focusPolicy() != Qt::NoFocus && !inner) all.push_back(widget);
  }
  return all;
}

std::string described(const QWidget& widget) {
  return std::string(widget.metaObject()->className()) + " " + widget.objectName().toStdString();
}

TEST(Reach, EveryControlHasANameForTheScreenReader) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  const auto all = focusable(driver.window());
  EXPECT_GT(all.size(), 40U);
  for (QWidget* widget : all) {
    auto* reader = QAccessible::queryAccessibleInterface(widget);
    ASSERT_NE(reader, nullptr) << described(*widget);
    EXPECT_FALSE(reader->text(QAccessible::Name).isEmpty()) << described(*widget);
  }
}

TEST(Reach, TargetsAreLargeEnough) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  auto* tabs = driver.window().findChild<QTabWidget*>();
  for (int tab = 0; tab < tabs->count(); ++tab) {
    tabs->setCurrentIndex(tab);
    QTest::qWait(20);
    for (QWidget* widget : focusable(driver.window())) {
      if (!widget->isVisible()) continue;
      EXPECT_GE(widget->height(), least_target_px) << described(*widget);
      EXPECT_GE(widget->width(), least_target_px) << described(*widget);
    }
  }
}

TEST(Reach, TheKeyboardReachesEveryPane) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  std::set<QWidget*> reached;
  for (int i = 0; i < 120; ++i) {
    QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : &driver.window(),
                    Qt::Key_Tab);
    reached.insert(QApplication::focusWidget());
  }
  for (const char* name : {"label", "shapes", "length_cm", "findings", "measures", "materials"}) {
    EXPECT_TRUE(reached.contains(driver.window().findChild<QWidget*>(name))) << name;
  }
}

/// The parts that would be cut off at the side.
void expect_no_cut(QWidget& window) {
  for (auto* area : window.findChildren<QScrollArea*>()) {
    if (area->isVisible()) {
      EXPECT_LE(area->widget()->minimumSizeHint().width(), area->viewport()->width())
          << area->accessibleName().toStdString();
    }
  }
}

TEST(Fit, SmallScreenNeedsNoScrollingSideways) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  EXPECT_LE(driver.window().minimumSizeHint().width(), 1366);
  EXPECT_LE(driver.window().minimumSizeHint().height(), 768);
  driver.window().resize(1366, 768);
  QTest::qWait(50);
  EXPECT_EQ(driver.window().width(), 1366);
  auto* tabs = driver.window().findChild<QTabWidget*>();
  for (int tab = 0; tab < tabs->count(); ++tab) {
    tabs->setCurrentIndex(tab);
    QTest::qWait(20);
    expect_no_cut(driver.window());
  }
}

TEST(Fit, TextOfTwiceTheSizeFitsALargeScreen) {
  auto& program = *static_cast<QApplication*>(QApplication::instance());
  desktop::set_text_size(program, 200);
  {
    WindowDriver driver;
    driver.draw_ellipse("8", "5");
    driver.window().resize(1920, 1080);
    QTest::qWait(50);
    EXPECT_LE(driver.window().width(), 1920);
    expect_no_cut(driver.window());
  }
  desktop::set_text_size(program, 100);
}

TEST(Fit, StandingSentenceIsShown) {
  WindowDriver driver;
  bool seen = false;
  for (const auto* label : driver.window().findChildren<QLabel*>()) {
    seen = seen || (label->isVisible() && label->text() == desktop::standing_sentence());
  }
  EXPECT_TRUE(seen);
}

}  // namespace
}  // namespace drapewright::desktop_test
