#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"
#include "core/geometry/crossings.h"
#include "core/geometry/indexed_region.h"

namespace drapewright::dressing {

/// The plan as a cut through wound and dressing shows it: along a line over the skin, and down.
/// Places are in cm along the line from its start, depths in cm below the skin.
struct Section {
  using Span = geometry::Span;

  /// Floor of a wound's opening, from its left edge to its right one: x along the line, y the depth
  /// (0 at the skin). Where the wall runs in evenly the depth at a place follows from its distance
  /// to the wound's edge; straight walls go down at once.
  struct Cavity {
    std::string wound;
    Span span;
    std::vector<geometry::Point> floor;
    double depth_cm = 0;      ///< of the wound at its deepest
    bool depth_given = true;  ///< else it is drawn as deep as its filler, and must say so
  };
  /// A pocket under the skin: as high as the lowest layer of filler, which is how it is reckoned.
  struct Pocket {
    std::string wound;
    Span span;
    double top_cm = 0;
    double bottom_cm = 0;
  };
  struct Filler {
    std::string wound;
    int layer = 1;
    int piece = 1;  ///< within the layer, from 1
    Span span;
    double top_cm = 0;
    double bottom_cm = 0;
    bool thinned = false;  ///< cut from a thicker sheet
  };
  struct Bridge {
    Span span;
    std::vector<Span> protection;  ///< film under it
  };
  /// What film is left between a wound's edge and the film's end, along the line. Along a line that
  /// meets the edge aslant it is longer than the border itself.
  struct BorderSide {
    Span span;
    std::string wound;
  };

  geometry::Segment line;
  double length_cm = 0;
  double depth_cm = 0;  ///< the deepest of what is shown
  std::vector<Cavity> cavities;
  std::vector<Pocket> pockets;
  std::vector<Filler> filler;
  std::vector<Span> film;
  std::vector<BorderSide> borders;
  std::vector<Bridge> bridges;
  std::vector<Span> port_bases, apertures;
  std::vector<Span> no_film, no_port;

  /// Nothing of any wound lies on the line.
  bool misses_the_wounds() const { return cavities.empty(); }
};

/// Cuts sections through one plan: set up once, then every line costs well under a millisecond, so
/// that the line can be dragged.
class SectionCutter {
 public:
  /// @param plan of that case; neither is needed afterwards
  SectionCutter(const wound::Case& value, const Plan& plan);

  /// @param line of any length; one without length gives a section of nothing
  Section cut(const geometry::Segment& line) const;

  /// Through the largest wound, out to a little beyond its film on both sides: into its deepest
  /// pocket where it is undermined, else along its greatest length.
  const geometry::Segment& usual_line() const { return usual_line_; }

 private:
  struct WoundCut {
    explicit WoundCut(geometry::Region region) : shape(std::move(region)), index(shape) {}
    WoundCut(const WoundCut&) = delete;
    std::string id;
    geometry::Region shape;
    geometry::IndexedRegion index;
    geometry::Region pockets;
    double depth_cm = 0;
    double run_in_cm = 0;
    bool depth_given = true;
    double pocket_top_cm = 0;
  };

  void add_wound(const wound::Wound& wound, const Plan& plan, double head_deg);
  void add_cavities(const WoundCut& wound, Section& section) const;
  void add_borders(Section& section) const;
  double depth_at(const WoundCut& wound, geometry::Point place) const;

  std::vector<std::unique_ptr<const WoundCut>> wounds_;
  std::vector<Layer> layers_;
  std::vector<Drape> drapes_;
  geometry::Region no_film_, no_port_;
  geometry::Segment usual_line_;
};

}  // namespace drapewright::dressing
