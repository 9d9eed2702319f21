#include "core/geodesy/graticule.h"

#include <numbers>

#include "core/geodesy/faults.h"
#include "core/geodesy/proj_handles.h"

namespace crosstick::geodesy {

struct Graticule::Parts {
    Context context;
    Pj operation;          ///< from degrees to the plane
    double planeUnit = 1;  ///< metres
    double angleUnit = 1;  ///< degrees: grads on old French maps
};

Graticule::Graticule(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Graticule::Graticule(Graticule&&) noexcept = default;
Graticule& Graticule::operator=(Graticule&&) noexcept = default;
Graticule::~Graticule() = default;

Result<Graticule> Graticule::of(const std::string& crs) {
    auto parts = std::make_unique<Parts>();
    parts->context = newContext();
    PJ_CONTEXT* context = parts->context.get();
    const auto plane = projected(context, crs);
    if (!plane) {
        return tl::unexpected(plane.error());
    }
    const Pj plain = withoutBounds(context, plane->get());
    const Pj angles(proj_crs_get_geodetic_crs(context, plain.get()));
    parts->operation = angles ? operation(context, angles.get(), plain.get()) : nullptr;
    if (!parts->operation) {
        return fail(kNoTransformation, {{"from", std::string("its latitudes")}, {"to", shortened(crs)}});
    }
    parts->planeUnit = metresPerUnitOf(context, plain.get());
    parts->angleUnit = metresPerUnitOf(context, angles.get()) * 180 / std::numbers::pi;  // PROJ's factor is to radians
    return Graticule(std::move(parts));
}

std::optional<PlanePoint> Graticule::plane(PrintedAngles place) const {
    const PJ_COORD c = proj_trans(parts_->operation.get(), PJ_FWD,
                                  proj_coord(place.longitude.value() / parts_->angleUnit,
                                             place.latitude.value() / parts_->angleUnit, 0, HUGE_VAL));
    return isGood(c) ? std::optional(PlanePoint{Metres(c.xy.x * parts_->planeUnit), Metres(c.xy.y * parts_->planeUnit)})
                     : std::nullopt;
}

std::optional<PrintedAngles> Graticule::angles(PlanePoint point) const {
    const PJ_COORD c = proj_trans(
        parts_->operation.get(), PJ_INV,
        proj_coord(point.easting.value() / parts_->planeUnit, point.northing.value() / parts_->planeUnit, 0, HUGE_VAL));
    return isGood(c)
               ? std::optional(PrintedAngles{Degrees(c.xy.y * parts_->angleUnit), Degrees(c.xy.x * parts_->angleUnit)})
               : std::nullopt;
}

}  // namespace crosstick::geodesy
