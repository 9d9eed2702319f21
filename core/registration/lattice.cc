#include "core/registration/lattice.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace crosstick::registration {
namespace {

constexpr double kNarrowest = 40;  // pixels between lines: closer ones are an interval too small for the sheet

bool standOn(std::span<const Mark> marks, Metres interval) {
    constexpr double kNear = 0.001;  // of an interval
    const auto isWhole = [&](Metres at) { return std::abs(std::remainder(at / interval, 1.0)) < kNear; };
    return std::all_of(marks.begin(), marks.end(),
                       [&](const Mark& mark) { return isWhole(mark.place.easting) && isWhole(mark.place.northing); });
}

}  // namespace

Lattice gridLattice(Metres interval) {
    return {[interval](LatticePoint at) {
                return std::optional(geodesy::PlanePoint{interval * at.east, interval * at.north});
            },
            [interval](geodesy::PlanePoint place) {
                return std::optional(LatticePoint{place.easting / interval, place.northing / interval});
            }};
}

std::vector<Metres> intervalsOf(std::span<const Mark> marks, const Model& model) {
    constexpr std::array kLikeliest{1000.0, 10000.0, 2000.0, 5000.0, 500.0, 250.0, 200.0, 100.0};
    std::vector<Metres> intervals;
    for (const double interval : kLikeliest) {
        if (!marks.empty() && interval >= kNarrowest * model.stepAt(marks.front().at).metres() &&
            standOn(marks, Metres(interval))) {
            intervals.emplace_back(interval);
        }
    }
    return intervals;
}

}  // namespace crosstick::registration
