#include "core/forecast/convolution.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <complex>
#include <limits>
#include <numbers>
#include <numeric>

namespace drapewright::forecast {
namespace {

using Complex = std::complex<double>;

/// Where the shorter one has fewer terms, multiplying term by term is as fast.
constexpr std::size_t least_terms = 160;
/// Rounding of a transform, as a multiple of its own unit and of the number of its stages.
constexpr double noise_factor = 2;

double norm_of(const std::vector<double>& values) {
  return std::sqrt(std::inner_product(values.begin(), values.end(), values.begin(), 0.0));
}

/// What std::complex multiplies, without its look for infinities.
Complex times(const Complex& a, const Complex& b) {
  return {a.real() * b.real() - a.imag() * b.imag(), a.real() * b.imag() + a.imag() * b.real()};
}

void reverse_bits(std::vector<Complex>& values) {
  for (std::size_t i = 1, j = 0; i < values.size(); ++i) {
    std::size_t bit = values.size() >> 1;
    for (; (j & bit) != 0; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) std::swap(values[i], values[j]);
  }
}

/// turns[half + i] is e to the power of - i pi i / half, for every half that is a power of two:
/// what each stage of a transform needs lies side by side, and serves transforms of all sizes.
const std::vector<Complex>& turns_up_to(std::size_t size) {
  thread_local std::vector<Complex> turns{0.0};
  for (std::size_t half = turns.size(); half < size; half *= 2) {
    for (std::size_t i = 0; i < half; ++i) {
      const double share = static_cast<double>(i) / static_cast<double>(half);
      turns.push_back(std::polar(1.0, -std::numbers::pi * share));
    }
  }
  return turns;
}

/// The discrete Fourier transform in place (Cooley, Tukey, Math Comput 1965;19:297), not scaled.
/// @pre the size is a power of two
void transform(std::vector<Complex>& values) {
  const std::size_t size = values.size();
  const auto& turns = turns_up_to(size);
  reverse_bits(values);
  for (std::size_t half = 1; half < size; half *= 2) {
    const Complex* const turn = turns.data() + half;
    for (std::size_t block = 0; block < size; block += 2 * half) {
      Complex* const low = values.data() + block;
      Complex* const high = low + half;
      for (std::size_t i = 0; i < half; ++i) {
        const Complex turned = times(high[i], turn[i]);
        high[i] = low[i] - turned;
        low[i] += turned;
      }
    }
  }
}

/// Both at once: the square of a + i b has 2 a b as its imaginary part.
std::vector<double> convolved_by_spectrum(const std::vector<double>& a,
                                          const std::vector<double>& b) {
  const std::size_t count = a.size() + b.size() - 1;
  const std::size_t size = std::bit_ceil(count);
  const double norm_a = norm_of(a), norm_b = norm_of(b);
  const double scale = norm_a / norm_b;  // alike in size, neither drowns in the other's rounding
  std::vector<Complex> values(size);
  for (std::size_t i = 0; i < a.size(); ++i) values[i].real(a[i]);
  for (std::size_t i = 0; i < b.size(); ++i) values[i].imag(scale * b[i]);
  transform(values);
  // The transform of the conjugate is the inverse's conjugate.
  for (Complex& value : values) value = std::conj(times(value, value));
  transform(values);
  const double stages = std::log2(static_cast<double>(size));
  const double noise =
      noise_factor * std::numeric_limits<double>::epsilon() * stages * norm_a * norm_b;
  std::vector<double> sums(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double sum = -values[i].imag() / (2 * scale * static_cast<double>(size));
    sums[i] = sum > noise ? sum : 0;
  }
  return sums;
}

}  // namespace

std::vector<double> convolved_by_terms(const std::vector<double>& a, const std::vector<double>& b) {
  const auto& shorter = a.size() < b.size() ? a : b;
  const auto& longer = a.size() < b.size() ? b : a;
  std::vector<double> sums(shorter.size() + longer.size() - 1, 0.0);
  for (std::size_t i = 0; i < shorter.size(); ++i) {
    const double chance = shorter[i];
    if (chance == 0) continue;
    double* const row = sums.data() + i;
    for (std::size_t j = 0; j < longer.size(); ++j) row[j] += chance * longer[j];
  }
  return sums;
}

std::vector<double> convolved(const std::vector<double>& a, const std::vector<double>& b) {
  return std::min(a.size(), b.size()) < least_terms ? convolved_by_terms(a, b)
                                                    : convolved_by_spectrum(a, b);
}

}  // namespace drapewright::forecast
