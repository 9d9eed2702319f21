// The crossings that ticks stand on, on what a sheet really prints: from the file through the reader, our copy and the
// table's lie.
#include <cmath>

#include <gtest/gtest.h>

#include "core/film/registration_edits.h"
#include "core/geodesy/crs.h"
#include "core/registration/snap.h"
#include "core/sheets/raster.h"
#include "core/sheets/sheet_file.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"
#include "ui/table/sheet_lie.h"

namespace crosstick::table {
namespace {

using registration::PixelPoint;

constexpr double kTolerance = 0.05;  // mm on paper
constexpr double kPixel = 2.5;       // m: ten of them to a millimetre at 1:25,000
constexpr double kScale = 25000;

/// How a sheet's raster lies on its own grid, and the grid of the work that it is brought to.
struct Lying {
    const char* name;
    const char* crs;
    const char* work;
    std::array<double, 6> placement;  ///< GDAL's six numbers
};

/// Lines on whole kilometres of the sheet's own grid, as a plotter would draw them on this raster.
void printSheet(const std::filesystem::path& file, const Lying& lying) {
    const auto& g = lying.placement;
    const auto ink = [](double metres) {
        const double off = std::abs(metres - std::round(metres / 1000) * 1000) / kPixel;
        return std::clamp(1.4 - off, 0.0, 1.0);
    };
    testing::makeSheet(
        file, {.columns = 1800, .rows = 1900, .crs = lying.crs, .placement = g, .value = [&](int column, int row, int) {
                   const double x = column + 0.5;
                   const double y = row + 0.5;
                   const double east = g[0] + g[1] * x + g[2] * y;
                   const double north = g[3] + g[4] * x + g[5] * y;
                   return 240 - 190 * std::max(ink(east), ink(north));
               }});
}

class TicksOnTheSheet : public ::testing::TestWithParam<Lying> {};

TEST_P(TicksOnTheSheet, LieOnThePrintedCrossings) {
    const testing::Folder folder;
    const auto file = folder / "sheet.tif";
    printSheet(file, GetParam());
    const auto sheet = sheets::describeSheet(testing::reader(), file, IdSource(7).next(), {Scale{kScale}, {}});
    ASSERT_TRUE(sheet.has_value()) << sheet.error().fault.name;
    const auto copy = testing::reader().sheet(file);
    ASSERT_TRUE(copy.has_value());
    const auto raster = sheets::Raster::open(*copy);
    ASSERT_TRUE(raster.has_value());
    const auto lie = SheetLie::of(*sheet, GetParam().work);
    const auto toWork = geodesy::PlaneLink::between(sheet->crs, GetParam().work);
    ASSERT_TRUE(lie && toWork);

    const auto spotOf = [&](geodesy::PlanePoint place) {
        const plan::RasterSpot spot = plan::inRaster(sheet->placement, place);
        return PixelPoint{spot.column, spot.row};
    };
    double worst = 0;
    for (const auto& [across, down] : {std::pair{0.2, 0.2}, {0.8, 0.25}, {0.25, 0.8}, {0.75, 0.75}}) {
        const geodesy::PlanePoint tick =
            film::crossingNear(plan::onGrid(sheet->placement, across * sheet->columns, down * sheet->rows),
                               film::printedTicks(Scale{kScale}));
        const PixelPoint at = spotOf(tick);
        const PixelPoint east = spotOf({tick.easting + Metres(1000), tick.northing});
        const PixelPoint north = spotOf({tick.easting, tick.northing + Metres(1000)});
        const auto printed = registration::crossingNear(
            registration::greyOf(*raster),
            {{at.x + 3, at.y - 2}, {east.x - at.x, east.y - at.y}, {north.x - at.x, north.y - at.y}}, 14);
        ASSERT_TRUE(printed.has_value() && printed->has_value());
        const geodesy::PlanePoint seen = lie->onGrid({(*printed)->x, (*printed)->y});
        const auto due = toWork->forward(tick);
        ASSERT_TRUE(due.has_value());
        const double metres =
            std::hypot((seen.easting - due->easting).value(), (seen.northing - due->northing).value());
        worst = std::max(worst, metres / kScale * 1000);
    }
    EXPECT_LE(worst, kTolerance);
    RecordProperty("worst mm", std::to_string(worst));
}

const double kTurned = kPixel * std::cos(0.12);
const double kAside = kPixel * std::sin(0.12);

INSTANTIATE_TEST_SUITE_P(
    Sheets, TicksOnTheSheet,
    ::testing::Values(
        Lying{"Upright", "EPSG:32625", "EPSG:32625", {648125, kPixel, 0, 5106100, 0, -kPixel}},
        Lying{"Turned", "EPSG:32625", "EPSG:32625", {648125, kTurned, kAside, 5106100, kAside, -kTurned}},
        Lying{"SouthUp", "EPSG:32625", "EPSG:32625", {648125, kPixel, 0, 5098100, 0, kPixel}},
        Lying{"TurnedUpsideDown", "EPSG:32625", "EPSG:32625", {655800, -kTurned, -kAside, 5098100, -kAside, kTurned}},
        Lying{"NeighbourZone", "EPSG:32626", "EPSG:32625", {265125, kPixel, 0, 5106100, 0, -kPixel}},
        Lying{"Ed50", "EPSG:23032", "EPSG:32632", {498125, kPixel, 0, 5309100, 0, -kPixel}},
        Lying{
            "TurnedOnAnotherDatum", "EPSG:23032", "EPSG:32632", {498125, kTurned, kAside, 5309100, kAside, -kTurned}}),
    [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace crosstick::table
