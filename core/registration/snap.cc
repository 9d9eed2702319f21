#include "core/registration/snap.h"

#include <array>

#include "core/registration/crossing_finder.h"

namespace crosstick::registration {
namespace {

constexpr double kLean = 0.08;  // of lines whose direction nobody knows yet
// Nobody knows either how dark they are: what is looked for as faint is placed badly where it is dark.
constexpr std::array kContrasts{120.0, 60.0, 30.0, kFaintest};

Result<std::optional<CrossingTrace>> traced(const GreyPicture& picture, const CrossSight& sight, const Reach& reach,
                                            double contrast) {
    return traceLines(picture, sight, reach, contrast)
        .and_then([&](const CrossLines& rough) -> Result<std::optional<CrossingTrace>> {
            if (!rough.east || !rough.north) {
                return std::optional<CrossingTrace>();
            }
            const std::array lines{*rough.east, *rough.north};
            return traceCrossing(picture, sight, reach, lookOf(lines));
        });
}

}  // namespace

Result<std::optional<PixelPoint>> crossingNear(const GreyPicture& picture, const CrossSight& sight, double reach) {
    for (const double contrast : kContrasts) {
        const auto trace = traced(picture, sight, {reach, 0, kLean}, contrast);
        if (!trace) {
            return tl::unexpected(trace.error());
        }
        if (*trace && (*trace)->confidence >= kSure) {
            return std::optional((*trace)->at);
        }
    }
    return std::optional<PixelPoint>();
}

}  // namespace crosstick::registration
