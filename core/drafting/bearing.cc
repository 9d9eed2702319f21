#include "core/drafting/bearing.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <optional>
#include <string>
#include <vector>

#include "core/drafting/faults.h"

namespace crosstick::drafting {
namespace {

constexpr Metres kFarthest{100000};

/// A number, and the words up to the next one in small letters.
struct Figure {
    double number = 0;
    std::vector<std::string> words;
};

bool isFigure(char c) {
    return (c >= '0' && c <= '9') || c == '.';
}

/// Numbers with what is said behind each; nothing where something stands before the first or is no number.
std::optional<std::vector<Figure>> figuresOf(std::string_view text) {
    std::vector<Figure> figures;
    for (std::size_t n = 0; n < text.size();) {
        const char c = text[n];
        if (isFigure(c)) {
            Figure figure;
            const auto [end, fault] = std::from_chars(text.data() + n, text.data() + text.size(), figure.number);
            if (fault != std::errc{}) {
                return std::nullopt;
            }
            n = static_cast<std::size_t>(end - text.data());
            figures.push_back(std::move(figure));
        } else if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
            if (figures.empty()) {
                return std::nullopt;
            }
            std::string word;
            for (; n < text.size() && std::isalpha(static_cast<unsigned char>(text[n])) != 0; ++n) {
                word += static_cast<char>(std::tolower(static_cast<unsigned char>(text[n])));
            }
            figures.back().words.push_back(std::move(word));
        } else if (c == ' ' || c == ',' || c == '/' || c == '\t') {
            ++n;
        } else if (text.substr(n).starts_with("\u00b0")) {
            n += std::string_view("\u00b0").size();
            if (figures.empty()) {
                return std::nullopt;
            }
            figures.back().words.emplace_back("deg");
        } else {
            return std::nullopt;
        }
    }
    return figures;
}

Result<Bearing> bearingOf(const Figure& figure, geodesy::AngleUnit unit, std::string_view text) {
    Bearing bearing;
    for (const std::string& word : figure.words) {
        if (word == "g" || word == "grid") {
            bearing.north = North::Grid;
        } else if (word == "m" || word == "mag" || word == "magnetic") {
            bearing.north = North::Magnetic;
        } else if (word == "t" || word == "true") {
            bearing.north = North::True;
        } else if (word == "mil" || word == "mils") {
            unit = geodesy::AngleUnit::Mils;
        } else if (word == "deg" || word == "degrees") {
            unit = geodesy::AngleUnit::Degrees;
        } else {
            return fail(kNoBearing, {{"text", std::string(text)}});
        }
    }
    const Degrees angle = unit == geodesy::AngleUnit::Mils ? degrees(Mils(figure.number)) : Degrees(figure.number);
    if (!(angle >= Degrees(0) && angle <= Degrees(360))) {
        return fail(kBearingRange, {{"text", std::string(text)}});
    }
    bearing.azimuth = fullCircle(angle);
    return bearing;
}

Result<Metres> distanceOf(const Figure& figure, std::string_view text) {
    double metres = figure.number;
    const bool isKnown =
        figure.words.empty() || (figure.words.size() == 1 && (figure.words[0] == "m" || figure.words[0] == "km"));
    if (isKnown && !figure.words.empty() && figure.words[0] == "km") {
        metres *= 1000;
    }
    if (!isKnown || !(metres > 0) || Metres(metres) > kFarthest) {
        return fail(kNoDistance, {{"text", std::string(text)}});
    }
    return Metres(metres);
}

}  // namespace

Degrees gridAzimuth(const Bearing& bearing, const Norths& norths) {
    switch (bearing.north) {
        case North::Magnetic:
            return fullCircle(bearing.azimuth + norths.gridToMagnetic);
        case North::True:
            return fullCircle(bearing.azimuth - norths.trueToGrid);
        case North::Grid:
            break;
    }
    return fullCircle(bearing.azimuth);
}

Degrees azimuthFrom(North north, Degrees gridAzimuth, const Norths& norths) {
    switch (north) {
        case North::Magnetic:
            return geodesy::magneticAzimuth(gridAzimuth, norths.gridToMagnetic);
        case North::True:
            return fullCircle(gridAzimuth + norths.trueToGrid);
        case North::Grid:
            break;
    }
    return fullCircle(gridAzimuth);
}

Result<Bearing> bearingTyped(std::string_view text, geodesy::AngleUnit unit) {
    const auto figures = figuresOf(text);
    if (!figures || figures->size() != 1) {
        return fail(kNoBearing, {{"text", std::string(text)}});
    }
    return bearingOf(figures->front(), unit, text);
}

Result<BearingAndDistance> bearingAndDistanceTyped(std::string_view text, geodesy::AngleUnit unit) {
    const auto figures = figuresOf(text);
    if (!figures || figures->empty()) {
        return fail(kNoBearing, {{"text", std::string(text)}});
    }
    const auto bearing = bearingOf(figures->front(), unit, text);
    if (!bearing) {
        return tl::unexpected(bearing.error());
    }
    if (figures->size() != 2) {
        return fail(kNoDistance, {{"text", std::string(text)}});
    }
    const auto distance = distanceOf(figures->back(), text);
    return distance ? Result<BearingAndDistance>({*bearing, *distance}) : tl::unexpected(distance.error());
}

}  // namespace crosstick::drafting
