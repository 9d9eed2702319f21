#include "sample-data/sheet/sheet.h"

#include <fstream>
#include <iterator>
#include <map>

#include <gtest/gtest.h>

#include "core/sheets/sheet_file.h"
#include "sample-data/demo.h"
#include "sample-data/sheet/canvas.h"
#include "tests/files/temporary_folder.h"
#include "tests/places.h"
#include "tests/sheets/our_reader.h"
#include "ui/press/gui_start.h"

namespace crosstick::demo {
namespace {

const std::filesystem::path kShare = places::share();

// Definition of the sheet: 470 x 450 mm at 300 dots to the inch, 1:25,000, so a pixel is 25.4 / 300 mm * 25 m =
// 2.116666667 m; declination of the collar: G-M 11 degrees west, 12 minutes a year eastwards.
TEST(Sheet, SaysOfItselfWhatItsCollarPrints) {
    const testing::TemporaryFolder folder;
    const auto file = folder / "sheet.tif";
    QImage blank(SheetPaper::kColumns, SheetPaper::kRows, QImage::Format_RGB32);
    blank.fill(ink::kPaper);
    ASSERT_TRUE(writeSheet(blank, file).has_value());
    const auto sheet = sheets::describeSheet(testing::reader(), file, Uuid{});
    ASSERT_TRUE(sheet.has_value());
    EXPECT_EQ(sheet->crs, "EPSG:32625");
    EXPECT_EQ(sheet->columns, 5552);
    EXPECT_EQ(sheet->rows, 5315);
    EXPECT_EQ(sheet->placement.corner.easting.value(), 648125);
    EXPECT_EQ(sheet->placement.corner.northing.value(), 5106000);
    EXPECT_NEAR(sheet->placement.eastPerColumn, 2.116666667, 1e-9);
    EXPECT_NEAR(sheet->placement.northPerRow, -2.116666667, 1e-9);
    EXPECT_EQ(sheet->placement.eastPerRow, 0);
    EXPECT_EQ(sheet->placement.northPerColumn, 0);
    EXPECT_EQ(sheet->scale, Scale{25000});
    EXPECT_EQ(sheet->series, "ISL 25");
    EXPECT_EQ(sheet->name, "ULMERAY SOUTH");
    EXPECT_EQ(sheet->number, "2");
    EXPECT_EQ(sheet->edition, "3");
    EXPECT_EQ(sheet->datum, "WGS 84");
    EXPECT_EQ(sheet->elevationPath, "elevation.tif");
    ASSERT_TRUE(sheet->declination.has_value());
    EXPECT_NEAR(sheet->declination->gmAngle.value(), -11, 1e-12);
    EXPECT_NEAR(sheet->declination->yearlyChange.value(), 0.2, 1e-12);
}

std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

TEST(Demo, MadeTwiceHasTheSameBytesInEveryFile) {
    const press::GuiStart gui;
    const testing::TemporaryFolder folder;
    for (const char* name : {"one", "two"}) {
        ASSERT_TRUE(
            makeDemo({folder / name, kShare, testing::reader(), Existing::Keep, [](std::string_view) {}}).has_value());
    }
    for (const char* name : {"plan.gpkg", "sheet.tif", "elevation.tif"}) {
        const std::string once = bytesOf(folder / "one" / name);
        EXPECT_GT(once.size(), 10000U) << name;
        EXPECT_TRUE(once == bytesOf(folder / "two" / name)) << name;
    }
}

/// The sheet as it is painted, with its ground for comparison.
struct Painted {
    press::GuiStart gui;
    Island island = readIsland(kShare / "demo" / "island.json").value_or(Island{});
    Ground ground = makeGround(island);
    Result<PaintedSheet> sheet = paintSheet(ground, island, {kShare / "demo", kShare / "faces"});

    /// Is a place of the paper sea by the ground's own cells?
    [[nodiscard]] bool isSea(QPointF at) const {
        const Spot spot{SheetPaper::kCorner.east + at.x() * SheetPaper::kMetresPerMm,
                        SheetPaper::kCorner.north - at.y() * SheetPaper::kMetresPerMm};
        return ground.cover(ground.cover.lattice.nearestColumn(spot), ground.cover.lattice.nearestRow(spot)) ==
               Cover::Sea;
    }
};

TEST(SheetNames, AllStandInsideTheNeatLineOnTheirSideOfTheShore) {
    const Painted painted;
    ASSERT_TRUE(painted.sheet.has_value());
    const auto wanted =
        readData(kShare / "demo" / "names.json", [](const Json& names) { return names.at("names").size(); });
    ASSERT_TRUE(wanted.has_value());
    EXPECT_EQ(painted.sheet->names.size(), *wanted - 1);  // the island's own name lies across everything
    for (const PlacedName& name : painted.sheet->names) {
        EXPECT_TRUE(SheetPaper::neatLine().contains(name.letters.boundingRect())) << name.text;
        for (const QPolygonF& letter : name.letters.toSubpathPolygons()) {
            for (const QPointF corner : letter) {
                EXPECT_EQ(painted.isSea(corner), name.footing == Footing::Sea) << name.text;
            }
        }
    }
}

TEST(SheetNames, NeverOverlapEachOther) {
    const Painted painted;
    ASSERT_TRUE(painted.sheet.has_value());
    const auto& names = painted.sheet->names;
    for (std::size_t a = 0; a < names.size(); ++a) {
        for (std::size_t b = a + 1; b < names.size(); ++b) {
            EXPECT_FALSE(names[a].letters.intersects(names[b].letters)) << names[a].text << ", " << names[b].text;
        }
    }
}

}  // namespace
}  // namespace crosstick::demo
