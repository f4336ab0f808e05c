#include "core/base/progress.h"

#include <gtest/gtest.h>

namespace drapewright {
namespace {

TEST(Progress, ReportsUntilItIsStopped) {
  std::stop_source stop;
  double last = 0;
  const Progress progress(stop.get_token(), [&](double fraction) { last = fraction; });
  progress.at(0.25);
  EXPECT_EQ(last, 0.25);
  stop.request_stop();
  EXPECT_THROW(progress.at(0.5), Cancelled);
  EXPECT_EQ(last, 0.25);
}

TEST(Progress, MayBeNobodys) { EXPECT_NO_THROW(Progress().at(1)); }

}  // namespace
}  // namespace drapewright
