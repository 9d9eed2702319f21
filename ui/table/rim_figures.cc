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
    double decade = 1;
    while (decade < 1e9) {
        for (const double step : kSteps) {
            if (step * decade >= least) {
                return step * decade;
            }
        }
        decade *= 10;
    }
    return decade;
}

std::vector<Metres> linesBetween(Metres low, Metres high, Metres interval) {
    std::vector<Metres> lines;
    const auto last = static_cast<std::int64_t>(std::floor(high / interval));
    for (auto n = static_cast<std::int64_t>(std::ceil(low / interval)); n <= last; ++n) {
        lines.push_back(interval * static_cast<double>(n));
    }
    return lines;
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
    const GridBox seen = view.seen();
    for (const Metres line : linesBetween(seen.southWest.easting, seen.northEast.easting, figures.interval)) {
        figures.eastings.push_back(
            {line, view.spot({line, seen.southWest.northing}).x, principalFigures(line, printed)});
    }
    for (const Metres line : linesBetween(seen.southWest.northing, seen.northEast.northing, figures.interval)) {
        figures.northings.push_back(
            {line, view.spot({seen.southWest.easting, line}).y, principalFigures(line, printed)});
    }
    return figures;
}

}  // namespace crosstick::table
