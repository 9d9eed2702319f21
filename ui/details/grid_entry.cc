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

/// "45830845" in the square of a place that is known, as a whole reference.
Result<std::string> completed(std::string_view text, const movement::WorkGrid& grid, geodesy::PlanePoint nearInPlan) {
    const std::string figures = withoutBlanks(text);
    if (figures.size() % 2 != 0 || figures.size() < 4 || figures.size() > 10 || !grid.plane().facts().onWgs84) {
        return fail(kGridUnread, {{"text", std::string(text)}});
    }
    const auto place = grid.onGrid(nearInPlan).and_then([&](geodesy::PlanePoint p) { return grid.plane().grid(p); });
    if (!place) {
        return tl::unexpected(place.error());
    }
    return geodesy::mgrs(*place, geodesy::Digits::SquareOnly).map([&](const std::string& square) {
        return square + figures;
    });
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

Result<geodesy::PlanePoint> gridEntered(std::string_view text, const plan::Plan& plan, const movement::WorkGrid& grid,
                                        geodesy::PlanePoint near) {
    std::string whole(text);
    if (isFigures(text)) {
        auto square = completed(text, grid, near);
        if (!square) {
            return tl::unexpected(square.error());
        }
        whole = std::move(*square);
    }
    const auto reference = geodesy::parsePoint(whole);
    if (!reference) {
        return tl::unexpected(reference.error());
    }
    const auto link = geodesy::PlaneLink::between(geodesy::crsOfZone(reference->southWest.zone), plan.planeCrs());
    if (!link) {
        return tl::unexpected(link.error());
    }
    auto inPlan = link->forward(reference->southWest.at);
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
