#pragma once

#include "core/forecast/quantity.h"

namespace drapewright::forecast {

/// A distribution as it is shown: its middle and how far it reaches. The band that holds 50 % goes
/// from the 25 % to the 75 % quantile, the one that holds 90 % from the 5 % to the 95 % quantile.
struct Band {
  double mean = 0;
  double spread = 0;  ///< standard deviation
  int low90 = 0, low50 = 0, middle = 0, high50 = 0, high90 = 0;
};

inline Band band_of(const Quantity& quantity) {
  return {quantity.mean(),           quantity.spread(),        quantity.enough_for(0.05),
          quantity.enough_for(0.25), quantity.enough_for(0.5), quantity.enough_for(0.75),
          quantity.enough_for(0.95)};
}

}  // namespace drapewright::forecast
