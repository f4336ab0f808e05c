#pragma once

#include <cmath>
#include <vector>

namespace drapewright::geometry {

/// A point or a displacement in the drawing, in cm; y points up.
struct Point {
  double x = 0;
  double y = 0;
  friend bool operator==(const Point&, const Point&) = default;
};

inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
inline Point operator*(double s, Point a) { return {s * a.x, s * a.y}; }
inline double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }
/// z of the cross product; positive when b lies to the left of a.
inline double cross(Point a, Point b) { return a.x * b.y - a.y * b.x; }
inline double norm(Point a) { return std::hypot(a.x, a.y); }
inline double distance(Point a, Point b) { return norm(b - a); }

struct Segment {
  Point from;
  Point to;
  friend bool operator==(const Segment&, const Segment&) = default;
};

/// A closed chain of corner points; the first is not repeated at the end.
using Ring = std::vector<Point>;

/// A simple polygon with holes. Made by this room: outer counter-clockwise, holes clockwise.
struct Polygon {
  Ring outer;
  std::vector<Ring> holes;
  friend bool operator==(const Polygon&, const Polygon&) = default;
};

/// Polygons whose insides do not overlap: what an inset, a union or a trim leaves.
using Region = std::vector<Polygon>;

struct Circle {
  Point centre;
  double radius_cm = 0;
};

/// A rectangle at any angle. `angle_deg` is the direction of its longer side,
/// counter-clockwise from +x, in [0, 180).
struct Rectangle {
  Point centre;
  double length_cm = 0;  ///< the longer side
  double width_cm = 0;
  double angle_deg = 0;
};

inline constexpr double pi = 3.14159265358979323846;
inline double radians(double deg) { return deg * pi / 180; }
inline double degrees(double rad) { return rad * 180 / pi; }

}  // namespace drapewright::geometry
