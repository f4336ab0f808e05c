// Numbers as they are typed: a decimal comma is a decimal comma, and what is not clear is refused.
#include <gtest/gtest.h>

#include <QApplication>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>
#include <stdexcept>

#include "app/desktop/fields/number_field.h"
#include "app/desktop/fields/read_number.h"
#include "app/desktop/fields/wrapped_label.h"

namespace drapewright::desktop {
namespace {

NumberField::Range border_range() { return {.minimum = 0, .maximum = 20, .unit = "cm"}; }

void show_and_enter(NumberField& field) {
  field.show();
  if (!QTest::qWaitForWindowExposed(&field)) throw std::runtime_error("the field stays hidden");
  field.activateWindow();
  field.setFocus();
  field.selectAll();
}

/// A field that is shown and has 5 in it.
struct FieldTest : testing::Test {
  FieldTest() : field(border_range()) {
    field.show_number(5);
    show_and_enter(field);
  }
  void leave() { QTest::keyClick(&field, Qt::Key_Return); }

  NumberField field;
};

TEST(ReadNumber, TakesPointAndCommaAlike) {
  EXPECT_EQ(read_number("5.2").value, 5.2);
  EXPECT_EQ(read_number("5,2").value, 5.2);
  EXPECT_EQ(read_number(" 0,30 ").value, 0.3);
  EXPECT_EQ(read_number(",5").value, 0.5);
  EXPECT_EQ(read_number("-1,25").value, -1.25);
  EXPECT_EQ(read_number("\u2212"
                        "2")
                .value,
            -2);
  EXPECT_EQ(read_number("0,125").value, 0.125);
}

TEST(ReadNumber, RefusesWhatCanBeReadTwoWays) {
  for (const char* text : {"1,250", "12,500", "1.250,5", "1,250.5", "1,2,3"}) {
    EXPECT_FALSE(read_number(text).value) << text;
    EXPECT_FALSE(read_number(text).doubt.isEmpty()) << text;
  }
}

TEST(ReadNumber, RefusesWords) {
  for (const char* text : {"52 mm", "five", "5 2", "nan", "inf", "1e3", "0x10", "5.2.1"}) {
    EXPECT_FALSE(read_number(text).value) << text;
  }
  EXPECT_TRUE(read_number("  ").doubt.isEmpty());
}

TEST_F(FieldTest, DecimalCommaNeverBecomesTenTimesAsMuch) {
  const QSignalSpy entered(&field, &NumberField::entered);
  QTest::keyClicks(&field, "5,2");
  for (const auto& signal : entered) {
    EXPECT_LE(*signal.front().value<std::optional<double>>(), 5.2);
  }
  leave();
  EXPECT_EQ(field.number(), 5.2);
  EXPECT_EQ(field.text(), "5.2 cm");
}

TEST_F(FieldTest, OutOfBoundsBringsBackTheValueFromBefore) {
  const QSignalSpy refused(&field, &NumberField::refused);
  QTest::keyClicks(&field, "25");
  leave();
  EXPECT_EQ(field.number(), 5);
  ASSERT_EQ(refused.count(), 1);
  EXPECT_TRUE(refused.front().front().toString().contains("0 to 20 cm"));
}

TEST_F(FieldTest, AnotherUnitIsNotCutOff) {
  const QSignalSpy refused(&field, &NumberField::refused);
  QTest::keyClicks(&field, "12 mm");
  leave();
  EXPECT_EQ(field.number(), 5) << "12 mm must not become 12 cm";
  EXPECT_EQ(refused.count(), 1);
}

TEST_F(FieldTest, ItsOwnUnitMayBeTyped) {
  QTest::keyClicks(&field, "4 cm");
  leave();
  EXPECT_EQ(field.number(), 4);
}

TEST_F(FieldTest, EmptyIsRefusedUnlessOptional) {
  QTest::keyClick(&field, Qt::Key_Delete);
  leave();
  EXPECT_EQ(field.number(), 5);

  NumberField fluid({.minimum = 0,
                     .maximum = 5000,
                     .decimals = 0,
                     .unit = "mL/day",
                     .optional = true,
                     .when_empty = "not measured"});
  EXPECT_FALSE(fluid.number());
  fluid.show_number(0);
  EXPECT_EQ(fluid.number(), 0) << "nought measured is not the same as not measured";
  fluid.show_number({});
  EXPECT_FALSE(fluid.number());
}

TEST_F(FieldTest, ExcludedBoundIsRefused) {
  NumberField thickness({.minimum = 0, .maximum = 10, .minimum_excluded = true, .unit = "cm"});
  thickness.show_number(3);
  show_and_enter(thickness);
  QTest::keyClicks(&thickness, "0");
  QTest::keyClick(&thickness, Qt::Key_Return);
  EXPECT_EQ(thickness.number(), 3);
}

TEST_F(FieldTest, ShowingAValueWithMoreDigitsRoundsNothing) {
  field.show_number(0.3125);
  EXPECT_EQ(field.number(), 0.3125);
  EXPECT_EQ(field.text(), "0.3125 cm");
}

TEST_F(FieldTest, WheelChangesNothingWithoutTheFocus) {
  NumberField other(border_range());
  other.show_number(5);
  show_and_enter(other);
  QWheelEvent wheel({5, 5}, other.mapToGlobal(QPointF(5, 5)), {}, {0, 120}, Qt::NoButton, {},
                    Qt::NoScrollPhase, false);
  other.clearFocus();
  QApplication::sendEvent(&other, &wheel);
  EXPECT_EQ(other.number(), 5);
}

// What was narrow and high is wide and low again.
TEST(WrappedLabel, IsAsHighAsItsWords) {
  WrappedLabel label;
  label.resize(100, 30);
  label.show();
  label.show_text("The heel bears weight in bed and on foot. Blood flow is often poor here.");
  const int narrow = label.height();
  label.resize(600, label.height());
  QCoreApplication::processEvents();
  EXPECT_LT(label.height(), narrow);
  EXPECT_LE(label.height(), 2 * label.fontMetrics().lineSpacing());
}

}  // namespace
}  // namespace drapewright::desktop
