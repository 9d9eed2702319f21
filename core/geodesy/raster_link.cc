#include "core/geodesy/raster_link.h"

#include <cmath>

#include "core/geodesy/faults.h"
#include "core/geodesy/proj_handles.h"

namespace crosstick::geodesy {
namespace {

constexpr double kMeanRadius = 6371008.8;  // m, IUGG

bool isGeographic(PJ_CONTEXT* context, const PJ* crs) {
    const Pj plain = withoutBounds(context, crs);
    const PJ_TYPE type = plain ? proj_get_type(plain.get()) : PJ_TYPE_UNKNOWN;
    return type == PJ_TYPE_GEOGRAPHIC_2D_CRS || type == PJ_TYPE_GEOGRAPHIC_3D_CRS;
}

/// Radians in a unit of a geographic CRS's axes: degrees mostly, grads on old French maps.
double radiansPerUnitOf(PJ_CONTEXT* context, const PJ* crs) {
    return metresPerUnitOf(context, crs);  // PROJ gives the factor to the SI unit of whatever the axis counts
}

}  // namespace

struct RasterLink::Parts {
    Context context;
    Pj operation;  ///< null: the raster lies in the plane itself
    double planeUnit = 1;
    double rasterUnit = 1;  ///< metres or radians of the raster's axes
    bool geographic = false;
};

RasterLink::RasterLink(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
RasterLink::RasterLink(RasterLink&&) noexcept = default;
RasterLink& RasterLink::operator=(RasterLink&&) noexcept = default;
RasterLink::~RasterLink() = default;

Result<RasterLink> RasterLink::between(const std::string& plane, const std::string& raster) {
    auto parts = std::make_unique<Parts>();
    parts->context = newContext();
    PJ_CONTEXT* context = parts->context.get();
    const auto from = projected(context, plane);
    if (!from) {
        return tl::unexpected(from.error());
    }
    const auto to = anyCrs(context, raster);
    if (!to) {
        return tl::unexpected(to.error());
    }
    parts->planeUnit = metresPerUnitOf(context, from->get());
    parts->geographic = isGeographic(context, to->get());
    parts->rasterUnit = parts->geographic ? radiansPerUnitOf(context, to->get()) : metresPerUnitOf(context, to->get());
    if (plane != raster) {
        parts->operation = operation(context, from->get(), to->get());
        if (!parts->operation) {
            return fail(kNoTransformation, {{"from", shortened(plane)}, {"to", shortened(raster)}});
        }
    }
    return RasterLink(std::move(parts));
}

std::optional<std::array<double, 2>> RasterLink::numbersAt(PlanePoint point) const {
    const double x = point.easting.value() / parts_->planeUnit;
    const double y = point.northing.value() / parts_->planeUnit;
    if (!parts_->operation) {
        return std::array{x, y};
    }
    const PJ_COORD c = proj_trans(parts_->operation.get(), PJ_FWD, proj_coord(x, y, 0, HUGE_VAL));
    return isGood(c) ? std::optional(std::array{c.xy.x, c.xy.y}) : std::nullopt;
}

std::array<Metres, 2> RasterLink::unitAt(std::array<double, 2> numbers) const {
    if (!parts_->geographic) {
        return {Metres(parts_->rasterUnit), Metres(parts_->rasterUnit)};
    }
    const double north = kMeanRadius * parts_->rasterUnit;
    return {Metres(north * std::cos(numbers[1] * parts_->rasterUnit)), Metres(north)};
}

}  // namespace crosstick::geodesy
