#include "core/terrain/follow_sheet.h"

#include "core/geodesy/crs.h"

namespace crosstick::terrain {

Result<FollowedGround> followOnSheet(const std::filesystem::path& copy, const plan::Sheet& sheet,
                                     const std::string& planeCrs, geodesy::PlanePoint from, geodesy::PlanePoint to,
                                     const std::optional<Vein>& like) {
    auto raster = sheets::Raster::open(copy);
    if (!raster) {
        return tl::unexpected(raster.error());
    }
    const auto link = geodesy::PlaneLink::between(planeCrs, sheet.crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    const auto start = link->forward(from);
    const auto end = link->forward(to);
    if (!start || !end) {
        return tl::unexpected(start ? end.error() : start.error());
    }
    const SheetPicture picture(std::move(*raster));
    auto found = followedLine(PrintedGround{picture, sheet.placement, sheet.scale}, *start, *end, like);
    if (!found) {
        return found;
    }
    for (geodesy::PlanePoint& point : found->line) {
        const auto inPlan = link->inverse(point);
        if (!inPlan) {
            return tl::unexpected(inPlan.error());
        }
        point = *inPlan;
    }
    return found;
}

}  // namespace crosstick::terrain
