#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace drapewright::demo {

/// What is known of a demo case without the program. All of it was worked out from the case file
/// alone, before the program planned it:
/// - area, edge, length, width: GEOS 3.11; the length by trying every pair of corner points, the
///   width by projecting the points at right angles to it;
/// - volume: area x depth, or for a sloping wall the sum over 400 slices of GEOS's inset of the
///   outline (run-in x depth fraction) times the slice's thickness;
/// - filler of every layer: GEOS's inset, 256 chords to a quarter circle; pieces counted there;
/// - unfilled: the wound less GEOS's outset of the top filler by inset + 0.05 cm;
/// - film: GEOS's outset of the wounds by the border, 256 chords, less the no_film zones; the
/// border
///   left: GEOS's distance between wounds and zones;
/// - aperture: GEOS's largest inscribed circle in the top filler less the no_port zones;
/// - sheets: extents of the corner points plus twice the border at 18,000 angles, against the sizes
///   in stock;
/// - filler sheets: 1 is the fewest there can be; two where the filler's length is beyond every
///   sheet's;
/// - findings: by hand, from those figures and the limits in docs/sources.md.
struct Figures {
  const char* file;
  std::vector<double> area_cm2, edge_cm, length_cm, width_cm, volume_cm3;  ///< one for each wound
  double filler_cm2;
  double filler_edge_cm;  ///< of all layers: how far the drawn area may differ
  int pieces;
  double unfilled_cm2;
  double film_cm2;
  double film_edge_cm;
  double least_border_cm;
  double largest_aperture_cm;
  bool port_fits;
  std::vector<std::string> sheets;
  std::vector<std::string> findings;
  std::size_t filler_sheets = 1;
};

/// What a failed test calls a case.
inline void PrintTo(const Figures& figures, std::ostream* out) { *out << figures.file; }

const std::vector<Figures>& figures();

}  // namespace drapewright::demo
