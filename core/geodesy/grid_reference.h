#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// What somebody wrote for a place. An MGRS reference names a square: the point is its south-west corner.
struct GridReference {
    GridPoint southWest;
    std::optional<Metres> square;  ///< side of the square that was named; none for an exact point
};

/// Reads a place in any usual writing, upper or lower case:
/// - MGRS of any precision ("18SUJ23480647", "18S UJ 2348 0647", a 100 km square alone, polar "ZAA0000033272");
/// - UTM and UPS ("18N 323483 4306479", the letter being the hemisphere n or s, "18 south ..."; "n 2000000 1555731"; a
///   latitude band in the letter's place is taken where the numbers agree with it, and S, which can be either, is
///   refused where both are possible);
/// - degrees ("38.8894 -77.0352", "38,8894 -77,0352", letters N S E W; latitude first unless letters say otherwise),
///   degrees and minutes, degrees, minutes and seconds ("38 53 22.08N 77 02 06.86W", with or without signs).
/// Datum: WGS 84.
/// Errors: geodesy/... with "text", the place as written, and "found" where one part can be named. An older row
/// lettering
///         (FM 21-26's 16SGL) is recognised by its impossible letters and explained (geodesy/old-lettering), never
///         guessed. A grid zone alone names no square (geodesy/zone-alone).
[[nodiscard]] Result<GridReference> parsePoint(std::string_view text);

/// The standard zone (with the exceptions of Norway and Svalbard), UPS beyond 84 N and 80 S.
/// Accuracy: GeographicLib, about 5 nm. Errors: geodesy/bad-latitude.
[[nodiscard]] Result<GridPoint> gridPoint(GeoPoint point);
/// In a forced zone. Errors: geodesy/outside-zone where the projection does not reach.
[[nodiscard]] Result<GridPoint> gridPoint(GeoPoint point, Zone zone);
[[nodiscard]] Result<GeoPoint> geographic(const GridPoint& point);

/// How many digits of each half are written.
enum class Digits { SquareOnly = 0, TenKilometres = 1, Kilometre = 2, Hundred = 3, Ten = 4, Metre = 5 };

/// "25TFL5427098060": two-digit zone, upper case, no blanks, digits truncated; polar without zone.
/// Errors: geodesy/no-mgrs where the point lies outside what MGRS covers.
[[nodiscard]] Result<std::string> mgrs(const GridPoint& point, Digits digits);
/// For people: "25T FL 5427 9806" (zone and square set apart). Parts are empty where MGRS does not reach.
struct MgrsParts {
    std::string zone;     ///< "25T"; empty in polar areas' first part: the band letter only
    std::string square;   ///< "FL"
    std::string easting;  ///< digits, truncated
    std::string northing;
};
[[nodiscard]] Result<MgrsParts> mgrsParts(const GridPoint& point, Digits digits);

struct PlaneFactors {
    Degrees convergence;  ///< grid north east of true north positive (GeographicLib's sign)
    double scale = 1;     ///< point scale factor
};
[[nodiscard]] Result<PlaneFactors> factors(const GridPoint& point);

}  // namespace crosstick::geodesy
