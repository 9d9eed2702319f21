#include "core/film/grid_names.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/geodesy/grid_reference.h"
#include "core/units/number_text.h"

namespace crosstick::film {
namespace {

constexpr Metres kLetterSquare{100000};

geodesy::Digits digitsFor(Metres side) {
    if (side >= Metres(10000)) {
        return geodesy::Digits::TenKilometres;
    }
    return side >= Metres(1000) ? geodesy::Digits::Kilometre : geodesy::Digits::Hundred;
}

/// Corners of the window and a point in each lettered square that it reaches.
std::vector<geodesy::PlanePoint> samples(const plan::Registration& window) {
    const auto stations = [](Metres low, Metres high) {
        std::vector<Metres> out{low};
        for (Metres line = kLetterSquare * (std::floor(low / kLetterSquare) + 1); line < high; line += kLetterSquare) {
            out.push_back(line);
        }
        return out;
    };
    std::vector<geodesy::PlanePoint> points;
    for (const Metres northing : stations(window.southWest.northing, window.northEast.northing)) {
        for (const Metres easting : stations(window.southWest.easting, window.northEast.easting)) {
            points.push_back({easting, northing});
        }
    }
    return points;
}

void addOnce(std::vector<std::string>& names, std::string name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) {
        names.push_back(std::move(name));
    }
}

}  // namespace

Result<GridNames> GridNames::of(const std::string& crs) {
    auto plane = geodesy::Plane::of(crs);
    if (!plane) {
        return tl::unexpected(plane.error());
    }
    return GridNames(std::move(*plane));
}

bool GridNames::hasLetters() const {
    const auto& facts = plane_.facts();
    return facts.onWgs84 && (facts.utm || facts.authority == "EPSG:5041" || facts.authority == "EPSG:5042");
}

std::string GridNames::crossing(geodesy::PlanePoint at) const {
    if (hasLetters()) {
        const auto grid = plane_.grid(at);
        const auto text = grid ? geodesy::mgrs(*grid, geodesy::Digits::Ten) : tl::unexpected(grid.error());
        if (text) {
            return *text;
        }
    }
    return numberText(at.easting.value(), 0) + ' ' + numberText(at.northing.value(), 0);
}

std::string GridNames::square(geodesy::PlanePoint southWest, Metres side) const {
    if (hasLetters()) {
        const auto grid = plane_.grid(southWest);
        const auto parts = grid ? geodesy::mgrsParts(*grid, digitsFor(side)) : tl::unexpected(grid.error());
        if (parts) {
            return parts->square + ' ' + parts->easting + ' ' + parts->northing;
        }
    }
    const auto figure = [side](Metres line) { return numberText(std::floor(line / side + 0.5), 0); };
    return figure(southWest.easting) + ' ' + figure(southWest.northing);
}

std::string GridNames::area(const plan::Registration& window) const {
    if (!hasLetters()) {
        const auto& facts = plane_.facts();
        return facts.utm ? facts.projection : facts.name;
    }
    std::vector<std::string> names;
    for (const geodesy::PlanePoint point : samples(window)) {
        const auto grid = plane_.grid(point);
        const auto parts = grid ? geodesy::mgrsParts(*grid, geodesy::Digits::SquareOnly) : tl::unexpected(grid.error());
        if (parts) {
            addOnce(names, parts->zone);
            addOnce(names, parts->square);
        }
    }
    return fmt::format("{}", fmt::join(names, " "));
}

std::string lineFigures(Metres line) {
    const auto hundreds = static_cast<std::int64_t>(std::floor(line.value() / 100 + 0.5));
    const std::int64_t kilometres = hundreds / 10;
    const std::string tail = hundreds % 10 == 0 ? std::string{} : fmt::format(".{}", hundreds % 10);
    if (kilometres < 100) {
        return fmt::format("{:02}{}", kilometres, tail);
    }
    return fmt::format("{} {:02}{}", kilometres / 100, kilometres % 100, tail);
}

}  // namespace crosstick::film
