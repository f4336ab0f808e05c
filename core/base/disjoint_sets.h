#pragma once

#include <cstddef>
#include <numeric>
#include <vector>

namespace drapewright {

/// Which of n things belong together, when that is learnt pair by pair (union-find).
class DisjointSets {
 public:
  explicit DisjointSets(std::size_t size) : leader_(size) {
    std::iota(leader_.begin(), leader_.end(), std::size_t{0});
  }

  /// The member that stands for the set of i; the same for all of its members.
  std::size_t leader(std::size_t i) {
    while (leader_[i] != i) i = leader_[i] = leader_[leader_[i]];
    return i;
  }
  bool together(std::size_t i, std::size_t j) { return leader(i) == leader(j); }
  /// Joins the sets of i and j; the leader of i's stands for both.
  void join(std::size_t i, std::size_t j) { leader_[leader(j)] = leader(i); }

 private:
  std::vector<std::size_t> leader_;
};

}  // namespace drapewright
