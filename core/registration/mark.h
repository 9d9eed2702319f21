#pragma once

#include "core/geodesy/points.h"

namespace crosstick::registration {

/// A place in a picture, in its pixels from the outer corner of the upper left one, x right, y down: the middle of that
/// pixel is 0.5, 0.5.
struct PixelPoint {
    double x = 0, y = 0;
    friend constexpr bool operator==(PixelPoint, PixelPoint) = default;
};

/// Where a place of the sheet's printed grid stands in the picture.
struct Mark {
    PixelPoint at;
    geodesy::PlanePoint place;  ///< in the sheet's projected CRS, in metres
    friend constexpr bool operator==(const Mark&, const Mark&) = default;
};

}  // namespace crosstick::registration
