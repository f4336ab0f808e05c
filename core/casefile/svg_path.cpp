#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>
#include <utility>

#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/casefile/outline_formats.h"

namespace drapewright::casefile {
namespace {

using geometry::pi;
using geometry::Point;
using geometry::Ring;

/// A file of curves must not fill the memory; real traces have some thousand points.
constexpr std::size_t most_points = 500'000;
constexpr double most_chords = 1000;

/// Path data as SVG 1.1, section 8.3, defines it.
class SvgPath {
 public:
  SvgPath(TextCursor data, double cm_per_unit)
      : in_(std::move(data)), flatness_(tolerance::offset_cm / cm_per_unit), scale_(cm_per_unit) {}

  std::vector<Ring> read() {
    for (in_.skip_blanks(); !in_.at_end(); in_.skip_blanks()) step();
    end_ring();
    return std::move(rings_);
  }

 private:
  void step() {
    if (std::isalpha(static_cast<unsigned char>(in_.peek())) != 0) {
      command_ = in_.peek();
      check_command();
      in_.advance();
    } else if (command_ == 0 || is('Z')) {
      in_.fail(command_ == 0 ? say("path data that begins with M") : say("a command, such as M"));
    }
    carry_out();
    in_.skip_blanks();
    if (in_.peek() == ',') in_.advance();
    before_ = command_;
    if (is('M')) command_ = command_ == 'M' ? 'L' : 'l';
  }

  void check_command() const {
    const bool known =
        std::string_view("MZLHVCSQTA")
            .find(static_cast<char>(std::toupper(static_cast<unsigned char>(command_)))) !=
        std::string_view::npos;
    if (!known) in_.fail(say("a command of path data: M, L, H, V, C, S, Q, T, A or Z"));
    if (before_ == 0 && !is('M')) in_.fail(say("path data that begins with M"));
  }

  bool is(char command) const { return (command_ & ~0x20) == command; }
  bool was(char a, char b) const { return (before_ & ~0x20) == a || (before_ & ~0x20) == b; }
  bool relative() const { return (command_ & 0x20) != 0; }

  double number() {
    in_.skip_blanks();
    if (in_.peek() == ',') in_.advance();
    return in_.number();
  }
  Point point() {
    const double x = number(), y = number();
    return relative() ? at_ + Point{x, y} : Point{x, y};
  }

  void carry_out() {
    if (is('M')) {
      const Point to = point();
      end_ring();
      start_ = to;
      line_to(to);
    } else if (is('Z')) {
      end_ring();
      at_ = start_;
    } else if (is('L')) {
      line_to(point());
    } else if (is('H')) {
      line_to({number() + (relative() ? at_.x : 0), at_.y});
    } else if (is('V')) {
      line_to({at_.x, number() + (relative() ? at_.y : 0)});
    } else if (is('A')) {
      arc();
    } else {
      curve();
    }
  }

  void curve() {
    if (is('C') || is('S')) {
      const Point first = is('C') ? point() : mirrored(was('C', 'S'));
      const Point second = point(), to = point();
      cubic(first, second, to);
      control_ = second;
      return;
    }
    const Point middle = is('Q') ? point() : mirrored(was('Q', 'T'));
    const Point to = point();
    cubic(at_ + (2.0 / 3) * (middle - at_), to + (2.0 / 3) * (middle - to), to);
    control_ = middle;
  }
  Point mirrored(bool continues) const { return continues ? at_ + (at_ - control_) : at_; }

  /// Equal steps of the parameter: a chord lies within max |second derivative| / (8 n^2) of it.
  void cubic(Point first, Point second, Point to) {
    const Point from = at_;
    const double bend =
        6 * std::max(norm(from - 2 * first + second), norm(first - 2 * second + to));
    const double n = chords(std::sqrt(bend / (8 * flatness_)));
    for (double i = 1; i < n; ++i) {
      const double t = i / n, s = 1 - t;
      line_to(s * s * s * from + 3 * s * s * t * first + 3 * s * t * t * second + t * t * t * to);
    }
    line_to(to);
  }

  double chords(double wanted) const {
    if (!(wanted <= most_chords))
      in_.fail(say("a curve too large for a wound"), say("one below 100 cm"));
    return std::max(1.0, std::ceil(wanted));
  }

  bool flag() {
    in_.skip_blanks();
    if (in_.peek() == ',') in_.advance();
    in_.skip_blanks();
    const char found = in_.peek();
    if (found != '0' && found != '1') in_.fail(say("a flag of the arc, 0 or 1"));
    in_.advance();
    return found == '1';
  }

  /// From end points to centre as in SVG 1.1, appendix F.6.5; radii too small grow (F.6.6).
  void arc() {
    double rx = std::fabs(number()), ry = std::fabs(number());
    const double turn = geometry::radians(number());
    const bool large = flag(), sweep = flag();
    const Point from = at_, to = point();
    if (from == to) return;
    if (rx == 0 || ry == 0) return line_to(to);
    const auto turned = [](Point p, double by) {
      return Point{std::cos(by) * p.x - std::sin(by) * p.y,
                   std::sin(by) * p.x + std::cos(by) * p.y};
    };
    const Point half = turned(0.5 * (from - to), -turn);
    const double short_by = std::hypot(half.x / rx, half.y / ry);
    if (short_by > 1) {
      rx *= short_by;
      ry *= short_by;
    }
    const Point h{half.x / rx, half.y / ry};  // on the unit circle from here on
    const double length = norm(h);
    const double lift = std::sqrt(std::max(0.0, 1 - length * length)) / length;
    const Point c = (large == sweep ? -1.0 : 1.0) * lift * Point{h.y, -h.x};
    const double begin = std::atan2(h.y - c.y, h.x - c.x);
    double way = std::atan2(-h.y - c.y, -h.x - c.x) - begin;
    if (sweep && way < 0) way += 2 * pi;
    if (!sweep && way > 0) way -= 2 * pi;
    const Point middle = 0.5 * (from + to) + turned({rx * c.x, ry * c.y}, turn);
    // The second derivative by angle is no longer than the larger radius.
    const double n = chords(std::fabs(way) * std::sqrt(std::max(rx, ry) / (8 * flatness_)));
    for (double i = 1; i < n; ++i) {
      const double angle = begin + way * i / n;
      line_to(middle + turned({rx * std::cos(angle), ry * std::sin(angle)}, turn));
    }
    line_to(to);
  }

  void line_to(Point to) {
    // After Z a new part begins where the last one did.
    if (ring_.empty() && !is('M')) ring_.push_back(in_cm(start_));
    at_ = to;
    ring_.push_back(in_cm(to));
    if (++points_ > most_points)
      in_.fail(say("more points than an outline has"), say("a single outline"));
  }
  Point in_cm(Point p) const { return {scale_ * p.x, -scale_ * p.y}; }

  void end_ring() {
    Ring ring = opened(std::exchange(ring_, {}));
    if (ring.size() >= 3) {
      rings_.push_back(std::move(ring));
    } else if (ring.size() == 2) {
      in_.fail(say("a part of the path with two points"), say("three corner points or more"));
    }
  }

  TextCursor in_;
  double flatness_;  ///< in units of the file
  double scale_;
  char command_ = 0;
  char before_ = 0;  ///< the command that was carried out last
  Point at_, start_, control_;
  Ring ring_;
  std::vector<Ring> rings_;
  std::size_t points_ = 0;
};

}  // namespace

std::vector<Ring> rings_of_path(TextCursor data, double cm_per_unit) {
  return SvgPath(std::move(data), cm_per_unit).read();
}

}  // namespace drapewright::casefile
