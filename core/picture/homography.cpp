#include "core/picture/homography.h"

namespace drapewright::picture {

using geometry::Point;

Homography Homography::of_unit_square(const std::array<Point, 4>& corners) {
  const auto& [a, b, c, d] = corners;
  const Point excess = a - b + c - d;  // zero for a parallelogram: no perspective
  const double area = cross(b - c, d - c);
  const double g = cross(excess, d - c) / area;
  const double h = cross(b - c, excess) / area;
  return Homography({b.x - a.x + g * b.x, d.x - a.x + h * d.x, a.x,  //
                     b.y - a.y + g * b.y, d.y - a.y + h * d.y, a.y,  //
                     g, h, 1});
}

double Homography::w(Point p) const { return m_[6] * p.x + m_[7] * p.y + m_[8]; }

std::optional<Point> Homography::at(Point p) const {
  const double depth = w(p);
  if (!(depth > 0)) return std::nullopt;
  return Point{(m_[0] * p.x + m_[1] * p.y + m_[2]) / depth,
               (m_[3] * p.x + m_[4] * p.y + m_[5]) / depth};
}

Point Homography::step(Point p, Point step) const {
  const Point here = *at(p);
  const double dw = m_[6] * step.x + m_[7] * step.y;
  const double depth = w(p);
  return {(m_[0] * step.x + m_[1] * step.y - here.x * dw) / depth,
          (m_[3] * step.x + m_[4] * step.y - here.y * dw) / depth};
}

Homography Homography::inverse() const {
  const auto& m = m_;
  Matrix out = {m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
                m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
                m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]};
  // Divided by the determinant and not left at any scale: that keeps w's sign.
  const double determinant = m[0] * out[0] + m[1] * out[3] + m[2] * out[6];
  for (double& value : out) value /= determinant;
  return Homography(out);
}

Homography operator*(const Homography& a, const Homography& b) {
  Homography::Matrix out{};
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t column = 0; column < 3; ++column) {
      for (std::size_t k = 0; k < 3; ++k) {
        out[3 * row + column] += a.m_[3 * row + k] * b.m_[3 * k + column];
      }
    }
  }
  return Homography(out);
}

}  // namespace drapewright::picture
