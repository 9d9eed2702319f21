#include "core/geodesy/parse_mgrs.h"

#include <cctype>

#include <GeographicLib/MGRS.hpp>

#include "core/geodesy/faults.h"
#include "core/geodesy/point_text.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

constexpr std::size_t kMostDigits = 11;  // of each half: micrometres

struct Pieces {
    std::string zone, band, square, digits;
};

std::size_t run(const std::string& text, std::size_t from, int (*is)(int)) {
    std::size_t end = from;
    while (end < text.size() && is(static_cast<unsigned char>(text[end])) != 0) {
        ++end;
    }
    return end;
}

std::optional<Pieces> piecesOf(const std::string& text) {
    const std::size_t zone = run(text, 0, std::isdigit);
    const std::size_t letters = run(text, zone, std::isalpha);
    const std::size_t digits = run(text, letters, std::isdigit);
    const std::size_t count = letters - zone;
    if (zone > 2 || digits != text.size() || count < 1 || count > 3) {
        return std::nullopt;
    }
    const bool squareAlone = count == 2 && zone == 0;
    if ((count == 2 && !squareAlone) || (count == 1 && letters != text.size())) {
        return std::nullopt;
    }
    const std::size_t band = squareAlone ? zone : zone + 1;
    return Pieces{text.substr(0, zone), text.substr(zone, band - zone), text.substr(band, letters - band),
                  text.substr(letters)};
}

/// Where the digits are parted by blanks, one of the gaps must lie between easting and northing: "234 80647" has lost
/// something.
bool halvesAgree(const std::string& plain, std::size_t digits) {
    std::size_t seen = 0;
    bool parted = false;
    for (std::size_t at = plain.size(); at-- > 0 && seen < digits;) {
        if (plain[at] != ' ') {
            ++seen;
        } else if (seen == digits / 2) {
            return true;
        } else {
            parted = seen > 0 || parted;
        }
    }
    return !parted;
}

/// What GeographicLib makes of a reference; nothing where it refuses.
std::optional<GridReference> reversed(const std::string& reference) {
    int zone = 0;
    bool north = true;
    double easting = 0;
    double northing = 0;
    int precision = 0;
    try {
        GeographicLib::MGRS::Reverse(reference, zone, north, easting, northing, precision, false);
    } catch (const GeographicLib::GeographicErr&) {
        return std::nullopt;
    }
    return GridReference{{{zone, north ? Hemisphere::North : Hemisphere::South}, {Metres(easting), Metres(northing)}},
                         Metres(100000.0 / std::pow(10.0, precision))};
}

// Sheets on Clarke and Bessel ellipsoids letter their rows ten letters on (trade 4.1, FM 21-26's 16SGL). Where the
// letter as written names no square of the band but the one ten back does, it is such a sheet's; the ground is not the
// same point, so it is explained and never taken.
std::string modernTwin(const Pieces& p) {
    constexpr std::string_view kRows = "ABCDEFGHJKLMNPQRSTUV";
    const auto row = p.square.empty() ? std::string_view::npos : kRows.find(p.square[1]);
    if (row == std::string_view::npos || p.zone.empty()) {
        return {};
    }
    std::string twin = p.zone + p.band + p.square[0] + kRows[(row + 10) % kRows.size()] + p.digits;
    return reversed(twin) ? twin : std::string{};
}

std::optional<Error> faultIn(const Pieces& p, const std::string& plain) {
    const auto named = [&](FaultId fault, const std::string& found) {
        return Error{fault, {{"text", plain}, {"found", found}}};
    };
    if (!p.zone.empty()) {
        const auto zone = *parseWhole(p.zone);
        if (zone < 1 || zone > 60) {
            return named(kBadZone, p.zone);
        }
    }
    constexpr std::string_view kBands = "CDEFGHJKLMNPQRSTUVWX";
    constexpr std::string_view kPoles = "ABYZ";
    if (p.zone.empty() && (p.band.empty() || kPoles.find(p.band[0]) == std::string_view::npos)) {
        return named(p.digits.empty() ? kNotAPoint : kNoZoneNumber, p.band + p.square);
    }
    if (!p.zone.empty() && kBands.find(p.band[0]) == std::string_view::npos) {
        return named(kBadBand, p.band);
    }
    if (p.square.empty()) {
        return named(kZoneAlone, p.zone + p.band);
    }
    if (p.digits.size() % 2 != 0) {
        return named(kOddDigits, std::to_string(p.digits.size()));
    }
    if (p.digits.size() / 2 > kMostDigits) {
        return named(kTooManyDigits, std::to_string(p.digits.size()));
    }
    if (!halvesAgree(plain, p.digits.size())) {
        return named(kUnequalDigits, p.digits);
    }
    return std::nullopt;
}

}  // namespace

bool looksLikeMgrs(const std::string& plain) {
    const auto pieces = piecesOf(packed(plain));
    // "N", "W" and the like alone are halves of something else, and so is a bare number.
    return pieces && (!pieces->zone.empty() || !pieces->square.empty());
}

Result<GridReference> parseMgrs(const std::string& plain) {
    const std::string text = packed(plain);
    const auto pieces = piecesOf(text);
    if (!pieces) {
        return fail(kNotAPoint, {{"text", plain}});
    }
    if (auto fault = faultIn(*pieces, plain)) {
        return tl::unexpected(*std::move(fault));
    }
    if (auto reference = reversed(text)) {
        return *reference;
    }
    if (const std::string twin = modernTwin(*pieces); !twin.empty()) {
        return fail(kOldLettering, {{"text", plain}, {"found", pieces->square}, {"twin", twin}});
    }
    return fail(kBadSquare, {{"text", plain}, {"found", pieces->square}, {"zone", pieces->zone + pieces->band}});
}

}  // namespace crosstick::geodesy
