#include "ui/table/rim_figures.h"

#include <array>
#include <cmath>
#include <cstdint>

#include <fmt/format.h>

namespace crosstick::table {
namespace {

/// How many lines apart figures stand: 1, 2, 5, 10, 20 ...
double stepOver(double least) {
    constexpr std::array kSteps{1.0, 2.0, 5.0};
    for (double decade = 1; decade < 1e9; decade *= 10) {
        for (const double step : kSteps) {
            if (step * decade >= least) {
                return step * decade;
            }
        }
    }
    return 1e9;
}

}  // namespace

std::string principalFigures(Metres line, Metres printed) {
    // A square of 100 km is what the letters name; what is left of the coordinate is counted in printed lines.
    constexpr Metres kSquare{100000};
    const auto lines = std::llround(line / printed);
    const auto inSquare = std::max<std::int64_t>(1, std::llround(kSquare / printed));
    const auto digits = static_cast<int>(std::lround(std::log10(static_cast<double>(inSquare))));
    const auto rest = ((lines % inSquare) + inSquare) % inSquare;
    return fmt::format("{:0{}}", rest, std::max(1, digits));
}

RimFigures rimFigures(const View& view, Metres printed, double closest) {
    RimFigures figures;
    const double apart = printed.value() * view.zoom().value();
    figures.interval = printed * stepOver(apart > 0 ? closest / apart : 1);
    const double step = figures.interval.value();
    const GridBox seen = view.seen();
    for (double n = std::ceil(seen.southWest.easting.value() / step); n * step <= seen.northEast.easting.value(); ++n) {
        const Metres line(n * step);
        figures.eastings.push_back(
            {line, view.spot({line, seen.southWest.northing}).x, principalFigures(line, printed)});
    }
    for (double n = std::ceil(seen.southWest.northing.value() / step); n * step <= seen.northEast.northing.value();
         ++n) {
        const Metres line(n * step);
        figures.northings.push_back(
            {line, view.spot({seen.southWest.easting, line}).y, principalFigures(line, printed)});
    }
    return figures;
}

}  // namespace crosstick::table
