// The body site in the real window: what it asks for, and the girth of a limb.
#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QTest>
#include <algorithm>

#include "core/practice/body_sites.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

struct SiteTest : testing::Test {
  SiteTest() { driver.draw_ellipse("8", "5"); }

  void choose(const QString& id) {
    auto& places = driver.find<QComboBox>("body_site_id");
    places.setFocus();
    const int wanted = places.findData(id);
    ASSERT_GE(wanted, 0);
    const Qt::Key key = wanted < places.currentIndex() ? Qt::Key_Up : Qt::Key_Down;
    while (places.currentIndex() != wanted) QTest::keyClick(&places, key);
    driver.settle();
  }
  QString said(const QString& label) { return driver.find<QLabel>(label).text(); }
  bool is_girth_asked() { return driver.find<QWidget>("limb_girth_cm").isVisible(); }

  WindowDriver driver;
};

TEST_F(SiteTest, WordsAloneFindThePlace) {
  EXPECT_TRUE(said("clock_convention").contains("12 = head"));
  driver.type("body_site", "left heel");
  EXPECT_TRUE(driver.find<QComboBox>("body_site_id").currentText().contains("Heel"));
  EXPECT_TRUE(driver.document().value().body_site_id.empty()) << "nothing was chosen";
  EXPECT_TRUE(said("clock_convention").contains("12 = heel, 6 = toes"));
  EXPECT_TRUE(said("site_cautions").contains("Note: The heel bears weight"))
      << said("site_cautions").toStdString();
}

TEST_F(SiteTest, AChosenPlaceShowsItsCautions) {
  choose("sacrum");
  EXPECT_EQ(driver.document().value().body_site_id, "sacrum");
  const auto* site = practice::find_body_site("sacrum");
  EXPECT_EQ(said("site_cautions").count('\n') + 1, static_cast<int>(site->cautions.size()));
  EXPECT_EQ(driver.window().result().plan->body_site, "sacrum");
  EXPECT_FALSE(is_girth_asked());
  const auto& cautions = driver.find<QLabel>("site_cautions");
  EXPECT_GE(cautions.height(), cautions.heightForWidth(cautions.width())) << "lines are cut off";
  driver.press(QKeySequence::Undo);
  while (!driver.document().value().body_site_id.empty()) driver.press(QKeySequence::Undo);
  EXPECT_EQ(driver.find<QComboBox>("body_site_id").currentIndex(), 0);
}

TEST_F(SiteTest, APlaceOfANewerProgramIsKept) {
  driver.document().edit("test", {}, [](wound::Case& value) { value.body_site_id = "of-later"; });
  driver.settle();
  EXPECT_EQ(driver.find<QComboBox>("body_site_id").currentText(), "not known here: of-later");
  EXPECT_EQ(driver.document().value().body_site_id, "of-later");
}

TEST_F(SiteTest, OnALimbItsGirthIsAskedForAndUsed) {
  const auto warned = [&] {
    const auto& findings = driver.window().result().plan->findings;
    return std::ranges::find(findings, "film-round-limb", &dressing::Finding::code) !=
           findings.end();
  };
  choose("lower-leg");
  ASSERT_TRUE(is_girth_asked());
  driver.type("limb_girth_cm", "60");
  EXPECT_EQ(driver.document().value().limb_girth_cm, 60);
  EXPECT_FALSE(warned());
  driver.type("limb_girth_cm", "15");
  EXPECT_TRUE(warned()) << "the film of 18 cm may close round it";
  driver.type("limb_girth_cm", "301");
  EXPECT_EQ(driver.document().value().limb_girth_cm, 15) << "out of bounds is refused";
  choose("back");
  EXPECT_TRUE(is_girth_asked()) << "a girth that is there is not hidden";
}

}  // namespace
}  // namespace drapewright::desktop_test
