#pragma once

#include <functional>
#include <string>

#include "core/picture/calibration.h"

namespace drapewright::picture {

/// What clicks that are a little off do to what is measured in a picture. The model: every click of
/// the reference lies within `click_error_px` of the place that it was meant for, and each in the
/// direction that does most harm. To the first order, so for errors that are small against the
/// reference. Lens distortion, a reference that lies nearer to the camera than the wound, and the
/// outline's own clicks (the tracing error) come on top.

/// Something measured by way of a calibration, above 0: a length, an area.
using Measure = std::function<double(const Calibration&)>;

/// By which share of itself the measure may be off, either way: 0.012 is 1.2 %.
/// @throws InputError for a reference that gives no scale, and for what the measure throws
double click_spread(const Reference& reference, double click_error_px, const Measure& measure);

struct Spread {
  double length_share = 0;  ///< of the lengths across the outline, in the direction worst off
  double area_share = 0;
  double cm_per_pixel = 0;  ///< at the outline's place; its clicks are no finer than this
};

/// @param outline  a closed chain with an area
/// @throws InputError as above, and for an outline that has no area or lies beyond the horizon
Spread spread_at(const Reference& reference, double click_error_px, const PixelChain& outline);

/// "lengths ± 1.2 %, area ± 2.4 %"; rounded up.
std::string in_words(const Spread& spread);

/// A further known length, measured by way of the reference.
struct LengthCheck {
  double typed_cm = 0;
  double measured_cm = 0;
  double clicks_share = 0;  ///< how much the clicks of both together explain

  double difference_share() const { return measured_cm / typed_cm - 1; }
  /// False: something else is wrong, such as a typed length, a marker that is not in the plane of
  /// the wound, or a picture taken at a slant.
  bool agrees() const;
};

LengthCheck check_length(const Reference& reference, double click_error_px,
                         const KnownLength& known);

/// "10 cm measures 10.3 cm: + 2.5 %, of which clicks explain 0.8 %".
std::string in_words(const LengthCheck& check);

}  // namespace drapewright::picture
