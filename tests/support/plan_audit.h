#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "tests/support/geos_shape.h"

namespace drapewright::support {

/// A micrometre: above the grid that overlays are computed on, far below a cut that can be seen.
inline constexpr double hair_cm = 1e-4;
/// How far a drawn inset or border may miss the true one (core/base/tolerances.h), and GEOS's own
/// chords (64 to a quarter circle of 5 cm: 0.0004 cm).
inline constexpr double drawn_cm = 0.005 + 0.0005;
/// Slivers below this are rounding along an edge.
inline constexpr double sliver_cm2 = 1e-3;

/// Parts that were cut to fit sheets lie edge to edge: one shape again, the seams closed.
GeosShape sewn(const geometry::Region& parts);

/// One plan beside its case as GEOS sees it, and what was found broken so far.
class Audit {
 public:
  Audit(const wound::Case& audited, const dressing::Plan& made);

  void expect(bool holds, const std::string& sentence);
  void expect_near(double found, double wanted, double tolerance, const std::string& what);
  bool has_finding(const std::set<std::string>& codes) const;
  int count_findings(const std::string& code, const std::string& wound) const;
  const wound::Wound& wound(const std::string& id) const;
  GeosShape wounds(const std::vector<std::string>& ids) const;
  /// A layer's pieces; sewn where it has a seam.
  GeosShape pieces_of(const dressing::Layer& layer) const;
  /// All pieces of the layer next to the film, as far as they reach under the skin.
  GeosShape top_layer(const std::vector<std::string>& ids) const;
  /// What lies next to the film and is seen from above: of a layer that reaches into pockets only
  /// what the opening shows.
  GeosShape top_filler(const std::vector<std::string>& ids) const;

  const wound::Case& value;
  const dressing::Plan& plan;
  const wound::Assessment& seen;
  std::map<std::string, GeosShape> shapes;  ///< of the wounds, by id
  GeosShape no_film, no_port;
  std::vector<std::string> broken;
};

// The parts of the audit; each adds to `broken`.
void audit_measures(Audit& audit);
void audit_fill(Audit& audit);
void audit_films(Audit& audit);
/// Which sheets are opened, and where every piece is cut from them.
void audit_cut(Audit& audit);
/// Where the port sits and what leads to it.
void audit_port(Audit& audit, const dressing::Drape& drape);
void audit_bridges(Audit& audit, const dressing::Drape& drape);

}  // namespace drapewright::support
