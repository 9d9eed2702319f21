#pragma once

#include <string>

#include "core/geodesy/crs.h"
#include "core/plan/plan.h"

namespace crosstick::movement {

/// The grid of the work for a route: the printed grid of the plan's first sheet, or the plan's own plane without one.
/// Azimuths and map distances are read in it, since the user's protractor lies on it. One thread at a time.
class WorkGrid {
  public:
    [[nodiscard]] static Result<WorkGrid> of(const plan::Plan& plan);

    [[nodiscard]] const geodesy::Plane& plane() const { return plane_; }
    [[nodiscard]] Result<geodesy::PlanePoint> onGrid(geodesy::PlanePoint inPlan) const { return link_.forward(inPlan); }
    [[nodiscard]] Result<geodesy::PlanePoint> inPlan(geodesy::PlanePoint onGrid) const { return link_.inverse(onGrid); }
    /// Eight figures as the trade reads them: "FL 5427 9806" (MGRS, truncated) where the grid is UTM or UPS on WGS 84,
    /// else easting and northing of the sheet's own grid to 10 m, truncated: "35427 59806".
    [[nodiscard]] std::string gridText(geodesy::PlanePoint onGrid) const;

  private:
    WorkGrid(geodesy::Plane plane, geodesy::PlaneLink link) : plane_(std::move(plane)), link_(std::move(link)) {}
    geodesy::Plane plane_;
    geodesy::PlaneLink link_;
};

}  // namespace crosstick::movement
