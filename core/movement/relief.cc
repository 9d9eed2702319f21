#include "core/movement/relief.h"

#include <cmath>

#include "core/geodesy/plane_angles.h"

namespace crosstick::movement {
namespace {

constexpr double kStep = 25;          // metres
constexpr double kMostSamples = 1e5;  // a line of 2,500 km: beyond that the step grows

}  // namespace

std::optional<Relief> reliefBetween(geodesy::PlanePoint fromInPlan, geodesy::PlanePoint toInPlan, Metres ground,
                                    const sheets::HeightSource& heights) {
    const double length = geodesy::planeDistance(fromInPlan, toInPlan).value();
    if (!std::isfinite(length)) {
        return std::nullopt;
    }
    const int steps = static_cast<int>(std::min(kMostSamples, std::max(1.0, std::ceil(length / kStep))));
    auto before = heights.heightAt(fromInPlan);
    if (!before) {
        return std::nullopt;
    }
    Relief relief{};
    relief.heights.push_back(*before);
    const Metres run = ground / steps;
    for (int n = 1; n <= steps; ++n) {
        const double share = static_cast<double>(n) / steps;
        const auto now = heights.heightAt({fromInPlan.easting + (toInPlan.easting - fromInPlan.easting) * share,
                                           fromInPlan.northing + (toInPlan.northing - fromInPlan.northing) * share});
        if (!now) {
            return std::nullopt;
        }
        const Metres rise = *now - *before;
        (rise.value() >= 0 ? relief.climb : relief.descent) += abs(rise);
        relief.slope += Metres(std::hypot(run.value(), rise.value()));
        if (run.value() > 0 && std::abs(rise / run) > std::abs(relief.steepest.slope)) {
            relief.steepest = {rise / run, run * (n - 0.5)};
        }
        relief.heights.push_back(*now);
        before = now;
    }
    return relief;
}

}  // namespace crosstick::movement
