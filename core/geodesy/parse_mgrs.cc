#include "core/geodesy/parse_mgrs.h"

#include <cctype>

#include <GeographicLib/MGRS.hpp>

#include "core/geodesy/faults.h"
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

std::optional<Pieces> piecesOf(const std::string& packed) {
    const std::size_t zone = run(packed, 0, std::isdigit);
    const std::size_t letters = run(packed, zone, std::isalpha);
    const std::size_t digits = run(packed, letters, std::isdigit);
    const std::size_t count = letters - zone;
    if (zone > 2 || digits != packed.size() || (count != 1 && count != 3) || (count == 1 && letters != packed.size())) {
        return std::nullopt;
    }
    return Pieces{packed.substr(0, zone), packed.substr(zone, 1), packed.substr(zone + 1, count - 1),
                  packed.substr(letters)};
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

std::optional<Error> faultIn(const Pieces& p, const std::string& packed) {
    const auto named = [&](FaultId fault, const std::string& found) {
        return Error{fault, {{"text", packed}, {"found", found}}};
    };
    if (!p.zone.empty()) {
        const auto zone = *parseWhole(p.zone);
        if (zone < 1 || zone > 60) {
            return named(kBadZone, p.zone);
        }
    }
    constexpr std::string_view kBands = "CDEFGHJKLMNPQRSTUVWX";
    constexpr std::string_view kPoles = "ABYZ";
    if ((p.zone.empty() ? kPoles : kBands).find(p.band[0]) == std::string_view::npos) {
        return named(kBadBand, p.band);
    }
    if (p.square.empty()) {
        return named(kZoneAlone, packed);
    }
    if (p.digits.size() % 2 != 0) {
        return named(kOddDigits, std::to_string(p.digits.size()));
    }
    if (p.digits.size() / 2 > kMostDigits) {
        return named(kTooManyDigits, std::to_string(p.digits.size()));
    }
    return std::nullopt;
}

}  // namespace

bool looksLikeMgrs(const std::string& packed) {
    const auto pieces = piecesOf(packed);
    // "N", "W" and the like alone are halves of something else, and so is a bare number.
    return pieces && (!pieces->zone.empty() || !pieces->square.empty());
}

Result<GridReference> parseMgrs(const std::string& packed) {
    const auto pieces = piecesOf(packed);
    if (!pieces) {
        return fail(kNotAPoint, {{"text", packed}});
    }
    if (auto fault = faultIn(*pieces, packed)) {
        return tl::unexpected(*std::move(fault));
    }
    if (auto reference = reversed(packed)) {
        return *reference;
    }
    if (const std::string twin = modernTwin(*pieces); !twin.empty()) {
        return fail(kOldLettering, {{"text", packed}, {"found", pieces->square}, {"twin", twin}});
    }
    return fail(kBadSquare, {{"text", packed}, {"found", pieces->square}, {"zone", pieces->zone + pieces->band}});
}

}  // namespace crosstick::geodesy
