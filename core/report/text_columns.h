#pragma once

#include <string>
#include <vector>

namespace drapewright::report {

/// Rows of text with cells under each other, indented by two.
class Columns {
 public:
  /// @param widths  in characters; below 0 the cell stands at the right of its column
  explicit Columns(std::vector<int> widths) : widths_(std::move(widths)) {}
  /// One line; a cell that is wider than its column pushes the others on.
  std::string row(const std::vector<std::string>& cells) const;

 private:
  std::vector<int> widths_;
};

/// `text` in lines of at most 80 characters, the second and later ones indented twice as far.
std::string wrapped(const std::string& text, std::size_t indent);

}  // namespace drapewright::report
