// Any bytes as a place: they are refused with a short text on one line, or give a point that prints and reads back.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "core/geodesy/grid_reference.h"
#include "core/geodesy/place_text.h"

namespace {

using namespace crosstick::geodesy;

void require(bool claim) {
    if (!claim) {
        std::abort();
    }
}

void checkError(const crosstick::Error& error) {
    require(!error.fault.name.empty());
    for (const crosstick::Argument& argument : error.arguments) {
        if (const auto* text = std::get_if<std::string>(&argument.value)) {
            require(text->size() <= 200 && text->find('\n') == std::string::npos);
        }
    }
}

void checkPoint(const GridReference& reference) {
    const GridPoint& point = reference.southWest;
    require(isFinite(point.at.easting) && isFinite(point.at.northing));
    require(point.zone.number >= 0 && point.zone.number <= 60);
    require(!reference.square || reference.square->value() > 0);
    const auto place = geographic(point);
    require(place.has_value());
    require(std::abs(place->latitude.value()) <= 90 && std::abs(place->longitude.value()) <= 180);
    const auto again = parsePoint(gridText(point));
    require(again.has_value());
    require(std::abs((again->southWest.at.easting - point.at.easting).value()) < 0.001);
    require(std::abs((again->southWest.at.northing - point.at.northing).value()) < 0.001);
    require(factors(point).has_value());
    static_cast<void>(mgrs(point, Digits::Metre));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto reference = parsePoint(text);
    if (reference) {
        checkPoint(*reference);
    } else {
        checkError(reference.error());
    }
    return 0;
}
