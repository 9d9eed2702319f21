#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "core/plan/sheet.h"
#include "core/units/result.h"
#include "core/worker/record.h"

namespace crosstick::sheets {

/// How a file's bands make a colour. Heights: they make none, they are numbers.
enum class Colours : std::uint8_t { Palette, Grey, GreyAlpha, Rgb, Rgba, Cmyk, Heights, Unknown };

using plan::HeightUnit;

/// What is known of the heights in a file.
struct HeightFacts {
    HeightUnit unit = HeightUnit::Unclear;
    std::optional<double> noData;  ///< the value that stands for "none here"
    std::string datum;             ///< "EGM96 height", empty where the file names none
    friend bool operator==(const HeightFacts&, const HeightFacts&) = default;
};

/// What a foreign file says of itself, as the worker read it. Nothing in it is believed before unpackReport() has
/// looked at it.
struct FileReport {
    std::string driver;         ///< of GDAL: "GTiff"
    int columns = 0, rows = 0;  ///< as it is looked at, a photo's orientation applied
    int bands = 0, bits = 8;    ///< bits of one value
    int pages = 1;              ///< the first one is read
    int orientation = 1;        ///< as EXIF counts, 1 to 8: how the stored pixels lie
    Colours colours = Colours::Unknown;
    std::string compression;  ///< "LZW", empty where there is none
    bool isLossy = false;     ///< its compression already lost something
    bool isWhole = true;      ///< every block of pixels that it promises lies inside the file
    int blockColumns = 0, blockRows = 0, overviews = 0;
    std::string crs;                                 ///< "EPSG:32625" or WKT 2; empty where it has none
    std::optional<std::array<double, 6>> placement;  ///< GDAL's six numbers, in the unit of the CRS
    int controlPoints = 0;                           ///< that the file carries in place of a placement
    std::optional<double> dotsPerMetre;              ///< of the scan, where the file says so
    std::optional<HeightFacts> heights;              ///< where it may be a height model
    std::map<std::string, std::string> printed;      ///< what it says of the sheet: SERIES, NAME, SCALE, ...
    friend bool operator==(const FileReport&, const FileReport&) = default;
};

[[nodiscard]] worker::Record packReport(const FileReport& report);
/// Errors: worker/garbled for a record that is none, or holds what no file can have (a size below 1 or over the limits,
/// a number that is not finite, a text too long).
[[nodiscard]] Result<FileReport> unpackReport(const worker::Record& record);

/// How our copy of a sheet is packed. Lossy (JPEG of quality 88) where the file itself lost something already, and for
/// colours of over 100 million pixels, which would fill the disk otherwise; line maps in few inks never are.
enum class Packing : std::uint8_t { Lossless, Lossy };
[[nodiscard]] Packing packingFor(Colours colours, bool isLossy, int columns, int rows);

inline constexpr int kLongestSide = 100000;
inline constexpr double kMostPixels = 4e9;
inline constexpr double kMostCells = 1e8;  ///< of a height model: 400 MB of floats

}  // namespace crosstick::sheets
