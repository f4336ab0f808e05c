#include "core/forecast/recorded.h"

#include <gtest/gtest.h>

#include "tests/unit/forecast/cases.h"

namespace drapewright::forecast {
namespace {

using tests::example;
using tests::patient;

TEST(RecordedUse, IsComparedWithTheIntervalOverTheSameDays) {
  RecordedUseCounter counter;
  counter.add(patient(example({"2026-02-20", "2026-02-22", "2026-02-24", "2026-02-26"})));
  counter.add(patient(example({"2026-02-22", "2026-02-25"})));
  const RecordedUse use = counter.counted();
  EXPECT_EQ(use.days, 6 + 3);
  EXPECT_EQ(use.recorded, 3 + 1);
  EXPECT_DOUBLE_EQ(use.planned, 2 + 1);
  EXPECT_NEAR(use.bias(), 1.0 / 3, 1e-12);
  ASSERT_EQ(use.items.size(), 3u);  // not what is worn out by time
  EXPECT_EQ(use.items[0].item, "Filler");
  EXPECT_EQ(use.items[0].recorded, 8);
  EXPECT_EQ(use.items[0].planned, 6);
}

TEST(RecordedUse, GivesTheRateThatWouldHaveBeenRight) {
  const RecordedUse use{.days = 70, .recorded = 28, .planned = 23};
  const ExtraRate rate = extra_rate_of(use);
  EXPECT_NEAR(rate.per_week, 0.5, 1e-12);
  // Poisson count 28: 95 % interval 18.61 to 40.47, from memory of published tables.
  EXPECT_NEAR(rate.high, (40.47 - 23) / 10, 0.002);
  EXPECT_EQ(rate.low, 0);
  EXPECT_EQ(extra_rate_of({.days = 70, .recorded = 3, .planned = 23}).per_week, 0);
}

TEST(RecordedUse, OfCasesWithoutASecondApplicationIsEmpty) {
  RecordedUseCounter counter;
  counter.add(patient(example({"2026-02-28"})));
  EXPECT_EQ(counter.counted().days, 0);
  EXPECT_TRUE(counter.counted().items.empty());
}

}  // namespace
}  // namespace drapewright::forecast
