#pragma once

#include <string>
#include <vector>

#include "core/geodesy/crs.h"
#include "core/plan/plan.h"

namespace crosstick::film {

/// How a sheet's printed grid is read in words and figures: MGRS letters where it is UTM or UPS on WGS 84, bare figures
/// of its own on any other. One thread at a time.
class GridNames {
  public:
    /// Errors: those of geodesy::Plane.
    [[nodiscard]] static Result<GridNames> of(const std::string& crs);

    [[nodiscard]] const geodesy::CrsFacts& facts() const { return plane_.facts(); }
    /// A crossing in full: "25TFL53009700", else "653000 5097000".
    [[nodiscard]] std::string crossing(geodesy::PlanePoint at) const;
    /// A kilometre square by its south-west corner: "FL 53 97", else "653 5097". Smaller and larger squares likewise.
    [[nodiscard]] std::string square(geodesy::PlanePoint southWest, Metres side) const;
    /// What the grid is, for a block: "25T FL FM" (zones and 100 km squares in the window), else "UTM zone 32 north" or
    /// the grid's own name.
    [[nodiscard]] std::string area(const plan::Registration& window) const;

  private:
    explicit GridNames(geodesy::Plane plane) : plane_(std::move(plane)) {}
    geodesy::Plane plane_;
    [[nodiscard]] bool hasLetters() const;
};

/// One row of a tick's label: full for the lower left tick ("653000mE"), else the line's own figures with the two
/// principal ones apart ("6 53").
[[nodiscard]] std::string lineFigures(Metres line);

}  // namespace crosstick::film
