#include <algorithm>

#include "core/geodesy/faults.h"
#include "core/geodesy/grid_reference.h"
#include "core/geodesy/parse_angles.h"
#include "core/geodesy/parse_mgrs.h"
#include "core/geodesy/parse_utm.h"
#include "core/geodesy/point_text.h"

namespace crosstick::geodesy {
namespace {

/// "MGRS 18S UJ ...": the word in front says only what the form shows anyway.
std::string withoutFormName(std::string plain) {
    for (const std::string_view name : {"MGRS ", "USNG ", "UTM ", "UPS ", "MGRS: ", "UTM: "}) {
        if (plain.starts_with(name)) {
            return plainText(std::string_view(plain).substr(name.size()));
        }
    }
    return plain;
}

Result<GridReference> read(const std::string& plain) {
    if (plain.empty()) {
        return fail(kEmptyPoint);
    }
    if (const auto utm = parseUtm(plain)) {
        return utm->map([](const GridPoint& point) { return GridReference{point, std::nullopt}; });
    }
    if (looksLikeMgrs(plain)) {
        return parseMgrs(plain);
    }
    return parseAngles(plain).and_then([](GeoPoint place) {
        return gridPoint(place).map([](const GridPoint& point) { return GridReference{point, std::nullopt}; });
    });
}

/// Errors repeat the text as it was written.
Error asWritten(Error error, std::string_view text) {
    const auto isText = [](const Argument& argument) { return argument.key == "text"; };
    std::erase_if(error.arguments, isText);
    return std::move(error).with("text", quoted(text));
}

}  // namespace

Result<GridReference> parsePoint(std::string_view text) {
    constexpr std::size_t kLongest = 200;  // nobody writes a longer place
    if (text.size() > kLongest) {
        return fail(kNotAPoint, {{"text", quoted(text)}});
    }
    return read(withoutFormName(plainText(text))).map_error([&](const Error& error) { return asWritten(error, text); });
}

}  // namespace crosstick::geodesy
