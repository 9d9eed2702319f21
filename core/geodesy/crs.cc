#include "core/geodesy/crs.h"

#include <array>

#include "core/geodesy/faults.h"
#include "core/geodesy/geodesic.h"
#include "core/geodesy/proj_handles.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

/// Datum names as a map's margin has them.
std::string shortDatum(const std::string& name) {
    struct Short {
        std::string_view inName, shortName;
    };
    constexpr std::array kShort{Short{"World Geodetic System 1984", "WGS 84"},
                                Short{"World Geodetic System 1972", "WGS 72"},
                                Short{"European Datum 1950", "ED50"},
                                Short{"North American Datum 1927", "NAD27"},
                                Short{"North American Datum 1983", "NAD83"},
                                Short{"European Terrestrial Reference System 1989", "ETRS89"},
                                Short{"Ordnance Survey of Great Britain 1936", "OSGB36"},
                                Short{"Deutsches Hauptdreiecksnetz", "DHDN"},
                                Short{"Geocentric Datum of Australia 1994", "GDA94"},
                                Short{"Geocentric Datum of Australia 2020", "GDA2020"}};
    for (const Short& known : kShort) {
        if (name.find(known.inName) != std::string::npos) {
            return std::string(known.shortName);
        }
    }
    return name;
}

/// "UTM zone 25N" is what PROJ calls the conversion.
std::optional<Zone> utmOf(const std::string& conversion) {
    constexpr std::string_view kStart = "UTM zone ";
    if (!conversion.starts_with(kStart) || conversion.size() < kStart.size() + 2) {
        return std::nullopt;
    }
    const auto number = parseWhole(conversion.substr(kStart.size(), conversion.size() - kStart.size() - 1));
    const char side = conversion.back();
    if (!number || *number < 1 || *number > 60 || (side != 'N' && side != 'S')) {
        return std::nullopt;
    }
    return Zone{static_cast<int>(*number), side == 'N' ? Hemisphere::North : Hemisphere::South};
}

CrsFacts factsOf(PJ_CONTEXT* context, const PJ* crs) {
    const Pj plain = withoutBounds(context, crs);
    CrsFacts facts;
    facts.name = textOrEmpty(proj_get_name(plain.get()));
    const std::string code = textOrEmpty(proj_get_id_code(plain.get(), 0));
    if (!code.empty()) {
        facts.authority = textOrEmpty(proj_get_id_auth_name(plain.get(), 0)) + ":" + code;
    }
    const Pj datum(proj_crs_get_datum_forced(context, plain.get()));
    const std::string datumName = datum ? textOrEmpty(proj_get_name(datum.get())) : std::string{};
    facts.datum = shortDatum(datumName);
    facts.onWgs84 = facts.datum == "WGS 84";
    const Pj ellipsoid(proj_get_ellipsoid(context, plain.get()));
    facts.ellipsoid = ellipsoid ? textOrEmpty(proj_get_name(ellipsoid.get())) : std::string{};
    const Pj conversion(proj_crs_get_coordoperation(context, plain.get()));
    if (conversion) {
        facts.utm = utmOf(textOrEmpty(proj_get_name(conversion.get())));
        const char* method = nullptr;
        proj_coordoperation_get_method_info(context, conversion.get(), &method, nullptr, nullptr);
        facts.projection = textOrEmpty(method);
    }
    if (facts.utm) {
        facts.projection = "UTM zone " + std::to_string(facts.utm->number) +
                           (facts.utm->hemisphere == Hemisphere::North ? " north" : " south");
    }
    facts.metresPerUnit = metresPerUnitOf(context, crs);
    return facts;
}

/// UPS on WGS 84 with easting first, for which GeographicLib answers too.
std::optional<Zone> gridZoneOf(const CrsFacts& facts) {
    if (!facts.onWgs84) {
        return std::nullopt;
    }
    if (facts.authority == "EPSG:5041") {
        return Zone{0, Hemisphere::North};
    }
    if (facts.authority == "EPSG:5042") {
        return Zone{0, Hemisphere::South};
    }
    return facts.utm;
}

/// One of crsOfZone's own: known to be projected without asking PROJ, whose opening of its tables costs a millisecond.
bool isZoneCrs(const std::string& crs) {
    constexpr std::string_view kEpsg = "EPSG:";
    const auto code = crs.starts_with(kEpsg) ? parseWhole(std::string_view(crs).substr(kEpsg.size())) : std::nullopt;
    if (!code || crs.size() != kEpsg.size() + 5 - (*code < 10000 ? 1 : 0)) {
        return false;
    }
    return *code == 5041 || *code == 5042 || (*code > 32600 && *code <= 32660) || (*code > 32700 && *code <= 32760);
}

}  // namespace

Result<CrsFacts> describeCrs(const std::string& crs) {
    const Context context = newContext();
    return projected(context.get(), crs).map([&](const Pj& pj) { return factsOf(context.get(), pj.get()); });
}

std::string crsOfZone(Zone zone) {
    const bool north = zone.hemisphere == Hemisphere::North;
    if (zone.number == 0) {
        return north ? "EPSG:5041" : "EPSG:5042";
    }
    return "EPSG:" + std::to_string((north ? 32600 : 32700) + zone.number);
}

struct PlaneLink::Parts {
    Context context;
    Pj operation;  ///< null: both planes are the same
    double fromUnit = 1, toUnit = 1;

    [[nodiscard]] Result<PlanePoint> run(PlanePoint p, PJ_DIRECTION direction) const {
        if (!operation) {
            return p;
        }
        const double in = direction == PJ_FWD ? fromUnit : toUnit;
        const double out = direction == PJ_FWD ? toUnit : fromUnit;
        const PJ_COORD c = proj_trans(operation.get(), direction,
                                      proj_coord(p.easting.value() / in, p.northing.value() / in, 0, HUGE_VAL));
        if (!isGood(c)) {
            return fail(kOutsidePlane,
                        {{"easting", numberText(p.easting.value())}, {"northing", numberText(p.northing.value())}});
        }
        return PlanePoint{Metres(c.xy.x * out), Metres(c.xy.y * out)};
    }

    // A change of datum runs through space, where a point of height 0 comes out with another height; the way back
    // starts from height 0 again and so ends up to 1.3 mm beside where the point came from. One step of correction
    // closes it.
    [[nodiscard]] Result<PlanePoint> back(PlanePoint p) const {
        auto rough = run(p, PJ_INV);
        const auto again = rough ? run(*rough, PJ_FWD) : rough;
        if (!again) {
            return rough;
        }
        return run({p.easting + (p.easting - again->easting), p.northing + (p.northing - again->northing)}, PJ_INV);
    }
};

PlaneLink::PlaneLink(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
PlaneLink::PlaneLink(PlaneLink&&) noexcept = default;
PlaneLink& PlaneLink::operator=(PlaneLink&&) noexcept = default;
PlaneLink::~PlaneLink() = default;

Result<PlaneLink> PlaneLink::between(const std::string& from, const std::string& to) {
    auto parts = std::make_unique<Parts>();
    if (from == to && isZoneCrs(from)) {
        return PlaneLink(std::move(parts));
    }
    parts->context = newContext();
    PJ_CONTEXT* context = parts->context.get();
    auto source = projected(context, from);
    if (!source) {
        return tl::unexpected(source.error());
    }
    if (from == to) {
        return PlaneLink(std::move(parts));
    }
    auto target = projected(context, to);
    if (!target) {
        return tl::unexpected(target.error());
    }
    parts->fromUnit = metresPerUnitOf(context, source->get());
    parts->toUnit = metresPerUnitOf(context, target->get());
    const bool same = proj_is_equivalent_to_with_ctx(context, source->get(), target->get(), PJ_COMP_EQUIVALENT) != 0;
    if (!same) {
        parts->operation = operation(context, source->get(), target->get());
        if (!parts->operation) {
            return fail(kNoTransformation, {{"from", shortened(from)}, {"to", shortened(to)}});
        }
    }
    return PlaneLink(std::move(parts));
}

Result<PlanePoint> PlaneLink::forward(PlanePoint point) const {
    return parts_->run(point, PJ_FWD);
}
Result<PlanePoint> PlaneLink::inverse(PlanePoint point) const {
    return parts_->back(point);
}
bool PlaneLink::isIdentity() const {
    return !parts_->operation;
}

PlaneLink::Operation PlaneLink::operationAt(PlanePoint point) const {
    if (isIdentity() || !forward(point)) {
        return {};
    }
    const Pj used(proj_trans_get_last_used_operation(parts_->operation.get()));
    if (!used) {
        return {};
    }
    const double accuracy = proj_coordoperation_get_accuracy(parts_->context.get(), used.get());
    return {textOrEmpty(proj_pj_info(used.get()).description),
            accuracy >= 0 ? std::optional(Metres(accuracy)) : std::nullopt};
}

struct Plane::Parts {
    Context context;
    std::string crs;
    CrsFacts facts;
    std::optional<Zone> zone;  ///< where GeographicLib answers
    Pj toGeographic;           ///< else PROJ does

    [[nodiscard]] Result<PlanePoint> fromGeographic(GeoPoint point) const {
        const PJ_COORD c = proj_trans(toGeographic.get(), PJ_INV,
                                      proj_coord(point.longitude.value(), point.latitude.value(), 0, HUGE_VAL));
        if (!isGood(c)) {
            return fail(kOutsidePlane, {{"easting", numberText(point.longitude.value())},
                                        {"northing", numberText(point.latitude.value())}});
        }
        return PlanePoint{Metres(c.xy.x * facts.metresPerUnit), Metres(c.xy.y * facts.metresPerUnit)};
    }
};

Plane::Plane(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Plane::Plane(Plane&&) noexcept = default;
Plane& Plane::operator=(Plane&&) noexcept = default;
Plane::~Plane() = default;

Result<Plane> Plane::of(const std::string& crs) {
    auto parts = std::make_unique<Parts>();
    parts->context = newContext();
    PJ_CONTEXT* context = parts->context.get();
    auto pj = projected(context, crs);
    if (!pj) {
        return tl::unexpected(pj.error());
    }
    parts->crs = crs;
    parts->facts = factsOf(context, pj->get());
    parts->zone = gridZoneOf(parts->facts);
    if (!parts->zone) {
        const Pj wgs84(proj_create(context, "EPSG:4326"));
        parts->toGeographic = operation(context, pj->get(), wgs84.get());
        if (!parts->toGeographic) {
            return fail(kNoTransformation, {{"from", shortened(crs)}, {"to", std::string("WGS 84")}});
        }
    }
    return Plane(std::move(parts));
}

const CrsFacts& Plane::facts() const {
    return parts_->facts;
}
const std::string& Plane::crs() const {
    return parts_->crs;
}

Result<GeoPoint> Plane::geographic(PlanePoint point) const {
    if (parts_->zone) {
        return geodesy::geographic({*parts_->zone, point});
    }
    const double unit = parts_->facts.metresPerUnit;
    const PJ_COORD c = proj_trans(parts_->toGeographic.get(), PJ_FWD,
                                  proj_coord(point.easting.value() / unit, point.northing.value() / unit, 0, HUGE_VAL));
    if (!isGood(c)) {
        return fail(kOutsidePlane,
                    {{"easting", numberText(point.easting.value())}, {"northing", numberText(point.northing.value())}});
    }
    return GeoPoint{Degrees(c.xy.y), Degrees(c.xy.x)};
}

Result<PlanePoint> Plane::plane(GeoPoint point) const {
    if (parts_->zone) {
        return gridPoint(point, *parts_->zone).map([](const GridPoint& grid) { return grid.at; });
    }
    auto rough = parts_->fromGeographic(point);
    const auto again = rough ? geographic(*rough) : fail(kOutsidePlane);
    if (!again) {
        return rough;
    }
    // As with PlaneLink: one step closes what heights leave open where the datum changes.
    const Degrees turn(std::remainder((point.longitude - again->longitude).value(), 360));
    return parts_->fromGeographic({point.latitude + (point.latitude - again->latitude), point.longitude + turn});
}

Result<PlaneFactors> Plane::factors(PlanePoint point) const {
    if (parts_->zone) {
        return geodesy::factors({*parts_->zone, point});
    }
    const auto middle = geographic(point);
    if (!middle) {
        return tl::unexpected(middle.error());
    }
    constexpr Degrees kStep{0.001};
    const GeoPoint southOf{middle->latitude - kStep, middle->longitude};
    const GeoPoint northOf{middle->latitude + kStep, middle->longitude};
    const auto from = plane(southOf);
    const auto to = plane(northOf);
    if (!from || !to) {
        return tl::unexpected(from ? to.error() : from.error());
    }
    const double east = (to->easting - from->easting).value();
    const double north = (to->northing - from->northing).value();
    // The meridian's bearing in the grid is minus the convergence.
    return PlaneFactors{-degrees(Radians(std::atan2(east, north))),
                        std::hypot(east, north) / geodesic(southOf, northOf).distance.value()};
}

Result<GridPoint> Plane::grid(PlanePoint point) const {
    if (parts_->zone) {
        return GridPoint{*parts_->zone, point};
    }
    return geographic(point).and_then([](GeoPoint place) { return gridPoint(place); });
}

}  // namespace crosstick::geodesy
