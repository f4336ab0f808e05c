#pragma once

#include <vector>

#include "core/cutting/budget.h"
#include "core/cutting/random.h"
#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// All pieces, largest first.
std::vector<int> by_falling_area(const Scene& scene);

/// Lays pieces down one after another, each at the touching spot, of all its catalogued
/// orientations, that reaches least far along the bed. Bays and holes of pieces that lie already
/// are used.
class Constructor {
 public:
  Constructor(Arrangement& arrangement, Budget& budget)
      : arrangement_(arrangement), budget_(budget) {}

  /// Puts the piece on the first bed that takes it; leaves it unplaced (false) if none does or the
  /// budget ends before. Takes one step.
  bool place(int piece);
  /// Places all of `order` afresh. Pieces that find no room stay unplaced.
  /// @returns whether all found room
  bool place_all(const std::vector<int>& order);

 private:
  Arrangement& arrangement_;
  Budget& budget_;
  Field field_;
  std::vector<Point> spots_;
};

/// Puts a piece anywhere on any bed that it fits, whatever lies there. False if it fits none.
bool drop(Arrangement& arrangement, int piece, Random& random);

}  // namespace drapewright::cutting
