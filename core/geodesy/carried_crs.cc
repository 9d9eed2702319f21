#include "core/geodesy/carried_crs.h"

#include <array>
#include <cmath>

#include <proj.h>

#include "core/geodesy/crs.h"
#include "core/geodesy/faults.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

struct FreeContext {
    void operator()(PJ_CONTEXT* context) const { proj_context_destroy(context); }
};
struct FreePj {
    void operator()(PJ* pj) const { proj_destroy(pj); }
};
using Pj = std::unique_ptr<PJ, FreePj>;

std::string wktOf(PJ_CONTEXT* context, const PJ* crs) {
    const std::array options{"MULTILINE=NO", static_cast<const char*>(nullptr)};
    const char* wkt = proj_as_wkt(context, crs, PJ_WKT1_ESRI, options.data());
    return wkt == nullptr ? std::string{} : std::string(wkt);
}

int epsgOf(const CrsFacts& facts) {
    constexpr std::string_view kEpsg = "EPSG:";
    if (!facts.authority.starts_with(kEpsg)) {
        return 0;
    }
    return static_cast<int>(parseWhole(std::string_view(facts.authority).substr(kEpsg.size())).value_or(0));
}

}  // namespace

Result<CarriedCrs> carriedCrs(const std::string& crs, const std::vector<PlanePoint>& points) {
    const auto facts = describeCrs(crs);
    if (!facts) {
        return tl::unexpected(facts.error());
    }
    const std::unique_ptr<PJ_CONTEXT, FreeContext> context(proj_context_create());
    proj_context_set_enable_network(context.get(), 0);
    proj_log_level(context.get(), PJ_LOG_NONE);
    Pj plane(proj_create(context.get(), crs.c_str()));
    if (proj_get_type(plane.get()) == PJ_TYPE_COMPOUND_CRS) {
        plane.reset(proj_crs_get_sub_crs(context.get(), plane.get(), 0));
    }
    if (proj_get_type(plane.get()) == PJ_TYPE_BOUND_CRS) {
        plane.reset(proj_get_source_crs(context.get(), plane.get()));
    }
    CarriedCrs carried{wktOf(context.get(), plane.get()), epsgOf(*facts), {}};
    const Pj base(proj_crs_get_geodetic_crs(context.get(), plane.get()));
    const Pj raw(proj_create_crs_to_crs_from_pj(context.get(), plane.get(), base.get(), nullptr, nullptr));
    const Pj way(raw ? proj_normalize_for_visualization(context.get(), raw.get()) : nullptr);
    if (!way) {
        return fail(kUnknownCrs, {{"crs", facts->name}});
    }
    for (const PlanePoint& point : points) {
        const PJ_COORD c = proj_trans(way.get(), PJ_FWD,
                                      proj_coord(point.easting.value() / facts->metresPerUnit,
                                                 point.northing.value() / facts->metresPerUnit, 0, HUGE_VAL));
        if (!std::isfinite(c.xy.x) || !std::isfinite(c.xy.y)) {
            return fail(kOutsidePlane, {{"easting", numberText(point.easting.value())},
                                        {"northing", numberText(point.northing.value())}});
        }
        carried.points.push_back({Degrees(c.xy.y), Degrees(c.xy.x)});
    }
    return carried;
}

}  // namespace crosstick::geodesy
