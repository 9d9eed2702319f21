#include <algorithm>
#include <cmath>
#include <sstream>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "tests/files/temporary_folder.h"
#include "tests/press/desk.h"
#include "tests/press/trace.h"

namespace crosstick::press {
namespace {

using drawing::Point;
using movement::at;

constexpr double kTolerance = 0.05;  // millimetres on paper

/// A plan's plane, a sheet on another grid, and a phase line of the plan that lies on the sheet.
struct Case {
    const char* name;
    geodesy::Zone zone;
    std::vector<geodesy::PlanePoint> line;  ///< in the plan's plane
    const char* planeCrs;
    const char* sheetCrs;
    geodesy::PlanePoint corner;  ///< of the sheet, upper left, in its own grid
};

class OtherGrid : public ::testing::TestWithParam<Case> {};

/// The same point by PROJ's own program. The order of axes is that of the CRS's own definition.
geodesy::PlanePoint byCs2cs(const Case& given, geodesy::PlanePoint point) {
    std::istringstream in(
        testing::outputOf(fmt::format("echo '{:.6f} {:.6f}' | cs2cs -f %.6f {} {}", point.easting.value(),
                                      point.northing.value(), given.planeCrs, given.sheetCrs)));
    double east = 0;
    double north = 0;
    in >> east >> north;
    return at(east, north);
}

TEST_P(OtherGrid, TicksLieOnTheSheetsOwnCrossingsAndMeasuresBesideThem) {
    const Case& given = GetParam();
    const plan::Plan plan = film::lineOn(given.zone, given.line, given.sheetCrs, given.corner, Metres(10000));
    const FilmSet set = testing::composed(plan);
    ASSERT_EQ(set.pages.size(), 1U);
    const FilmPage& film = set.pages.front();
    testing::TemporaryFolder folder;
    const auto file = folder / "film.pdf";
    ASSERT_TRUE(writeWhole(file, testing::pdfOf(plan, set)).has_value());
    const testing::TracedPage page = testing::trace(file, 1);

    ASSERT_GE(film.page.ticks.size(), 3U);
    const film::TickMark& first = film.page.ticks.front();
    const auto onPage = [&](geodesy::PlanePoint grid) {
        return first.onPage +
               Point{(grid.easting - first.at.easting).value() / 25, (first.at.northing - grid.northing).value() / 25};
    };
    for (const film::TickMark& tick : film.page.ticks) {
        // On whole kilometres of the sheet's own grid, each at its place from the first.
        EXPECT_EQ(std::fmod(tick.at.easting.value(), 1000), 0);
        EXPECT_EQ(std::fmod(tick.at.northing.value(), 1000), 0);
        const Point p = onPage(tick.at);
        EXPECT_TRUE(testing::hasStroke(page, p - Point{5, 0}, p + Point{5, 0}, kTolerance)) << tick.grid;
        EXPECT_TRUE(testing::hasStroke(page, p - Point{0, 5}, p + Point{0, 5}, kTolerance)) << tick.grid;
    }
    for (std::size_t n = 1; n + 1 < given.line.size(); ++n) {
        const Point expected = onPage(byCs2cs(given, given.line[n]));
        double nearest = 1e9;
        for (const testing::TracedLine& line : page.lines) {
            for (const Point p : line.points) {
                nearest = std::min(nearest, std::hypot(p.x - expected.x, p.y - expected.y));
            }
        }
        EXPECT_LT(nearest, kTolerance) << "point " << n;
    }
}

INSTANTIATE_TEST_SUITE_P(
    Sheets, OtherGrid,
    ::testing::Values(Case{"Ed50",
                           {32, geodesy::Hemisphere::North},
                           {at(501000, 5301500), at(502500, 5303000), at(504000, 5303500), at(505500, 5306000)},
                           "EPSG:32632",
                           "EPSG:23032",
                           at(498000, 5309000)},
                      Case{"SwissGrid",
                           {32, geodesy::Hemisphere::North},
                           {at(382000, 5200500), at(383500, 5202000), at(385000, 5202500), at(386500, 5205000)},
                           "EPSG:32632",
                           "EPSG:21781",
                           at(597000, 206500)},
                      Case{"NeighbourZone",
                           {25, geodesy::Hemisphere::North},
                           {at(732000, 5101500), at(733500, 5103000), at(735000, 5103500), at(736500, 5106000)},
                           "EPSG:32625",
                           "EPSG:32626",
                           at(265000, 5109000)}),
    [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace crosstick::press
