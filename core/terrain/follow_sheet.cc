#include "core/terrain/follow_sheet.h"

#include "core/geodesy/crs.h"
#include "core/terrain/faults.h"

namespace crosstick::terrain {
namespace {

Result<FollowedGround> followOn(const SheetCopy& laid, const std::string& planeCrs, const Clicks& clicks,
                                const std::optional<Vein>& like) {
    const plan::Sheet& sheet = laid.sheet;
    auto raster = sheets::Raster::open(laid.copy);
    if (!raster) {
        return tl::unexpected(raster.error());
    }
    const auto link = geodesy::PlaneLink::between(planeCrs, sheet.crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    const auto start = link->forward(clicks.from);
    const auto end = link->forward(clicks.to);
    if (!start || !end) {
        return tl::unexpected(start ? end.error() : start.error());
    }
    const SheetPicture picture(std::move(*raster));
    auto found = followedLine(PrintedGround{picture, sheet.placement, sheet.scale, clicks.hand}, *start, *end, like);
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

}  // namespace

Result<FollowedGround> followOnSheets(const std::vector<SheetCopy>& sheets, const std::string& planeCrs,
                                      const Clicks& clicks, const std::optional<Vein>& like) {
    Error why{kOffPicture, {}};  // what a sheet that shows the place said, if one does
    for (const SheetCopy& sheet : sheets) {
        auto found = followOn(sheet, planeCrs, clicks, like);
        if (found) {
            return found;
        }
        if (why.fault == kOffPicture) {
            why = found.error();
        }
    }
    return tl::unexpected(std::move(why));
}

}  // namespace crosstick::terrain
