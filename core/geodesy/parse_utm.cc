#include "core/geodesy/parse_utm.h"

#include <algorithm>
#include <cctype>

#include "core/geodesy/faults.h"
#include "core/geodesy/point_text.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

/// No latitude or longitude is written with so large a number, no point of UTM or UPS lies so near its false origin.
constexpr double kLeastPlaneNumber = 1000;

enum class Side { North, South, Letter };

struct UtmText {
    std::string zone;  ///< digits, empty for UPS
    Side side = Side::Letter;
    char letter = ' ';
    double easting = 0, northing = 0;
};

/// A number with "E", "M", "ME" and the like behind it.
std::optional<double> metresOf(std::string word, char suffix) {
    if (word.ends_with(suffix)) {
        word.pop_back();
    }
    if (word.ends_with('M')) {
        word.pop_back();
    }
    return parseNumber(word);
}

bool allDigits(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; });
}

/// Units that stand apart: "323483 mE 4306479 mN". Behind anything but a number they are a 100 km square's letters.
std::vector<std::string> withoutUnits(const std::vector<std::string>& words) {
    std::vector<std::string> kept;
    for (const std::string& word : words) {
        const bool isUnit = word == "M" || word == "ME" || word == "MN";
        if (!isUnit || kept.empty() || !parseNumber(kept.back())) {
            kept.push_back(word);
        }
    }
    return kept;
}

/// "18N", "18NORTH", "N".
std::optional<UtmText> zoneOf(const std::string& word) {
    const auto letters = static_cast<std::size_t>(
        std::find_if_not(word.begin(), word.end(),
                         [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }) -
        word.begin());
    const std::string_view side = std::string_view(word).substr(letters);
    UtmText utm;
    utm.zone = word.substr(0, letters);
    if (side == "NORTH" || side == "SOUTH") {
        utm.side = side == "NORTH" ? Side::North : Side::South;
    } else if (side.size() != 1 || std::isalpha(static_cast<unsigned char>(side[0])) == 0) {
        return std::nullopt;
    } else {
        utm.letter = side[0];
    }
    return letters <= 2 ? std::optional(utm) : std::nullopt;
}

std::optional<UtmText> utmText(std::vector<std::string> words) {
    words = withoutUnits(words);
    if (words.size() == 4 && allDigits(words[0]) && zoneOf(words[1])) {
        words[0] += words[1];
        words.erase(words.begin() + 1);
    }
    if (words.size() == 4 && allDigits(words[2]) && zoneOf(words[3])) {
        words[2] += words[3];
        words.pop_back();
    }
    if (words.size() != 3) {
        return std::nullopt;
    }
    if (!zoneOf(words[0]) && zoneOf(words[2])) {
        std::rotate(words.begin(), words.begin() + 2, words.end());
    }
    auto utm = zoneOf(words[0]);
    const auto easting = metresOf(words[1], 'E');
    const auto northing = metresOf(words[2], 'N');
    if (!utm || !easting || !northing) {
        return std::nullopt;
    }
    utm->easting = *easting;
    utm->northing = *northing;
    const bool looksLikeDegrees = utm->zone.empty() && std::abs(*easting) < kLeastPlaneNumber;
    return looksLikeDegrees ? std::nullopt : utm;
}

struct Band {
    double south, north;
};

/// C is -80, each is 8 degrees high, X is 12.
std::optional<Band> bandOf(char letter) {
    constexpr std::string_view kBands = "CDEFGHJKLMNPQRSTUVWX";
    const auto at = kBands.find(letter);
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    const double south = -80.0 + 8.0 * static_cast<double>(at);
    return Band{south, letter == 'X' ? 84.0 : south + 8.0};
}

Result<GridPoint> onZone(const UtmText& utm, int zone, Hemisphere hemisphere) {
    if (utm.easting < kLeastPlaneNumber) {
        return fail(kOffGrid, {{"easting", numberText(utm.easting)},
                               {"northing", numberText(utm.northing)},
                               {"zone", std::int64_t{zone}}});
    }
    const GridPoint point{{zone, hemisphere}, {Metres(utm.easting), Metres(utm.northing)}};
    return geographic(point).map([&](GeoPoint) { return point; });
}

bool liesInBand(const Result<GridPoint>& point, Band band) {
    if (!point) {
        return false;
    }
    const auto place = geographic(*point);
    constexpr double kSlack = 0.01;  // degrees: a point on the band's edge may be written with either letter
    return place && place->latitude.value() >= band.south - kSlack && place->latitude.value() <= band.north + kSlack;
}

Result<GridPoint> polar(const UtmText& utm, const std::string& text) {
    if (utm.side == Side::North || std::string_view("NYZ").find(utm.letter) != std::string_view::npos) {
        return onZone(utm, 0, Hemisphere::North);
    }
    if (utm.side == Side::South || std::string_view("SAB").find(utm.letter) != std::string_view::npos) {
        return onZone(utm, 0, Hemisphere::South);
    }
    return fail(kNoZoneNumber, {{"text", text}, {"found", std::string(1, utm.letter)}});
}

// The letter is the hemisphere, n or s. Many people write the latitude band instead: N is north in both readings, the
// others are taken as bands where the numbers agree; S can be either and is refused where both are possible.
Result<GridPoint> hemisphereOrBand(const UtmText& utm, const std::string& text) {
    if (utm.zone.empty()) {
        return polar(utm, text);
    }
    const int zone = static_cast<int>(*parseWhole(utm.zone));
    if (zone < 1 || zone > 60) {
        return fail(kBadZone, {{"text", text}, {"found", utm.zone}});
    }
    if (utm.side == Side::North || utm.letter == 'N') {
        return onZone(utm, zone, Hemisphere::North);
    }
    auto south = onZone(utm, zone, Hemisphere::South);
    if (utm.side == Side::South) {
        return south;
    }
    if (utm.letter == 'S') {
        if (liesInBand(onZone(utm, zone, Hemisphere::North), *bandOf('S'))) {
            return fail(kAmbiguousLetter, {{"text", text}, {"zone", std::int64_t{zone}}});
        }
        return south;
    }
    const auto band = bandOf(utm.letter);
    if (!band) {
        return fail(kBadBand, {{"text", text}, {"found", std::string(1, utm.letter)}});
    }
    auto point = band->south < 0 ? south : onZone(utm, zone, Hemisphere::North);
    if (!liesInBand(point, *band)) {
        return fail(kBandMismatch, {{"text", text}, {"found", std::string(1, utm.letter)}});
    }
    return point;
}

/// Numbers too large for degrees, but no letter or no zone with them.
std::optional<Error> missingZone(const std::vector<std::string>& words, const std::string& text) {
    const bool hasZone = words.size() == 3;
    if (!hasZone && words.size() != 2) {
        return std::nullopt;
    }
    const auto easting = metresOf(words[words.size() - 2], 'E');
    const auto northing = metresOf(words[words.size() - 1], 'N');
    if (!easting || !northing || *easting < kLeastPlaneNumber || *northing < kLeastPlaneNumber) {
        return std::nullopt;
    }
    if (!hasZone) {
        return Error{kNoZone, {{"text", text}}};
    }
    const bool isNumber = parseWhole(words[0]).has_value();
    return isNumber ? std::optional(Error{kNoHemisphere, {{"text", text}, {"found", words[0]}}}) : std::nullopt;
}

}  // namespace

std::optional<Result<GridPoint>> parseUtm(const std::string& plain) {
    const auto words = wordsOf(plain);
    if (const auto utm = utmText(words)) {
        return hemisphereOrBand(*utm, plain);
    }
    if (auto missing = missingZone(words, plain)) {
        return Result<GridPoint>(tl::unexpected(*std::move(missing)));
    }
    return std::nullopt;
}

}  // namespace crosstick::geodesy
