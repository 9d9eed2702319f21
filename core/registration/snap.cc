#include "core/registration/snap.h"

#include <array>

#include "core/registration/crossing_finder.h"

namespace crosstick::registration {
namespace {

constexpr double kLean = 0.08;  // of lines whose direction nobody knows yet
// The arms of a tick that somebody drew are shorter than an interval.
constexpr std::array kArms{1.0, 0.4};
constexpr double kShortest = 60;  // pixels of an interval: with less, letters have arms as long
constexpr double kSurer = 0.85;   // a letter on a line looks like a tick
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
    for (const double share : kArms) {
        const CrossSight part{
            sight.at, {sight.east.x * share, sight.east.y * share}, {sight.north.x * share, sight.north.y * share}};
        if (share < 1 && part.spacing() < kShortest) {
            break;
        }
        for (const double contrast : kContrasts) {
            const auto trace = traced(picture, part, {reach, 0, kLean}, contrast);
            if (!trace) {
                return tl::unexpected(trace.error());
            }
            if (*trace && (*trace)->confidence >= (share < 1 ? kSurer : kSure)) {
                return std::optional((*trace)->at);
            }
        }
    }
    return std::optional<PixelPoint>();
}

}  // namespace crosstick::registration
