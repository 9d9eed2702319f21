#include "core/registration/printed_grid.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/geodesy/faults.h"
#include "core/geodesy/parse_angles.h"
#include "core/geodesy/parse_mgrs.h"
#include "core/geodesy/parse_utm.h"
#include "core/geodesy/point_text.h"
#include "core/registration/faults.h"
#include "core/units/number_text.h"

namespace crosstick::registration {
namespace {

constexpr double kSquare = 100000;  // m

bool isDigits(const std::string& text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

constexpr std::size_t kMostFigures = 5;

/// More figures than a 100 km square has, and tenths of a metre and less behind a point.
bool isMetres(const std::string& text) {
    const std::size_t point = text.find('.');
    return point > kMostFigures && isDigits(text.substr(0, point)) &&
           (point == std::string::npos || isDigits(text.substr(point + 1)));
}

/// Two halves of figures: "45 62" or "4562"; or metres, "323000 4306000.5". Empty where the text is something else.
std::pair<std::string, std::string> halves(const std::string& plain) {
    const auto words = geodesy::wordsOf(plain);
    const bool isPair = words.size() == 2;
    if (isPair && ((isDigits(words[0]) && isDigits(words[1])) || (isMetres(words[0]) && isMetres(words[1])))) {
        return {words[0], words[1]};
    }
    if (words.size() == 1 && isDigits(words[0]) && words[0].size() % 2 == 0) {
        return {words[0].substr(0, words[0].size() / 2), words[0].substr(words[0].size() / 2)};
    }
    return {};
}

/// "18S" of "18S UJ 45 62"; empty where none stands there.
std::string zoneOf(const std::string& plain) {
    const std::string text = geodesy::packed(plain);
    const auto letter = std::find_if(text.begin(), text.end(), [](char c) { return c < '0' || c > '9'; });
    return letter == text.begin() || letter == text.end() ? std::string{} : std::string(text.begin(), letter + 1);
}

/// The number with these last figures below 100 km that lies nearest to another.
double nearest(double figures, Metres near) {
    return figures + kSquare * std::round((near.value() - figures) / kSquare);
}

}  // namespace

Result<PrintedGrid> PrintedGrid::of(const std::string& crs, std::string_view square) {
    PrintedGrid grid;
    if (!crs.empty()) {
        if (auto settled = grid.settle(crs); !settled) {
            return tl::unexpected(settled.error());
        }
    }
    if (!square.empty()) {
        const std::string plain = geodesy::plainText(square);
        const auto corner = geodesy::parsePoint(plain).and_then(
            [&](const geodesy::GridReference& reference) { return grid.inPlane(reference.southWest); });
        if (!corner) {
            return tl::unexpected(corner.error());
        }
        grid.zone_ = zoneOf(plain);
        grid.near_ = geodesy::PlanePoint{corner->easting + Metres(kSquare / 2), corner->northing + Metres(kSquare / 2)};
    }
    return grid;
}

Result<void> PrintedGrid::settle(const std::string& crs) {
    auto plane = geodesy::Plane::of(crs);
    if (!plane) {
        return tl::unexpected(plane.error());
    }
    auto graticule = geodesy::Graticule::of(crs);
    if (!graticule) {
        return tl::unexpected(graticule.error());
    }
    plane_ = std::move(*plane);
    graticule_ = std::move(*graticule);
    crs_ = crs;
    return {};
}

Result<geodesy::PlanePoint> PrintedGrid::read(std::string_view text) {
    constexpr std::size_t kLongest = 200;
    if (text.size() > kLongest) {
        return fail(geodesy::kNotAPoint, {{"text", geodesy::quoted(text)}});
    }
    const std::string plain = geodesy::plainText(text);
    auto place = readPlain(plain);
    if (!place) {
        return place.map_error([&](Error error) {
            std::erase_if(error.arguments, [](const Argument& argument) { return argument.key == "text"; });
            return std::move(error).with("text", geodesy::quoted(text));
        });
    }
    if (!hasPlace_) {
        near_ = *place;
        hasPlace_ = true;
    }
    if (const std::string zone = zoneOf(plain); !zone.empty() && geodesy::looksLikeMgrs(plain)) {
        zone_ = zone;
    }
    return place;
}

Result<geodesy::PlanePoint> PrintedGrid::readPlain(const std::string& plain) {
    if (const auto [east, north] = halves(plain); !east.empty()) {
        return figures(east, north);
    }
    if (auto utm = geodesy::parseUtm(plain)) {
        return utm->and_then([&](const geodesy::GridPoint& point) { return inPlane(point); });
    }
    if (geodesy::looksLikeMgrs(plain)) {
        return inFull(plain);
    }
    return geodesy::parseAngles(plain).and_then([&](geodesy::GeoPoint angles) { return ofGraticule(angles); });
}

Result<geodesy::PlanePoint> PrintedGrid::figures(const std::string& east, const std::string& north) const {
    const double easting = parseNumber(east).value_or(0);
    const double northing = parseNumber(north).value_or(0);
    if (east.size() > kMostFigures || north.size() > kMostFigures) {
        return plane_ ? Result<geodesy::PlanePoint>({Metres(easting), Metres(northing)}) : fail(kNoGrid);
    }
    if (east.size() != north.size() || east.size() < 2) {
        return fail(geodesy::kUnequalDigits, {{"found", east + " " + north}});
    }
    if (!near_) {
        return fail(kNoSquare);
    }
    const double unit = std::pow(10, static_cast<double>(kMostFigures - east.size()));
    return geodesy::PlanePoint{Metres(nearest(easting * unit, near_->easting)),
                               Metres(nearest(northing * unit, near_->northing))};
}

Result<geodesy::PlanePoint> PrintedGrid::inPlane(const geodesy::GridPoint& point) {
    if (!plane_) {
        if (auto settled = settle(geodesy::crsOfZone(point.zone)); !settled) {
            return tl::unexpected(settled.error());
        }
    }
    if (plane_->facts().utm == point.zone) {
        return point.at;
    }
    return geodesy::geographic(point).and_then([&](geodesy::GeoPoint place) { return plane_->plane(place); });
}

Result<geodesy::PlanePoint> PrintedGrid::inFull(const std::string& plain) {
    auto reference = geodesy::parseMgrs(plain);
    if (!reference && reference.error().fault == geodesy::kNoZoneNumber && !zone_.empty()) {
        reference = geodesy::parseMgrs(zone_ + " " + plain);
    }
    return reference.and_then([&](const geodesy::GridReference& found) { return inPlane(found.southWest); });
}

Result<geodesy::PlanePoint> PrintedGrid::ofGraticule(geodesy::GeoPoint angles) {
    if (!plane_) {
        const auto settled = geodesy::gridPoint(angles).and_then(
            [&](const geodesy::GridPoint& point) { return settle(geodesy::crsOfZone(point.zone)); });
        if (!settled) {
            return tl::unexpected(settled.error());
        }
    }
    const auto place = graticule_->plane({angles.latitude, angles.longitude});
    return place ? Result<geodesy::PlanePoint>(*place)
                 : fail(geodesy::kOutsidePlane,
                        {{"easting", angles.longitude.value()}, {"northing", angles.latitude.value()}});
}

}  // namespace crosstick::registration
