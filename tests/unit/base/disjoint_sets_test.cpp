#include "core/base/disjoint_sets.h"

#include <gtest/gtest.h>

namespace drapewright {
namespace {

TEST(DisjointSets, JoinPairByPair) {
  DisjointSets sets(6);
  EXPECT_FALSE(sets.together(0, 1));
  sets.join(0, 1);
  sets.join(2, 3);
  EXPECT_TRUE(sets.together(1, 0));
  EXPECT_FALSE(sets.together(1, 3));
  sets.join(1, 3);
  EXPECT_TRUE(sets.together(0, 2));
  EXPECT_EQ(sets.leader(3), 0u) << "the first one's leader stands for both";
  EXPECT_FALSE(sets.together(4, 5));
}

TEST(DisjointSets, MayBeJoinedTwice) {
  DisjointSets sets(2);
  sets.join(0, 1);
  sets.join(1, 0);
  EXPECT_TRUE(sets.together(0, 1));
}

}  // namespace
}  // namespace drapewright
