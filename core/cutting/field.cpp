#include "core/cutting/field.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace drapewright::cutting {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

bool inside(const Box& box, Point p) {
  return p.x > box.low.x && p.x < box.high.x && p.y > box.low.y && p.y < box.high.y;
}

/// Narrows [low, high] to where p + t direction lies between `from` and `to` in one coordinate.
void clip(double p, double direction, double from, double to, double& low, double& high) {
  if (direction == 0) {
    if (p < from || p > to) high = -infinity;
    return;
  }
  const double a = (from - p) / direction, b = (to - p) / direction;
  low = std::max(low, std::min(a, b));
  high = std::min(high, std::max(a, b));
}

/// First and last crossing of a line with a convex cell.
struct Entry {
  double low;
  double high;
};
Entry cross_cell(const Crossing* all, NoFit::Range enter, NoFit::Range leave, double across) {
  double low = -infinity, high = infinity;
  for (int k = enter.first; k < enter.first + enter.count; ++k) {
    const double t = all[k].at + all[k].per * across;
    low = t > low ? t : low;
  }
  for (int k = leave.first; k < leave.first + leave.count; ++k) {
    const double t = all[k].at + all[k].per * across;
    high = t < high ? t : high;
  }
  return {low, high};
}

}  // namespace

void Field::reset(const Box& domain) {
  domain_ = domain;
  obstacles_.clear();
}

void Field::add(const NoFit& no_fit, Point at, double weight) {
  const Box box{no_fit.box.low + at, no_fit.box.high + at};
  if (box.low.x >= domain_.high.x || box.high.x <= domain_.low.x || box.low.y >= domain_.high.y ||
      box.high.y <= domain_.low.y) {
    return;
  }
  obstacles_.push_back({&no_fit, at, weight, box});
}

std::size_t Field::sides_to_look_at() const {
  std::size_t count = 4;
  for (const auto& obstacle : obstacles_) count += obstacle.no_fit->planes.size();
  return count;
}

double Field::depth(const Obstacle& obstacle, Point p) {
  const Point q = p - obstacle.at;
  double sum = 0;
  for (const auto& cell : obstacle.no_fit->cells) {
    if (inside(cell.box, q)) sum += obstacle.no_fit->depth(cell, q);
  }
  return sum;
}

double Field::pressure(Point p, double enough) const {
  double sum = 0;
  for (const auto& obstacle : obstacles_) {
    if (!inside(obstacle.box, p)) continue;
    sum += obstacle.weight * depth(obstacle, p);
    if (sum > enough) return sum;
  }
  return sum;
}

/// Joins it with those of the same obstacle, from `first` on, that it overlaps.
void Field::add_stretch(double low, double high, const Obstacle& obstacle, std::size_t first) {
  for (std::size_t k = first; k < stretches_.size();) {
    auto& other = stretches_[k];
    if (other.low < high - touch_cm && low < other.high - touch_cm) {
      low = std::min(low, other.low);
      high = std::max(high, other.high);
      other = stretches_.back();
      stretches_.pop_back();
    } else {
      ++k;
    }
  }
  stretches_.push_back({low, high, &obstacle});
}

void Field::collect_along(Axis axis, double across) {
  stretches_.clear();
  const bool x = axis == Axis::x;
  for (const auto& obstacle : obstacles_) {
    const Box& box = obstacle.box;
    if (x ? across <= box.low.y || across >= box.high.y
          : across <= box.low.x || across >= box.high.x) {
      continue;
    }
    const double q = across - (x ? obstacle.at.y : obstacle.at.x);
    const double shift = x ? obstacle.at.x : obstacle.at.y;
    const auto* crossings = obstacle.no_fit->crossings.data();
    const std::size_t first = stretches_.size();
    for (const auto& cell : obstacle.no_fit->cells) {
      if (x ? q <= cell.box.low.y || q >= cell.box.high.y
            : q <= cell.box.low.x || q >= cell.box.high.x) {
        continue;
      }
      const Entry entry = x ? cross_cell(crossings, cell.left, cell.right, q)
                            : cross_cell(crossings, cell.bottom, cell.top, q);
      if (entry.low < entry.high) {
        add_stretch(entry.low + shift, entry.high + shift, obstacle, first);
      }
    }
  }
}

void Field::sort_stretches() {
  std::sort(stretches_.begin(), stretches_.end(),
            [](const Stretch& a, const Stretch& b) { return a.low < b.low; });
}

bool Field::free_end(double low, double high, Random& random, double& end) const {
  int found = 0;
  auto offer = [&](double t) {
    if (random.below(++found) == 0) end = t;
  };
  double reached = low;
  for (const auto& stretch : stretches_) {
    if (stretch.high <= low) continue;
    if (stretch.low > high) break;
    if (stretch.low >= reached - touch_cm) {
      offer(reached);
      offer(std::clamp(stretch.low, low, high));
    }
    reached = std::max(reached, stretch.high);
  }
  if (reached <= high + touch_cm) {
    offer(std::min(reached, high));
    offer(high);
  }
  return found > 0;
}

double Field::pressure_at(std::size_t index, Point p, double t, double enough) const {
  double sum = 0;
  for (std::size_t k = 0; k < index; ++k) {
    const auto& stretch = stretches_[k];
    if (stretch.high <= t || stretch.low >= t) continue;
    sum += stretch.obstacle->weight * depth(*stretch.obstacle, p);
    if (sum >= enough) break;
  }
  return sum;
}

Field::Spot Field::best_along(Axis axis, Point p, double enough, Random& random) {
  const bool x = axis == Axis::x;
  const double low = x ? domain_.low.x : domain_.low.y;
  const double high = x ? domain_.high.x : domain_.high.y;
  auto at = [&](double t) { return x ? Point{t, p.y} : Point{p.x, t}; };
  collect_along(axis, x ? p.y : p.x);
  sort_stretches();
  if (double end = 0; free_end(low, high, random, end)) return {at(end), 0};
  Spot best{p, enough};
  auto consider = [&](std::size_t index, double t) {
    const double pressure = pressure_at(index, at(t), t, best.pressure);
    if (pressure < best.pressure) best = {at(t), pressure};
  };
  const std::size_t count = stretches_.size();
  consider(count, low);
  consider(count, high);
  std::size_t after = 0;  // the stretches from here on start behind the end in question
  for (std::size_t k = 0; k < count; ++k) {
    const auto& stretch = stretches_[k];
    if (stretch.low > low && stretch.low < high) consider(k, stretch.low);
    if (stretch.high <= low || stretch.high >= high) continue;
    for (after = k + 1; after < count && stretches_[after].low < stretch.high;) ++after;
    consider(after, stretch.high);
  }
  return best;
}

Field::Spot Field::descend(Point start, Random& random) {
  Spot spot{start, infinity};
  Axis axis = random.below(2) == 0 ? Axis::x : Axis::y;
  int stale = 0;
  for (int round = 0; round < 8 && stale < 2 && spot.pressure > 0; ++round) {
    const Spot next = best_along(axis, spot.at, spot.pressure, random);
    stale = next.pressure < spot.pressure - 1e-12 ? 0 : stale + 1;
    if (stale == 0) spot = next;
    axis = axis == Axis::x ? Axis::y : Axis::x;
  }
  return spot;
}

void Field::collect_sides() {
  const Point low = domain_.low, high = domain_.high;
  sides_ = {{low, {high.x - low.x, 0}},
            {{high.x, low.y}, {0, high.y - low.y}},
            {high, {low.x - high.x, 0}},
            {{low.x, high.y}, {0, low.y - high.y}}};
  for (const auto& obstacle : obstacles_) {
    for (const auto& cell : obstacle.no_fit->cells) {
      const HalfPlane* planes = obstacle.no_fit->planes.data() + cell.planes.first;
      corners_.clear();
      for (int k = 0; k < cell.planes.count; ++k) {
        const auto& a = planes[k == 0 ? cell.planes.count - 1 : k - 1];
        const auto& b = planes[k];
        const double det = a.nx * b.ny - a.ny * b.nx;
        if (std::abs(det) < 1e-12) continue;
        corners_.push_back(obstacle.at + Point{(a.reach * b.ny - b.reach * a.ny) / det,
                                               (a.nx * b.reach - b.nx * a.reach) / det});
      }
      for (std::size_t k = 0; k < corners_.size(); ++k) {
        sides_.push_back({corners_[k], corners_[(k + 1) % corners_.size()] - corners_[k]});
      }
    }
  }
}

void Field::sort_cells_into_grid() {
  placed_cells_.clear();
  boxes_.clear();
  for (const auto& obstacle : obstacles_) {
    for (const auto& cell : obstacle.no_fit->cells) {
      placed_cells_.push_back({&cell, &obstacle});
      boxes_.push_back({cell.box.low + obstacle.at, cell.box.high + obstacle.at});
    }
  }
  grid_.reset(domain_, boxes_);
  covering_ = placed_cells_.size();
}

/// Most sides of cells lie wholly inside another cell, and mostly inside the same one as the side
/// before: it is asked first.
/// @returns false where no part of the side between `low` and `high` is free
bool Field::collect_along(const Side& side, double low, double high, double slack) {
  stretches_.clear();
  const Point to = side.from + side.along;
  const Box near{{std::min(side.from.x, to.x) - touch_cm, std::min(side.from.y, to.y) - touch_cm},
                 {std::max(side.from.x, to.x) + touch_cm, std::max(side.from.y, to.y) + touch_cm}};
  const auto covered_by = [&](std::size_t index) {
    const auto& [cell, obstacle] = placed_cells_[index];
    add_stretch_in(*cell, *obstacle, side, near);
    return !stretches_.empty() && stretches_.back().low < low - slack &&
           stretches_.back().high > high + slack;
  };
  if (covering_ < placed_cells_.size() && covered_by(covering_)) return false;
  stretches_.clear();
  return grid_.all_near(near, [&](std::size_t index) {
    if (!covered_by(index)) return true;
    covering_ = index;
    return false;
  });
}

/// Where a side runs inside a cell.
void Field::add_stretch_in(const NoFit::Cell& cell, const Obstacle& obstacle, const Side& side,
                           const Box& near) {
  const Box reach{near.low - obstacle.at, near.high - obstacle.at};
  if (cell.box.low.x >= reach.high.x || cell.box.high.x <= reach.low.x ||
      cell.box.low.y >= reach.high.y || cell.box.high.y <= reach.low.y) {
    return;
  }
  const Point p = side.from - obstacle.at;
  const HalfPlane* planes = obstacle.no_fit->planes.data() + cell.planes.first;
  double a = -infinity, b = infinity;
  for (int k = 0; k < cell.planes.count && a < b; ++k) {
    const double rise = planes[k].nx * side.along.x + planes[k].ny * side.along.y;
    const double room = planes[k].reach - planes[k].nx * p.x - planes[k].ny * p.y;
    if (rise > touch_cm) {
      b = std::min(b, room / rise);
    } else if (rise < -touch_cm) {
      a = std::max(a, room / rise);
    } else if (room <= touch_cm) {
      b = -infinity;
    }
  }
  if (a < b && b > 0 && a < 1) stretches_.push_back({a, b, &obstacle});
}

void Field::free_ends(const Side& side, std::vector<Point>& result) {
  double low = 0, high = 1;
  clip(side.from.x, side.along.x, domain_.low.x - touch_cm, domain_.high.x + touch_cm, low, high);
  clip(side.from.y, side.along.y, domain_.low.y - touch_cm, domain_.high.y + touch_cm, low, high);
  if (!(low <= high)) return;
  const double slack = touch_cm / std::max(touch_cm, geometry::norm(side.along));
  if (!collect_along(side, low, high, slack)) return;
  sort_stretches();
  auto report = [&](double t) {
    const Point p = side.from + t * side.along;
    result.push_back({std::clamp(p.x, domain_.low.x, domain_.high.x),
                      std::clamp(p.y, domain_.low.y, domain_.high.y)});
  };
  double reached = low;
  for (const auto& stretch : stretches_) {
    if (stretch.low > high) break;
    if (stretch.low >= reached - slack) {
      report(reached);
      if (stretch.low > reached + slack) report(stretch.low);
    }
    reached = std::max(reached, stretch.high);
  }
  if (reached > high + slack) return;
  report(std::min(reached, high));
  report(high);
}

void Field::touching_spots(std::vector<Point>& result) {
  result.clear();
  if (!fits()) return;
  sort_cells_into_grid();
  collect_sides();
  for (const auto& side : sides_) free_ends(side, result);
  std::erase_if(result, [&](Point p) { return !free(p); });
}

}  // namespace drapewright::cutting
