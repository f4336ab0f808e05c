#pragma once

#include <QString>
#include <map>
#include <string>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::printing {

using SvgChain = std::vector<geometry::Point>;

/// What another program reads in a page's SVG, in mm.
struct SvgShapes {
  std::map<std::string, std::vector<SvgChain>> chains;  ///< by the id of their group
  struct Word {
    geometry::Point at;
    std::string text;
    bool bold = false;
  };
  std::vector<Word> words;
};

/// Fails the test for what is not well-formed, or not in mm.
SvgShapes read_svg(const std::string& svg);

}  // namespace drapewright::printing
