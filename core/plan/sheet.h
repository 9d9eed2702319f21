#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/measure.h"

namespace crosstick::plan {

/// What a sheet prints about magnetic north.
struct PrintedDeclination {
    Degrees gmAngle;       ///< grid to magnetic north, east positive
    CalendarDate date{};   ///< the date it holds for
    Degrees yearlyChange;  ///< of the angle, east positive
    UnknownFields unknown = {};
    friend bool operator==(const PrintedDeclination&, const PrintedDeclination&) = default;
};

/// How much longer than it should be the paper sheet is that people hold, along its grid's axes: it has worked, or its
/// print was not true.
struct PaperStretch {
    double eastPercent = 0, northPercent = 0;
    friend bool operator==(const PaperStretch&, const PaperStretch&) = default;
};
inline constexpr double kMostStretchPercent = 5;  ///< ours: no paper holds together so far

/// A point of a sheet's raster in its pixels; 0, 0 is the upper left corner of the upper left pixel.
struct RasterSpot {
    double column = 0, row = 0;
    friend bool operator==(RasterSpot, RasterSpot) = default;
};

/// A place of the printed grid that somebody found on the picture: what the placement was fitted to.
struct GridMark {
    RasterSpot spot;
    geodesy::PlanePoint place;  ///< in the sheet's grid
    friend bool operator==(const GridMark&, const GridMark&) = default;
};
inline constexpr std::size_t kMostGridMarks = 2000;

/// In what a height model counts.
enum class HeightUnit : std::uint8_t { Unclear, Metre, Foot, SurveyFoot };

/// Pixel (column, row; upper left corner of the raster is 0, 0) to the sheet's grid in metres.
struct Placement {
    geodesy::PlanePoint corner;  ///< of the raster's upper left pixel's upper left corner
    double eastPerColumn = 1, eastPerRow = 0, northPerColumn = 0, northPerRow = -1;  ///< metres a pixel
    friend bool operator==(const Placement&, const Placement&) = default;
};

/// A point of the raster on the sheet's grid.
[[nodiscard]] inline geodesy::PlanePoint onGrid(const Placement& p, double column, double row) {
    return {p.corner.easting + Metres(column * p.eastPerColumn + row * p.eastPerRow),
            p.corner.northing + Metres(column * p.northPerColumn + row * p.northPerRow)};
}

/// The point of the raster that lies at a place of the sheet's grid; not finite where the placement has no area.
[[nodiscard]] inline RasterSpot inRaster(const Placement& p, geodesy::PlanePoint place) {
    const double east = (place.easting - p.corner.easting).value();
    const double north = (place.northing - p.corner.northing).value();
    const double area = p.eastPerColumn * p.northPerRow - p.eastPerRow * p.northPerColumn;
    return {(east * p.northPerRow - north * p.eastPerRow) / area,
            (north * p.eastPerColumn - east * p.northPerColumn) / area};
}

/// How points of the sheet's datum are brought to WGS 84, in PROJ's words.
struct DatumShift {
    std::string name;                      ///< "ED50 to WGS 84 (18)"; empty where none is needed
    std::optional<Metres> accuracy;        ///< where PROJ states one
    std::string betterGrid;                ///< file that a more accurate way needs and that is not installed
    std::optional<Metres> betterAccuracy;  ///< of that way
    friend bool operator==(const DatumShift&, const DatumShift&) = default;
};

/// A map sheet as the plan knows it; the raster stays in its own file.
struct Sheet {
    SheetId id;
    std::string path;  ///< relative to the plan's folder where it lies inside it
    std::int64_t bytes = 0;
    std::string sha256;  ///< of the file, to find it again
    std::string crs;     ///< "EPSG:32625" or WKT; its grid is the grid of the work
    int columns = 0, rows = 0;
    Placement placement;
    std::vector<RasterSpot> neatline;  ///< corners, going round, of the map inside its collar; empty: all of the raster
    std::vector<GridMark> marks;  ///< by which a scan or photo was laid on its grid; empty: its file says where it lies
    Scale scale;
    /// For a scan or photo of somebody's film: how strong it lies over the maps, 0 to 1, its blank see-through.
    std::optional<double> asFilm;
    std::optional<PaperStretch> stretch;  ///< films are printed to fit it; none: exactly to scale
    std::string series, name, number, edition;
    std::string datum;  ///< as printed: "WGS 84"
    DatumShift datumShift;
    std::optional<PrintedDeclination> declination;
    std::string elevationPath;                       ///< a height model that goes with it, may be empty
    HeightUnit elevationUnit = HeightUnit::Unclear;  ///< where the model's own file does not say it
    UnknownFields unknown;
    friend bool operator==(const Sheet&, const Sheet&) = default;
};
using SheetPtr = std::shared_ptr<const Sheet>;

inline constexpr std::size_t kMostNeatlineCorners = 64;

/// Upper left, upper right, lower right, lower left.
[[nodiscard]] inline std::array<RasterSpot, 4> rasterCorners(const Sheet& s) {
    const double columns = s.columns;
    const double rows = s.rows;
    return {RasterSpot{0, 0}, {columns, 0}, {columns, rows}, {0, rows}};
}
/// The corners, going round, of what is shown of a sheet.
[[nodiscard]] inline std::vector<RasterSpot> outline(const Sheet& s) {
    const auto all = rasterCorners(s);
    return s.neatline.empty() ? std::vector<RasterSpot>(all.begin(), all.end()) : s.neatline;
}

}  // namespace crosstick::plan
