#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/report/page.h"

namespace drapewright::report {

/// Runs text through the columns of as many pages as it needs; the columns of the last are equally
/// long. What is added between two calls of `keep` stays together where a column can hold it.
class ColumnFlow {
 public:
  /// @param document  its pages are added to
  /// @param heading   of every page
  /// @param columns   one or more
  ColumnFlow(Document& document, Paper paper, PageHeading heading, int columns);

  double column_width() const;
  double page_width() const { return room_.width(); }

  /// Over all columns: below what stands on the page, on a new page where that leaves no room.
  /// @param draw  gets the page and the upper left corner
  void across(double height_mm, const std::function<void(Page&, geometry::Point)>& draw);

  /// Bold words in a frame over all columns.
  void framed(const std::string& words);

  void heading(const std::string& words);
  void paragraph(const std::string& words, const TextLook& look = {}, double indent_mm = 0);
  /// A name, and what is to be said of it beside it.
  void row(const std::string& name, const std::string& words);
  /// An empty box to tick, with words beside it.
  void box_row(const std::string& words);
  void numbered(int number, const std::string& words);
  /// Words in columns of a table, each at its distance from the left edge.
  struct Cell {
    double at_mm = 0;
    std::string words;
    Label::Anchor anchor = Label::Anchor::start;
    bool bold = false;
  };
  void cells(const std::vector<Cell>& row);
  void gap(double mm = 1.5);
  void keep();

  /// Ends the last page. Nothing may be added after it.
  void finish();

 private:
  struct Part {
    double height_mm = 0;
    std::function<void(Page&, geometry::Point)> draw;
  };

  /// A paragraph to the right of what is drawn at its first line.
  void beside(const std::string& words, double indent_mm,
              std::function<void(Page&, geometry::Point)> draw);
  void add(double height_mm, std::function<void(Page&, geometry::Point)> draw);
  void begin_page();
  void end_page();

  using Block = std::vector<Part>;
  static double height_of(const Block& block);
  /// Where each block goes in columns of that height: the column and how far down; nothing when
  /// they do not fit.
  struct Spot {
    int column = 0;
    double down_mm = 0;
  };
  std::optional<std::vector<Spot>> spots(const std::vector<Block>& blocks, double height_mm) const;
  /// Draws the blocks of the columns and begins below them.
  void set_columns(double height_mm);
  double least_height() const;

  Document& document_;
  DrawingSize size_;
  PageHeading heading_;
  int columns_;
  std::optional<Page> page_;
  std::string description_;
  geometry::Box room_;
  double top_ = 0;             ///< of the columns, below what stands across the page
  std::vector<Block> blocks_;  ///< of the columns on this page
  Block pending_;
};

}  // namespace drapewright::report
