#include "ui/details/grid_entry.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/geodesy/place_text.h"
#include "ui/details/faults.h"

namespace crosstick::details {
namespace {

constexpr double kFarthestOff = 1000;  ///< metres beyond the sheet's edge that are still meant

bool isFigures(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
        return std::isdigit(static_cast<unsigned char>(c)) != 0 || c == ' ';
    });
}

std::string withoutBlanks(std::string_view text) {
    std::string all;
    std::copy_if(text.begin(), text.end(), std::back_inserter(all), [](char c) { return c != ' '; });
    return all;
}

constexpr double kSquare = 100000;  ///< metres

struct Figures {
    std::string letters;  ///< of a 100 km square; empty where none are said
    std::string digits;
};

/// "4583 0845", "FL 4583 0845": nothing for any other writing.
std::optional<Figures> figuresOf(std::string_view text) {
    std::string all = withoutBlanks(text);
    Figures figures;
    if (all.size() > 2 && std::isalpha(static_cast<unsigned char>(all[0])) != 0 &&
        std::isalpha(static_cast<unsigned char>(all[1])) != 0) {
        for (const char letter : all.substr(0, 2)) {
            figures.letters += static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
        }
        all.erase(0, 2);
    }
    figures.digits = all;
    return isFigures(all) ? std::optional(figures) : std::nullopt;
}

/// What figures say of one coordinate: metres within its square, at the nearest such line to where one is.
Metres nearestLine(std::string_view half, Metres near, int squaresOff) {
    double within = 0;
    double step = kSquare;
    for (const char digit : half) {
        step /= 10;
        within += step * (digit - '0');
    }
    return Metres(std::round((near.value() - within) / kSquare) * kSquare + within + squaresOff * kSquare);
}

/// On the grid of the work, which is UTM or UPS on WGS 84: the place with these figures nearest to one that is known,
/// in a square of these letters where they are said.
Result<geodesy::PlanePoint> completed(std::string_view text, const Figures& figures, const movement::WorkGrid& grid,
                                      geodesy::PlanePoint nearInPlan) {
    const std::size_t count = figures.digits.size();
    if (count % 2 != 0 || count < 4 || count > 10 || !grid.plane().facts().onWgs84) {
        return fail(kGridUnread, {{"text", std::string(text)}});
    }
    const auto near = grid.onGrid(nearInPlan);
    const auto known = near.and_then([&](geodesy::PlanePoint p) { return grid.plane().grid(p); });
    if (!known) {
        return tl::unexpected(known.error());
    }
    if (const auto square = geodesy::mgrs(*known, geodesy::Digits::SquareOnly); !square) {
        return tl::unexpected(square.error());  // where nothing is known no square is the nearest
    }
    const std::string_view digits = figures.digits;
    for (const auto& [east, north] : std::initializer_list<std::pair<int, int>>{
             {0, 0}, {0, 1}, {0, -1}, {1, 0}, {-1, 0}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}}) {
        const geodesy::PlanePoint at{nearestLine(digits.substr(0, count / 2), near->easting, east),
                                     nearestLine(digits.substr(count / 2), near->northing, north)};
        const auto point = grid.plane().grid(at);
        const auto parts =
            point ? geodesy::mgrsParts(*point, geodesy::Digits::SquareOnly) : Result<geodesy::MgrsParts>{};
        if (point && (figures.letters.empty() || (parts && parts->square == figures.letters))) {
            return grid.inPlan(at);
        }
    }
    return fail(kGridUnread, {{"text", std::string(text)}});
}

/// How far a place of the grid lies off the sheet's raster.
double offSheet(const plan::Sheet& sheet, geodesy::PlanePoint at) {
    const plan::Placement& p = sheet.placement;
    const double area = p.eastPerColumn * p.northPerRow - p.eastPerRow * p.northPerColumn;
    const double east = (at.easting - p.corner.easting).value();
    const double north = (at.northing - p.corner.northing).value();
    const double column = (east * p.northPerRow - north * p.eastPerRow) / area;
    const double row = (north * p.eastPerColumn - east * p.northPerColumn) / area;
    const double across =
        std::max({0.0, -column, column - sheet.columns}) * std::hypot(p.eastPerColumn, p.northPerColumn);
    const double down = std::max({0.0, -row, row - sheet.rows}) * std::hypot(p.eastPerRow, p.northPerRow);
    return std::hypot(across, down);
}

}  // namespace

namespace {

/// In any writing that says the whole place.
Result<geodesy::PlanePoint> wholeReference(std::string_view text, const plan::Plan& plan) {
    const auto reference = geodesy::parsePoint(text);
    if (!reference) {
        return tl::unexpected(reference.error());
    }
    return geodesy::PlaneLink::between(geodesy::crsOfZone(reference->southWest.zone), plan.planeCrs())
        .and_then([&](const geodesy::PlaneLink& link) { return link.forward(reference->southWest.at); });
}

}  // namespace

Result<geodesy::PlanePoint> gridEntered(std::string_view text, const plan::Plan& plan, const movement::WorkGrid& grid,
                                        geodesy::PlanePoint near) {
    const auto figures = figuresOf(text);
    auto inPlan = figures ? completed(text, *figures, grid, near) : wholeReference(text, plan);
    if (inPlan && !plan.sheets().empty()) {
        if (const auto onGrid = grid.onGrid(*inPlan)) {
            const double off = offSheet(*plan.sheets().front(), *onGrid);
            if (off > kFarthestOff) {
                return fail(kGridOffSheet, {{"away_km", std::round(off / 100) / 10}});
            }
        }
    }
    return inPlan;
}

std::string gridShown(const movement::WorkGrid& grid, geodesy::PlanePoint inPlan) {
    const auto onGrid = grid.onGrid(inPlan);
    if (!onGrid) {
        return {};
    }
    if (const auto point = grid.plane().grid(*onGrid); point && grid.plane().facts().onWgs84) {
        return geodesy::mgrsText(*point, geodesy::Digits::Ten);
    }
    return grid.gridText(*onGrid);
}

}  // namespace crosstick::details
