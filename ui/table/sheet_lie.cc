#include "ui/table/sheet_lie.h"

#include <limits>

namespace crosstick::table {
namespace {

constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();

}  // namespace

Result<SheetLie> SheetLie::of(const plan::Sheet& sheet, const std::string& gridCrs) {
    SheetLie lie(sheet.placement);
    if (sheet.crs == gridCrs) {
        return lie;
    }
    auto link = geodesy::PlaneLink::between(sheet.crs, gridCrs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    if (!link->isIdentity()) {
        lie.link_ = std::make_shared<const geodesy::PlaneLink>(std::move(*link));
    }
    return lie;
}

geodesy::PlanePoint SheetLie::onGrid(Spot raster) const {
    const geodesy::PlanePoint own = plan::onGrid(placement_, raster.x, raster.y);
    return link_ ? link_->forward(own).value_or(geodesy::PlanePoint{Metres(kNowhere), Metres(kNowhere)}) : own;
}

Spot SheetLie::inRaster(geodesy::PlanePoint onGrid) const {
    const auto own = link_ ? link_->inverse(onGrid) : Result<geodesy::PlanePoint>(onGrid);
    if (!own) {
        return {kNowhere, kNowhere};
    }
    const plan::RasterSpot spot = plan::inRaster(placement_, *own);
    return {spot.column, spot.row};
}

}  // namespace crosstick::table
