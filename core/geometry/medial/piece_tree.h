#pragma once

#include <vector>

#include "core/geometry/medial/diagram.h"

namespace drapewright::geometry::medial {

/// Where two parts of the inside of an outline meet as the clearance asked for falls.
struct Saddle {
  double clearance = 0;
  int vertex = 0;
  int toward[2] = {0, 0};  ///< half-edges that leave the vertex, one into either part
  int peak[2] = {0, 0};    ///< numbers of the highest points that the two half-edges lead up to
};

/// How the inside of an outline falls into pieces as an inset grows: the merge tree of the
/// clearance over the diagram's vertices. From it follow the number of pieces at every inset, the
/// piece that a vertex belongs to, and every neck with what it cuts off.
class PieceTree {
 public:
  explicit PieceTree(const Diagram& diagram);

  /// Pieces at more than this clearance.
  int pieces(double clearance) const;
  /// A number for the piece that holds a vertex. @pre the vertex lies above that clearance inside
  int piece_of(int vertex, double clearance) const;
  /// All saddles, lowest clearance first.
  const std::vector<Saddle>& saddles() const { return saddles_; }

  struct Peak {
    int vertex = 0;
    double clearance = 0;
    double area = 0;  ///< of what lies downhill of it
  };
  const std::vector<Peak>& peaks() const { return peaks_; }

  /// What lies on the smaller side of each saddle: parallel to saddles().
  struct Lobe {
    double area = 0;
    double clearance = 0;  ///< of its highest point
  };
  std::vector<Lobe> lobes() const;

 private:
  struct Link {
    int parent = 0;
    int size = 1;
    int top = 0;           ///< the highest vertex of what hangs here
    double clearance = 0;  ///< at which it was joined to its parent
  };
  int root(int vertex) const;
  void join_all(const Diagram& diagram);
  void join(const Diagram& diagram, int e);
  void name_peaks(const Diagram& diagram);
  void add_up_areas(const Diagram& diagram);

  std::vector<Link> links_;
  std::vector<int> first_edge_;  ///< of each vertex, towards what it was joined to first; or -1
  std::vector<int> uphill_;      ///< a vertex higher up the same hill, or -1 at its top
  std::vector<int> peak_of_;     ///< number of the peak uphill of each vertex
  std::vector<Peak> peaks_;
  std::vector<Saddle> saddles_;
  std::vector<double> falling_peaks_;  ///< clearances, highest first
};

}  // namespace drapewright::geometry::medial
