#include "core/geodesy/place_text.h"

#include <fmt/format.h>

#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

enum class Letters { NorthSouth, EastWest };

char letterOf(Degrees angle, Letters letters) {
    if (letters == Letters::NorthSouth) {
        return angle.value() < 0 ? 'S' : 'N';
    }
    return angle.value() < 0 ? 'W' : 'E';
}

std::string sexagesimal(Degrees angle, Letters letters) {
    const std::int64_t hundredths = std::llround(abs(angle).value() * 360000);
    return fmt::format("{} {:02} {:02}.{:02} {}", hundredths / 360000, hundredths / 6000 % 60, hundredths / 100 % 60,
                       hundredths % 100, letterOf(angle, letters));
}

std::string decimal(Degrees angle, Letters letters) {
    return numberText(abs(angle).value(), 7) + ' ' + letterOf(angle, letters);
}

}  // namespace

std::string sexagesimalText(GeoPoint place) {
    return sexagesimal(place.latitude, Letters::NorthSouth) + "  " + sexagesimal(place.longitude, Letters::EastWest);
}

std::string degreesText(GeoPoint place) {
    return decimal(place.latitude, Letters::NorthSouth) + "  " + decimal(place.longitude, Letters::EastWest);
}

std::string gridText(const GridPoint& point) {
    const std::string_view side = point.zone.hemisphere == Hemisphere::North ? "north" : "south";
    const std::string zone = point.zone.number == 0 ? std::string{} : fmt::format("{} ", point.zone.number);
    return fmt::format("{}{} {} {}", zone, side, numberText(point.at.easting.value(), 3),
                       numberText(point.at.northing.value(), 3));
}

std::string mgrsText(const GridPoint& point, Digits digits) {
    const auto parts = mgrsParts(point, digits);
    if (!parts) {
        return gridText(point);
    }
    std::string text = parts->zone + ' ' + parts->square;
    if (digits != Digits::SquareOnly) {
        text += ' ' + parts->easting + ' ' + parts->northing;
    }
    return text;
}

std::string convergenceText(Degrees convergence) {
    const std::int64_t minutes = std::llround(abs(convergence).value() * 60);
    if (minutes == 0) {
        return "0 minutes";
    }
    const std::string_view side = convergence.value() < 0 ? "west" : "east";
    const std::string whole = minutes >= 60 ? fmt::format("{} degree{} ", minutes / 60, minutes < 120 ? "" : "s") : "";
    return fmt::format("{}{} minutes {}", whole, minutes % 60, side);
}

std::string gmAngleText(Degrees gmAngle) {
    const double halves = std::floor(abs(gmAngle).value() * 2 + 0.5) / 2;
    const double tens = std::floor(mils(abs(gmAngle)).value() / 10 + 0.5) * 10;
    std::string size = fmt::format("{} degrees ({} mils)", numberText(halves), numberText(tens));
    if (halves == 0) {
        return size;
    }
    const bool isWest = gmAngle.value() < 0;
    return fmt::format("{} {}; grid to magnetic: {} {}", size, isWest ? "WEST" : "EAST", isWest ? "add" : "subtract",
                       numberText(halves));
}

}  // namespace crosstick::geodesy
