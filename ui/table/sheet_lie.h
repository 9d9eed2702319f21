#pragma once

#include <memory>

#include "core/geodesy/crs.h"
#include "core/plan/sheet.h"
#include "ui/table/view.h"

namespace crosstick::table {

/// How a sheet lies on the table: from its raster to the grid of the work and back. A sheet in that very grid lies
/// straight, by one affine step; any other is brought there point by point, its datum with it.
/// Thread: one thread at a time.
class SheetLie {
  public:
    SheetLie(const plan::Placement& placement) : placement_(placement) {}  // NOLINT(google-explicit-constructor)
    /// Errors: those of geodesy::PlaneLink.
    [[nodiscard]] static Result<SheetLie> of(const plan::Sheet& sheet, const std::string& gridCrs);

    [[nodiscard]] bool isStraight() const { return link_ == nullptr; }
    [[nodiscard]] const plan::Placement& placement() const { return placement_; }  ///< on the sheet's own grid
    /// Not finite where the projection does not reach.
    [[nodiscard]] geodesy::PlanePoint onGrid(Spot raster) const;
    [[nodiscard]] Spot inRaster(geodesy::PlanePoint onGrid) const;

  private:
    plan::Placement placement_;
    std::shared_ptr<const geodesy::PlaneLink> link_;  ///< from the sheet's grid to that of the work; null: the same
};

}  // namespace crosstick::table
