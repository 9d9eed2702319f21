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

GridLines uprightLines(const View& view) {
    const double turn = radians(view.up()).value();
    return std::abs(std::cos(turn)) >= std::abs(std::sin(turn)) ? GridLines::Eastings : GridLines::Northings;
}

double onRim(const View& view, GridLines lines, Metres coordinate) {
    const auto of = [lines](geodesy::PlanePoint p) { return lines == GridLines::Eastings ? p.easting : p.northing; };
    const Area& area = view.area();
    const bool isAbove = lines == uprightLines(view);
    // Along a straight edge a coordinate of the grid grows evenly.
    const Metres first = of(view.place({area.left, area.top}));
    const Metres last = of(view.place(isAbove ? Spot{area.right(), area.top} : Spot{area.left, area.bottom()}));
    const double share = (coordinate - first) / (last - first);
    return isAbove ? area.left + share * area.width : area.top + share * area.height;
}

RimFigures rimFigures(const View& view, Metres printed, double closest) {
    RimFigures figures;
    figures.above = uprightLines(view);
    const double apart = printed.value() * view.zoom().value();
    figures.interval = printed * stepOver(apart > 0 ? closest / apart : 1);
    const GridBox seen = view.seen();
    const Area& area = view.area();
    const auto put = [&](GridLines kind, Metres line, geodesy::PlanePoint from, geodesy::PlanePoint to) {
        figures.lines.push_back({kind, view.spot(from), view.spot(to)});
        const bool isAbove = kind == figures.above;
        const double at = onRim(view, kind, line);
        const double low = isAbove ? area.left : area.top;
        const double high = isAbove ? area.right() : area.bottom();
        if (at >= low - 1e-6 && at <= high + 1e-6) {
            (isAbove ? figures.upper : figures.left).push_back({line, at, principalFigures(line, printed)});
        }
    };
    for (const Metres line : linesBetween(seen.southWest.easting, seen.northEast.easting, figures.interval)) {
        put(GridLines::Eastings, line, {line, seen.southWest.northing}, {line, seen.northEast.northing});
    }
    for (const Metres line : linesBetween(seen.southWest.northing, seen.northEast.northing, figures.interval)) {
        put(GridLines::Northings, line, {seen.southWest.easting, line}, {seen.northEast.easting, line});
    }
    return figures;
}

}  // namespace crosstick::table
