#include "core/cutting/oriented.h"

#include <algorithm>

#include "core/geometry/measures.h"

namespace drapewright::cutting {
namespace {

Box box_of(const std::vector<Convex>& parts) {
  Box box{parts.front().corners.front(), parts.front().corners.front()};
  for (const auto& part : parts) {
    for (const auto& p : part.corners) {
      box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
      box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
  }
  return box;
}

}  // namespace

void orient(const StandIn& piece, double angle_deg, Oriented& result) {
  const Turn turn = Turn::by_deg(angle_deg);
  result.id = -1;
  result.angle_deg = angle_deg;
  result.parts.resize(piece.parts.size());
  for (std::size_t i = 0; i < piece.parts.size(); ++i) {
    const auto& from = piece.parts[i];
    auto& to = result.parts[i];
    to.corners.resize(from.corners.size());
    to.normals.resize(from.normals.size());
    std::transform(from.corners.begin(), from.corners.end(), to.corners.begin(), turn);
    std::transform(from.normals.begin(), from.normals.end(), to.normals.begin(), turn);
  }
  result.box = box_of(result.parts);
}

}  // namespace drapewright::cutting
