#pragma once

#include <string>

#include "core/geometry/medial/diagram.h"

namespace drapewright::geometry::medial {

/// Looks for what no true Voronoi diagram of a simple outline has; empty when nothing was found.
///
/// Boost.Polygon 1.81 drops vertices without a word where long edges lie a few grid units off an
/// axis (a fault its maintainers know of), so no diagram is used before it has passed:
/// - every corner of the outline is a vertex, once, and nothing else has clearance 0;
/// - all sites that meet at a vertex are equally far from it, and their feet lie round it once;
/// - going round a cell, the feet on its site move one way only and stay on the site;
/// - no edge of a cell runs from the inside of the outline to infinity or to the outside;
/// - the sectors between the sites and the edges of their cells add up to the outline's area.
///
/// Why that is enough: cells in such order fit together around every edge and vertex, so that they
/// cover the plane once. Along a straight way out from its site a cell ends where another site
/// becomes nearer, so no point outside it can be nearest to its site; cells that cover the plane
/// once and each hold all that is nearest to their site hold nothing else.
std::string find_fault(const Diagram& diagram);

}  // namespace drapewright::geometry::medial
