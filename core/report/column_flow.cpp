#include "core/report/column_flow.h"

#include <algorithm>
#include <utility>

#include "core/report/text_size.h"

namespace drapewright::report {

using geometry::Point;

namespace {

constexpr double between_mm = 6;
constexpr double name_mm = 25;  ///< the room for a row's name
constexpr double box_mm = 6;
constexpr TextLook heading_look{.size_mm = 3.6, .bold = true};

}  // namespace

ColumnFlow::ColumnFlow(Document& document, Paper paper, PageHeading heading, int columns)
    : document_(document), size_(size_of(paper)), heading_(std::move(heading)), columns_(columns) {
  begin_page();
}

double ColumnFlow::column_width() const {
  return (room_.width() - (columns_ - 1) * between_mm) / columns_;
}

void ColumnFlow::begin_page() {
  page_.emplace(size_);
  room_ = frame(*page_, heading_);
  top_ = room_.low.y;
}

void ColumnFlow::end_page() {
  document_.pages.push_back(page_->finish(document_.title, description_));
  page_.reset();
  description_.clear();
}

double ColumnFlow::height_of(const Block& block) {
  double height = 0;
  for (const Part& part : block) height += part.height_mm;
  return height;
}

std::optional<std::vector<ColumnFlow::Spot>> ColumnFlow::spots(const std::vector<Block>& blocks,
                                                               double height_mm) const {
  std::vector<Spot> result;
  Spot next;
  for (const Block& block : blocks) {
    const double height = height_of(block);
    if (next.down_mm + height > height_mm + 1e-9) next = {next.column + 1, 0};
    if (next.column >= columns_ || height > height_mm + 1e-9) return std::nullopt;
    result.push_back(next);
    next.down_mm += height;
  }
  return result;
}

/// The columns as short as they can be, so that none is much longer than the others.
double ColumnFlow::least_height() const {
  const double most = room_.high.y - top_;
  for (double height = 0; height < most; height += 1) {
    if (spots(blocks_, height)) return height;
  }
  return most;
}

void ColumnFlow::set_columns(double height_mm) {
  const auto places = spots(blocks_, height_mm);
  double longest = 0;
  for (std::size_t i = 0; i < blocks_.size() && places; ++i) {
    const auto& [column, down_mm] = (*places)[i];
    Point at{room_.low.x + column * (column_width() + between_mm), top_ + down_mm};
    for (const Part& part : blocks_[i]) {
      part.draw(*page_, at);
      at.y += part.height_mm;
    }
    longest = std::max(longest, at.y - top_);
  }
  blocks_.clear();
  top_ += longest;
}

/// A block that no column can hold is broken up into its lines.
void ColumnFlow::keep() {
  if (pending_.empty()) return;
  std::vector<Block> blocks{std::exchange(pending_, {})};
  if (height_of(blocks.front()) > size_.height_mm - 2 * (room_.low.y)) {
    const Block whole = std::exchange(blocks, {}).front();
    for (const Part& line : whole) blocks.push_back({line});
  }
  for (Block& block : blocks) {
    blocks_.push_back(block);
    if (spots(blocks_, room_.high.y - top_)) continue;
    blocks_.pop_back();
    set_columns(room_.high.y - top_);
    end_page();
    begin_page();
    blocks_.push_back(std::move(block));
  }
}

void ColumnFlow::across(double height_mm, const std::function<void(Page&, Point)>& draw) {
  keep();
  set_columns(least_height());
  if (top_ + height_mm > room_.high.y + 1e-9 && top_ > room_.low.y) {
    end_page();
    begin_page();
  }
  draw(*page_, {room_.low.x, top_});
  top_ += height_mm;
}

void ColumnFlow::framed(const std::string& words) {
  constexpr TextLook look{.bold = true};
  const double width = page_width() - 4;
  const double height = paragraph_height(width, words, look) + 3;
  across(height + 2, [&](Page& page, Point at) {
    page.box({at, {at.x + width + 4, at.y + height}});
    page.paragraph({at.x + 2, at.y + 1}, width, words, look);
  });
}

void ColumnFlow::add(double height_mm, std::function<void(Page&, Point)> draw) {
  pending_.push_back({height_mm, std::move(draw)});
}

void ColumnFlow::gap(double mm) {
  add(mm, [](Page&, Point) {});
}

void ColumnFlow::heading(const std::string& words) {
  gap(2);
  paragraph(words, heading_look);
  description_ += words + ". ";
}

void ColumnFlow::paragraph(const std::string& words, const TextLook& look, double indent_mm) {
  for (std::string& line : wrapped(words, column_width() - indent_mm, look.size_mm, look.bold)) {
    add(line_pitch * look.size_mm, [line = std::move(line), look, indent_mm](Page& page, Point at) {
      page.text({at.x + indent_mm, at.y + look.size_mm}, line, look);
    });
  }
}

void ColumnFlow::row(const std::string& name, const std::string& words) {
  const std::size_t first = pending_.size();
  paragraph(words, {}, name_mm);
  if (pending_.size() == first) return;
  std::vector<std::string> names = wrapped(name, name_mm - 1, page_text_mm, true);
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (first + i >= pending_.size()) {
      add(line_pitch * page_text_mm, [](Page&, Point) {});
    }
    Part& part = pending_[first + i];
    part.draw = [words_too = std::move(part.draw), line = std::move(names[i])](Page& page,
                                                                               Point at) {
      page.text({at.x, at.y + page_text_mm}, line, {.bold = true});
      words_too(page, at);
    };
  }
}

void ColumnFlow::beside(const std::string& words, double indent_mm,
                        std::function<void(Page&, Point)> draw) {
  const std::size_t first = pending_.size();
  paragraph(words, {}, indent_mm);
  if (pending_.size() == first) return;
  pending_[first].draw = [draw = std::move(draw), words_too = std::move(pending_[first].draw)](
                             Page& page, Point at) {
    draw(page, {at.x, at.y + page_text_mm});
    words_too(page, at);
  };
}

void ColumnFlow::box_row(const std::string& words) {
  beside(words, box_mm, [](Page& page, Point at) { page.tick_box(at); });
}

void ColumnFlow::numbered(int number, const std::string& words) {
  beside(words, box_mm,
         [number](Page& page, Point at) { page.text(at, std::to_string(number) + "."); });
}

void ColumnFlow::cells(const std::vector<Cell>& row) {
  add(line_pitch * page_text_mm, [row](Page& page, Point at) {
    for (const Cell& cell : row) {
      page.text({at.x + cell.at_mm, at.y + page_text_mm}, cell.words,
                {.bold = cell.bold, .anchor = cell.anchor});
    }
  });
}

void ColumnFlow::finish() {
  keep();
  set_columns(least_height());
  end_page();
}

}  // namespace drapewright::report
