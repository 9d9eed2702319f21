#include "core/geodesy/proj_handles.h"

#include <cmath>

#include <fmt/format.h>

#include "core/geodesy/faults.h"

namespace crosstick::geodesy {
namespace {

/// The horizontal part of a compound CRS; anything else as it is.
Pj horizontal(PJ_CONTEXT* context, Pj crs) {
    if (crs && proj_get_type(crs.get()) == PJ_TYPE_COMPOUND_CRS) {
        return Pj(proj_crs_get_sub_crs(context, crs.get(), 0));
    }
    return crs;
}

}  // namespace

Context newContext() {
    Context context(proj_context_create());
    proj_context_set_enable_network(context.get(), 0);
    proj_log_level(context.get(), PJ_LOG_NONE);
    return context;
}

std::string textOrEmpty(const char* text) {
    return text == nullptr ? std::string{} : std::string(text);
}

Pj withoutBounds(PJ_CONTEXT* context, const PJ* crs) {
    Pj plain(proj_clone(context, crs));
    while (plain && proj_get_type(plain.get()) == PJ_TYPE_BOUND_CRS) {
        plain.reset(proj_get_source_crs(context, plain.get()));
    }
    return plain;
}

std::string shortened(const std::string& crs) {
    return crs.size() > 60 ? fmt::format("{}...", std::string_view(crs).substr(0, 57)) : crs;
}

Result<Pj> anyCrs(PJ_CONTEXT* context, const std::string& text) {
    Pj crs = horizontal(context, Pj(proj_create(context, text.c_str())));
    if (!crs || proj_is_crs(crs.get()) == 0) {
        return fail(kUnknownCrs, {{"crs", shortened(text)}});
    }
    return crs;
}

Result<Pj> projected(PJ_CONTEXT* context, const std::string& text) {
    auto crs = anyCrs(context, text);
    if (!crs) {
        return crs;
    }
    const Pj plain = withoutBounds(context, crs->get());
    if (!plain || proj_get_type(plain.get()) != PJ_TYPE_PROJECTED_CRS) {
        return fail(kCrsNotProjected, {{"crs", textOrEmpty(proj_get_name(crs->get()))}});
    }
    return crs;
}

double metresPerUnitOf(PJ_CONTEXT* context, const PJ* crs) {
    const Pj plain = withoutBounds(context, crs);
    const Pj axes(proj_crs_get_coordinate_system(context, plain.get()));
    double factor = 1;
    if (axes) {
        proj_cs_get_axis_info(context, axes.get(), 0, nullptr, nullptr, nullptr, &factor, nullptr, nullptr, nullptr);
    }
    return factor > 0 ? factor : 1;
}

Pj operation(PJ_CONTEXT* context, const PJ* from, const PJ* to) {
    Pj raw(proj_create_crs_to_crs_from_pj(context, from, to, nullptr, nullptr));
    return raw ? Pj(proj_normalize_for_visualization(context, raw.get())) : nullptr;
}

bool isGood(const PJ_COORD& c) {
    return std::isfinite(c.xy.x) && std::isfinite(c.xy.y) && std::abs(c.xy.x) < 1e15 && std::abs(c.xy.y) < 1e15;
}

}  // namespace crosstick::geodesy
