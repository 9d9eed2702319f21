#include "core/geodesy/datum_shift.h"

#include <algorithm>
#include <cmath>

#include "core/geodesy/faults.h"
#include "core/geodesy/proj_handles.h"

namespace crosstick::geodesy {
namespace {

struct FreeFactory {
    void operator()(PJ_OPERATION_FACTORY_CONTEXT* factory) const { proj_operation_factory_context_destroy(factory); }
};
struct FreeList {
    void operator()(PJ_OBJ_LIST* list) const { proj_list_destroy(list); }
};

constexpr double kNear = 0.01;  // degrees round the place that a way must serve

/// The first grid that an operation names and that is not installed.
std::string missingGridOf(PJ_CONTEXT* context, const PJ* operation) {
    for (int n = 0; n < proj_coordoperation_get_grid_used_count(context, operation); ++n) {
        const char* name = nullptr;
        const char* url = nullptr;
        int available = 0;
        proj_coordoperation_get_grid_used(context, operation, n, &name, nullptr, nullptr, &url, nullptr, nullptr,
                                          &available);
        if (available == 0 && name != nullptr) {
            return name;
        }
    }
    return {};
}

/// Adds what ways there would be if every grid were installed.
void addBetterWay(PJ_CONTEXT* context, const PJ* from, const PJ* to, const PJ_COORD& degrees, DatumWay& way) {
    const std::unique_ptr<PJ_OPERATION_FACTORY_CONTEXT, FreeFactory> factory(
        proj_create_operation_factory_context(context, nullptr));
    proj_operation_factory_context_set_area_of_interest(
        context, factory.get(), degrees.xy.x - kNear, degrees.xy.y - kNear, degrees.xy.x + kNear, degrees.xy.y + kNear);
    proj_operation_factory_context_set_grid_availability_use(context, factory.get(), PROJ_GRID_AVAILABILITY_IGNORED);
    proj_operation_factory_context_set_spatial_criterion(context, factory.get(),
                                                         PROJ_SPATIAL_CRITERION_PARTIAL_INTERSECTION);
    const std::unique_ptr<PJ_OBJ_LIST, FreeList> all(proj_create_operations(context, from, to, factory.get()));
    double best = way.accuracy ? way.accuracy->value() : HUGE_VAL;
    for (int n = 0; all && n < proj_list_get_count(all.get()); ++n) {
        const Pj one(proj_list_get(context, all.get(), n));
        const double accuracy = one ? proj_coordoperation_get_accuracy(context, one.get()) : -1;
        if (accuracy < 0 || accuracy >= best) {
            continue;
        }
        if (std::string grid = missingGridOf(context, one.get()); !grid.empty()) {
            way.missingGrid = std::move(grid);
            way.accuracyWithGrid = Metres(accuracy);
            best = accuracy;
        }
    }
}

/// Of a chain of steps only those that change the datum: "NAD27 to WGS 84 (7)".
std::string stepsBetweenDatums(const std::string& chain) {
    std::string steps;
    for (std::size_t at = 0; at < chain.size();) {
        const std::size_t end = std::min(chain.find(" + ", at), chain.size());
        const std::string step = chain.substr(at, end - at);
        if (step.find(" to ") != std::string::npos) {
            steps += (steps.empty() ? "" : ", then ") + step;
        }
        at = end + 3;
    }
    return steps.empty() ? chain : steps;
}

}  // namespace

Result<DatumWay> datumWay(const std::string& crs, PlanePoint at) {
    const Context context = newContext();
    const auto from = projected(context.get(), crs);
    if (!from) {
        return tl::unexpected(from.error());
    }
    const Pj wgs84(proj_create(context.get(), "EPSG:4326"));
    const Pj toWgs84 = operation(context.get(), from->get(), wgs84.get());
    if (!toWgs84) {
        return fail(kNoTransformation, {{"from", shortened(crs)}, {"to", std::string("WGS 84")}});
    }
    const double unit = metresPerUnitOf(context.get(), from->get());
    const PJ_COORD degrees = proj_trans(toWgs84.get(), PJ_FWD,
                                        proj_coord(at.easting.value() / unit, at.northing.value() / unit, 0, HUGE_VAL));
    if (!isGood(degrees)) {
        return fail(kOutsidePlane, {{"easting", std::to_string(at.easting.value())},
                                    {"northing", std::to_string(at.northing.value())}});
    }
    const Pj plain = withoutBounds(context.get(), from->get());
    const Pj base(proj_crs_get_geodetic_crs(context.get(), plain.get()));
    if (base && proj_is_equivalent_to_with_ctx(context.get(), base.get(), wgs84.get(),
                                               PJ_COMP_EQUIVALENT_EXCEPT_AXIS_ORDER_GEOGCRS) != 0) {
        return DatumWay{};
    }
    DatumWay way;
    const Pj used(proj_trans_get_last_used_operation(toWgs84.get()));
    if (used) {
        way.name = stepsBetweenDatums(textOrEmpty(proj_pj_info(used.get()).description));
        const double accuracy = proj_coordoperation_get_accuracy(context.get(), used.get());
        way.accuracy = accuracy >= 0 ? std::optional(Metres(accuracy)) : std::nullopt;
    }
    addBetterWay(context.get(), from->get(), wgs84.get(), degrees, way);
    return way;
}

}  // namespace crosstick::geodesy
