#include "core/dressing/film_cover.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/rectangle.h"
#include "core/geometry/shapes.h"

namespace drapewright::dressing {
namespace {

/// Angles that are tried besides those of the film's own smallest rectangle.
constexpr int tried_angles = 36;
/// A film of a metre on the smallest sheets takes far fewer; more is a slip of units.
constexpr int most_columns = 12;

/// A sheet as it lies in the turned drawing: its extent across and along the columns.
struct Side {
  double across_cm;
  double along_cm;
  friend auto operator<=>(const Side&, const Side&) = default;
};

/// Columns, each with the number of rows it takes, found for one angle.
struct Parting {
  double angle_deg = 0;
  int sheets = std::numeric_limits<int>::max();
  double from_cm = 0;  ///< of the first column, in the turned drawing
  std::vector<Side> columns;
};

struct Span {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
  bool empty() const { return low > high; }
  void take(double y) {
    low = std::min(low, y);
    high = std::max(high, y);
  }
};

/// The film turned so that columns stand upright.
class TurnedFilm {
 public:
  TurnedFilm(const geometry::Region& film, double angle_deg) {
    for (const geometry::Polygon& polygon : film) {
      rings_.push_back(geometry::turned(polygon.outer, -angle_deg));
      for (const geometry::Point& p : rings_.back()) extent_.take(p.x);
    }
  }
  Span extent() const { return extent_; }

  /// What the film reaches along the column between two places across.
  Span reach(double from, double to) const {
    Span span;
    for (const geometry::Ring& ring : rings_) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        clip(ring[i], ring[(i + 1) % ring.size()], from, to, span);
      }
    }
    return span;
  }

 private:
  static void clip(geometry::Point a, geometry::Point b, double from, double to, Span& span) {
    if (a.x > b.x) std::swap(a, b);
    if (b.x < from || a.x > to) return;
    const auto at = [&](double x) {
      return b.x == a.x ? a.y : a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
    };
    span.take(a.x < from ? at(from) : a.y);
    span.take(b.x > to ? at(to) : b.y);
  }

  std::vector<geometry::Ring> rings_;
  Span extent_;
};

/// How many lengths of `piece_cm`, each overlapping the last, span `whole_cm`.
int pieces_over(double whole_cm, double piece_cm, double overlap_cm) {
  const double more = (whole_cm - piece_cm) / (piece_cm - overlap_cm);
  return 1 + std::max(0, static_cast<int>(std::ceil(more - 1e-9)));
}

/// Looks for the columns that take the fewest sheets at one angle, branch and bound over the width
/// of each column in turn.
class ColumnSearch {
 public:
  ColumnSearch(const TurnedFilm& film, const std::set<Side>& sides, double overlap_cm,
               Parting& best, double angle_deg)
      : film_(film), sides_(sides), overlap_cm_(overlap_cm), best_(best), angle_deg_(angle_deg) {}

  void run() { extend(film_.extent().low, 0); }

 private:
  void extend(double from, int sheets) {
    if (sheets + 1 >= best_.sheets || columns_.size() >= most_columns) return;
    for (const Side& side : sides_) {
      const double to = from + side.across_cm;
      const Span reach = film_.reach(from, to);
      const int rows =
          reach.empty() ? 0 : pieces_over(reach.high - reach.low, side.along_cm, overlap_cm_);
      columns_.push_back(side);
      if (to >= film_.extent().high - tolerance::sheet_fit_cm) {
        keep(sheets + rows);
      } else {
        extend(to - overlap_cm_, sheets + rows);
      }
      columns_.pop_back();
    }
  }

  void keep(int sheets) {
    if (sheets >= best_.sheets) return;
    best_ = {angle_deg_, sheets, film_.extent().low, columns_};
  }

  const TurnedFilm& film_;
  const std::set<Side>& sides_;
  double overlap_cm_;
  Parting& best_;
  double angle_deg_;
  std::vector<Side> columns_;
};

/// Cuts the film along a parting and gives each part the cheapest sheet that holds it.
class Cutter {
 public:
  Cutter(const geometry::Region& film, const Parting& parting, double overlap_cm, FilmShelf& shelf)
      : parting_(parting),
        overlap_cm_(overlap_cm),
        shelf_(shelf),
        turned_(geometry::turned(film, -parting.angle_deg)),
        film_(film, parting.angle_deg) {}

  std::optional<FilmCover> cut() {
    double from = parting_.from_cm;
    for (const Side& column : parting_.columns) {
      const double to = from + column.across_cm;
      const Span reach = film_.reach(from, to);
      if (!reach.empty() && !cut_column(from, to, reach, column.along_cm)) return std::nullopt;
      if (from > parting_.from_cm && !reach.empty()) {
        const double middle = from + overlap_cm_ / 2;
        add_seam({middle, reach.low}, {middle, reach.high});
      }
      from = to - overlap_cm_;
    }
    return std::move(cover_);
  }

 private:
  bool cut_column(double from, double to, const Span& reach, double along_cm) {
    const double whole = reach.high - reach.low;
    const int rows = pieces_over(whole, along_cm, overlap_cm_);
    // The rows share the column evenly, so that every part has room to spare on its sheet.
    const double row_cm = (whole + (rows - 1) * overlap_cm_) / rows;
    for (int row = 0; row < rows; ++row) {
      const double low = reach.low + row * (row_cm - overlap_cm_);
      const geometry::Region part =
          geometry::intersect(turned_, {{window(from, low, to, low + row_cm), {}}});
      if (part.empty()) continue;
      if (!take_sheet(part)) return false;
      if (row > 0) {
        const double middle = low + overlap_cm_ / 2;
        add_seam({from, middle}, {to, middle});
      }
    }
    return true;
  }

  static geometry::Ring window(double x0, double y0, double x1, double y1) {
    return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
  }

  bool take_sheet(const geometry::Region& part) {
    auto points = geometry::outer_points(part);
    for (geometry::Point& p : points) p = geometry::turned(p, parting_.angle_deg);
    auto sheet = shelf_.take(points);
    if (!sheet) return false;
    cover_.sheets.push_back(std::move(*sheet));
    return true;
  }

  void add_seam(geometry::Point from, geometry::Point to) {
    cover_.seams.push_back(
        {geometry::turned(from, parting_.angle_deg), geometry::turned(to, parting_.angle_deg)});
  }

  const Parting& parting_;
  double overlap_cm_;
  FilmShelf& shelf_;
  geometry::Region turned_;
  TurnedFilm film_;
  FilmCover cover_;
};

std::set<Side> sides_in(const FilmShelf& shelf, double overlap_cm) {
  std::set<Side> sides;
  for (const supplies::StockItem* sheet : shelf.sheets()) {
    if (*sheet->width_cm <= overlap_cm || *sheet->length_cm <= overlap_cm) continue;
    sides.insert({*sheet->length_cm, *sheet->width_cm});
    sides.insert({*sheet->width_cm, *sheet->length_cm});
  }
  // A sheet no larger than another in either direction can only need more of them.
  std::erase_if(sides, [&](const Side& small) {
    return std::ranges::any_of(sides, [&](const Side& large) {
      return large != small && large.across_cm >= small.across_cm &&
             large.along_cm >= small.along_cm;
    });
  });
  return sides;
}

Parting best_parting(const geometry::Region& film, const std::set<Side>& sides, double overlap_cm) {
  const double own_deg =
      geometry::smallest_enclosing_rectangle(geometry::outer_points(film)).angle_deg;
  Parting best;
  for (int i = 0; i < tried_angles; ++i) {
    const double angle_deg = own_deg + i * 180.0 / tried_angles;
    ColumnSearch(TurnedFilm(film, angle_deg), sides, overlap_cm, best, angle_deg).run();
  }
  return best;
}

/// The last word: nothing of the film shows between the sheets.
bool covers(const FilmCover& cover, const geometry::Region& film) {
  std::vector<geometry::Region> sheets;
  for (const FilmSheet& sheet : cover.sheets) {
    geometry::Rectangle grown = sheet.place;
    grown.length_cm += 2 * tolerance::sheet_slack_cm;
    grown.width_cm += 2 * tolerance::sheet_slack_cm;
    sheets.push_back({{geometry::corners(grown), {}}});
  }
  const geometry::Region bare = geometry::subtract(film, geometry::unite(sheets));
  return geometry::area(bare) <= geometry::edge_length(film) * tolerance::grid_cm * 10;
}

}  // namespace

std::optional<FilmCover> cover_with_sheets(const geometry::Region& film, double overlap_cm,
                                           FilmShelf& shelf) {
  const std::set<Side> sides = sides_in(shelf, overlap_cm);
  if (sides.empty() || film.empty()) return std::nullopt;
  const Parting parting = best_parting(film, sides, overlap_cm);
  if (parting.columns.empty()) return std::nullopt;
  FilmShelf rest = shelf;  // nothing is taken unless all is there
  auto cover = Cutter(film, parting, overlap_cm, rest).cut();
  if (!cover || !covers(*cover, film)) return std::nullopt;
  shelf = std::move(rest);
  return cover;
}

int least_possible_sheets(double film_area_cm2, const FilmShelf& shelf) {
  const supplies::StockItem* largest = shelf.largest();
  if (largest == nullptr) return 0;
  return static_cast<int>(
      std::ceil(film_area_cm2 / (*largest->length_cm * *largest->width_cm) - 1e-9));
}

}  // namespace drapewright::dressing
