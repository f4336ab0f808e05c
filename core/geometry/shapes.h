#pragma once

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// A polygon of `corners` points in place of an ellipse of the given axes, with exactly the
/// ellipse's area (its points lie outside the ellipse by a few hundred-thousandths of its size).
/// The first axis lies along `angle_deg`.
/// @throws std::invalid_argument unless the axes are positive and finite and corners >= 8
Ring ellipse(double length_cm, double width_cm, Point centre = {}, double angle_deg = 0,
             int corners = 360);
/// Same errors as `ellipse`.
Ring rectangle(double length_cm, double width_cm, Point centre = {}, double angle_deg = 0);
Ring circle(double diameter_cm, Point centre = {}, int corners = 360);

Point moved(Point p, Point by);
Ring moved(Ring ring, Point by);
Region moved(Region region, Point by);
Point turned(Point p, double angle_deg, Point about = {});
Ring turned(Ring ring, double angle_deg, Point about = {});
Region turned(Region region, double angle_deg, Point about = {});

}  // namespace drapewright::geometry
