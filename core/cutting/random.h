#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace drapewright::cutting {

/// A small generator whose numbers are the same on every machine (the standard library's
/// distributions are not). SplitMix64: Steele, Lea, Flood, "Fast splittable pseudorandom number
/// generators", OOPSLA 2014.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
  }
  /// In [0, 1).
  double unit() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }
  double between(double low, double high) { return low + (high - low) * unit(); }
  /// In [0, count). @pre count > 0
  int below(int count) { return static_cast<int>(unit() * count); }

  template <typename T>
  void shuffle(std::vector<T>& values) {
    for (std::size_t i = values.size(); i > 1; --i) {
      std::swap(values[i - 1], values[static_cast<std::size_t>(below(static_cast<int>(i)))]);
    }
  }

 private:
  std::uint64_t state_;
};

}  // namespace drapewright::cutting
