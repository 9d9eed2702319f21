#include <array>
#include <cctype>

#include "core/geodesy/faults.h"
#include "core/geodesy/grid_reference.h"
#include "core/geodesy/parse_angles.h"
#include "core/geodesy/parse_mgrs.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

bool isDigit(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) != 0;
}
bool isLetter(char c) {
    return std::isalpha(static_cast<unsigned char>(c)) != 0;
}
bool isBlank(char c) {
    return std::isspace(static_cast<unsigned char>(c)) != 0;
}

std::string upperTrimmed(std::string_view text) {
    while (!text.empty() && isBlank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isBlank(text.back())) {
        text.remove_suffix(1);
    }
    std::string upper(text);
    for (char& c : upper) {
        c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    }
    return upper;
}

std::string withoutBlanks(const std::string& text) {
    std::string packed;
    for (const char c : text) {
        if (!isBlank(c)) {
            packed += c;
        }
    }
    return packed;
}

std::vector<std::string> wordsOf(const std::string& text) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : text + ' ') {
        if (isBlank(c) || c == ',') {
            if (!word.empty()) {
                words.push_back(word);
            }
            word.clear();
        } else {
            word += c;
        }
    }
    return words;
}

/// "18N", "18 N" or "N" in front of two numbers.
struct UtmText {
    std::string zone;  ///< digits, empty for UPS
    char letter;
    double easting, northing;
};

std::optional<double> metresOf(std::string word, std::string_view suffix) {
    if (word.size() > suffix.size() + 1 && word.ends_with("M" + std::string(suffix))) {
        word.resize(word.size() - suffix.size() - 1);
    }
    return parseNumber(word);
}

std::optional<UtmText> utmText(const std::string& text) {
    std::vector<std::string> words = wordsOf(text);
    if (words.size() == 4 && words[1].size() == 1) {
        words[0] += words[1];
        words.erase(words.begin() + 1);
    }
    if (words.size() != 3 || words[0].empty() || !isLetter(words[0].back())) {
        return std::nullopt;
    }
    const std::string zone = words[0].substr(0, words[0].size() - 1);
    if (zone.size() > 2 || !std::all_of(zone.begin(), zone.end(), isDigit)) {
        return std::nullopt;
    }
    const auto easting = metresOf(words[1], "E");
    const auto northing = metresOf(words[2], "N");
    if (!easting || !northing) {
        return std::nullopt;
    }
    return UtmText{zone, words[0].back(), *easting, *northing};
}

/// Southern edge of a latitude band; C is -80, each is 8 degrees high, X is 12.
std::optional<std::pair<double, double>> bandOf(char letter) {
    constexpr std::string_view kBands = "CDEFGHJKLMNPQRSTUVWX";
    const auto at = kBands.find(letter);
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    const double south = -80.0 + 8.0 * static_cast<double>(at);
    return std::pair(south, letter == 'X' ? 84.0 : south + 8.0);
}

Result<GridPoint> onZone(const UtmText& utm, int zone, Hemisphere hemisphere) {
    const GridPoint point{{zone, hemisphere}, {Metres(utm.easting), Metres(utm.northing)}};
    return geographic(point).map([&](GeoPoint) { return point; });
}

bool liesInBand(const Result<GridPoint>& point, std::pair<double, double> band) {
    if (!point) {
        return false;
    }
    const auto place = geographic(*point);
    constexpr double kSlack = 0.01;  // degrees: a point on the band's edge may be written with either letter
    return place && place->latitude.value() >= band.first - kSlack && place->latitude.value() <= band.second + kSlack;
}

// The letter is the hemisphere, n or s. Many people write the latitude band instead: N is north in both readings, the
// others are taken as bands where the numbers agree; S can be either and is refused where both are possible.
Result<GridPoint> hemisphereOrBand(const UtmText& utm, const std::string& text) {
    const int zone = utm.zone.empty() ? 0 : static_cast<int>(*parseWhole(utm.zone));
    if (!utm.zone.empty() && (zone < 1 || zone > 60)) {
        return fail(kBadZone, {{"text", text}, {"found", utm.zone}});
    }
    if (utm.letter == 'N') {
        return onZone(utm, zone, Hemisphere::North);
    }
    const auto south = onZone(utm, zone, Hemisphere::South);
    if (utm.letter == 'S') {
        const bool northToo = zone != 0 && liesInBand(onZone(utm, zone, Hemisphere::North), *bandOf('S'));
        if (northToo) {
            return fail(kAmbiguousLetter, {{"text", text}, {"zone", std::int64_t{zone}}});
        }
        return south;
    }
    const auto band = bandOf(utm.letter);
    if (!band || zone == 0) {
        return fail(kBadBand, {{"text", text}, {"found", std::string(1, utm.letter)}});
    }
    auto point = band->first < 0 ? south : onZone(utm, zone, Hemisphere::North);
    if (!liesInBand(point, *band)) {
        return fail(kBandMismatch, {{"text", text}, {"found", std::string(1, utm.letter)}});
    }
    return point;
}

}  // namespace

Result<GridReference> parsePoint(std::string_view text) {
    constexpr std::size_t kLongest = 200;  // nobody writes a longer place; keeps what an error repeats short
    if (text.size() > kLongest) {
        return fail(kNotAPoint, {{"text", std::string(text.substr(0, 40)) + "..."}});
    }
    const std::string upper = upperTrimmed(text);
    if (upper.empty()) {
        return fail(kEmptyPoint);
    }
    if (const auto utm = utmText(upper)) {
        return hemisphereOrBand(*utm, upper).map([](const GridPoint& point) {
            return GridReference{point, std::nullopt};
        });
    }
    const std::string packed = withoutBlanks(upper);
    if (looksLikeMgrs(packed)) {
        return parseMgrs(packed);
    }
    return parseAngles(upper).and_then([](GeoPoint place) {
        return gridPoint(place).map([](const GridPoint& point) { return GridReference{point, std::nullopt}; });
    });
}

}  // namespace crosstick::geodesy
