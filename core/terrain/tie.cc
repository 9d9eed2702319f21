#include "core/terrain/tie.h"

#include <array>
#include <cctype>
#include <cmath>

#include "core/geodesy/plane_angles.h"

namespace crosstick::terrain {
namespace {

constexpr std::array<std::string_view, 16> kWinds{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                                  "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};

}  // namespace

std::string tieWords(std::string_view thing, geodesy::PlanePoint from, geodesy::PlanePoint to) {
    // "the road junction", but "Road B": names have no article.
    const bool isName = !thing.empty() && std::isupper(static_cast<unsigned char>(thing.front())) != 0;
    const std::string named = (isName || thing.starts_with("the ") ? "" : "the ") + std::string(thing);
    const Metres distance = geodesy::planeDistance(from, to);
    if (!(geodesy::roundedDistance(distance) > Metres(0))) {
        return "at " + named;
    }
    const auto wind = std::lround(geodesy::planeAzimuth(from, to).value() / 22.5) % 16;
    return geodesy::distanceText(distance) + " m " + std::string(kWinds[static_cast<std::size_t>(wind)]) + " of " +
           named;
}

plan::Plan withTie(const plan::Plan& plan, const plan::ItemId& point, std::string tie) {
    const plan::MeasurePtr measure = plan.measure(point);
    if (!measure) {
        return plan;
    }
    plan::Measure tied = *measure;
    tied.tie = std::move(tie);
    return std::move(plan::PlanBuilder(plan).put(std::move(tied))).build();
}

}  // namespace crosstick::terrain
