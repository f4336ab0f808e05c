#include "core/forecast/quantity.h"

#include <algorithm>
#include <cmath>
#include <queue>

#include "core/forecast/convolution.h"

namespace drapewright::forecast {
namespace {

/// Chances are compared with levels that people type: 0.9 must not miss by a rounding error.
constexpr double rounding = 1e-12;

}  // namespace

Quantity Quantity::exactly(int count) { return Quantity(count, {1.0}); }

Quantity::Quantity(int least, std::vector<double> chances)
    : least_(least), chances_(std::move(chances)) {
  trim();
}

void Quantity::trim() {
  double total = 0;
  for (const double chance : chances_) total += chance;
  for (double& chance : chances_) chance /= total;
  std::size_t first = 0, last = chances_.size() - 1;
  double below = 0, above = 0;
  while (first < last && below + chances_[first] < tail) below += chances_[first++];
  while (last > first && above + chances_[last] < tail) above += chances_[last--];
  chances_.resize(last + 1);
  chances_.erase(chances_.begin(), chances_.begin() + static_cast<std::ptrdiff_t>(first));
  chances_.front() += below;
  chances_.back() += above;
  least_ += static_cast<int>(first);
}

double Quantity::chance_of(int count) const {
  return count < least() || count > most() ? 0.0
                                           : chances_[static_cast<std::size_t>(count - least_)];
}

double Quantity::chance_of_at_most(int count) const {
  if (count >= most()) return 1;
  double chance = 0;
  for (int n = least_; n <= count; ++n) chance += chances_[static_cast<std::size_t>(n - least_)];
  return chance;
}

double Quantity::mean() const {
  double above_least = 0;
  for (std::size_t i = 0; i < chances_.size(); ++i) {
    above_least += static_cast<double>(i) * chances_[i];
  }
  return least_ + above_least;
}

double Quantity::variance() const {
  const double centre = mean() - least_;
  double sum_of_squares = 0;
  for (std::size_t i = 0; i < chances_.size(); ++i) {
    const double off = static_cast<double>(i) - centre;
    sum_of_squares += off * off * chances_[i];
  }
  return sum_of_squares;
}

double Quantity::spread() const { return std::sqrt(variance()); }

int Quantity::enough_for(double level) const {
  double chance = 0;
  for (std::size_t i = 0; i < chances_.size(); ++i) {
    chance += chances_[i];
    if (chance >= level - rounding) return least_ + static_cast<int>(i);
  }
  return most();
}

double Quantity::expected_short(int available) const {
  double expected = 0;
  for (int n = std::max(available + 1, least_); n <= most(); ++n) {
    expected += static_cast<double>(n - available) * chance_of(n);
  }
  return expected;
}

Quantity Quantity::times(int factor) const {
  if (factor == 0) return {};
  if (factor == 1) return *this;
  const auto step = static_cast<std::size_t>(factor);
  std::vector<double> spaced((chances_.size() - 1) * step + 1, 0.0);
  for (std::size_t i = 0; i < chances_.size(); ++i) spaced[i * step] = chances_[i];
  return Quantity(least_ * factor, std::move(spaced));
}

Quantity sum(const Quantity& a, const Quantity& b) {
  return Quantity(a.least() + b.least(), convolved(a.chances(), b.chances()));
}

Quantity sum(std::vector<Quantity> parts) {
  const auto longer = [&](std::size_t a, std::size_t b) {
    const auto key = [&](std::size_t i) { return std::pair(parts[i].chances().size(), i); };
    return key(a) > key(b);
  };
  std::priority_queue<std::size_t, std::vector<std::size_t>, decltype(longer)> queue(longer);
  for (std::size_t i = 0; i < parts.size(); ++i) queue.push(i);
  if (queue.empty()) return {};
  while (queue.size() > 1) {
    const std::size_t a = queue.top();
    queue.pop();
    const std::size_t b = queue.top();
    queue.pop();
    parts[a] = sum(parts[a], parts[b]);
    queue.push(a);
  }
  return parts[queue.top()];
}

Quantity repeated(const Quantity& one, int count) {
  Quantity total, doubled = one;
  for (int left = count; left > 0; left /= 2) {
    if (left % 2 == 1) total = sum(total, doubled);
    if (left > 1) doubled = sum(doubled, doubled);
  }
  return total;
}

void Mixture::add(double share, const Quantity& quantity, int more) {
  if (share <= 0) return;
  total_ += share;
  const auto end = static_cast<std::size_t>(quantity.most() + more) + 1;
  if (chances_.size() < end) chances_.resize(end, 0.0);
  double* const row = chances_.data() + quantity.least() + more;
  const auto& chances = quantity.chances();
  for (std::size_t i = 0; i < chances.size(); ++i) row[i] += share * chances[i];
}

Quantity Mixture::taken() const { return Quantity(0, chances_); }

}  // namespace drapewright::forecast
