#include <cmath>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/sheets/faults.h"
#include "core/sheets/sheet_file.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::makeSheet;

TEST(DescribeSheet, ReadsWhatTheFileSaysOfItself) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.touch = [](GDALDataset& dataset) {
                  for (const auto& [key, value] : {std::pair{"SERIES", "ISL 25"},
                                                   {"NAME", "ULMERAY SOUTH"},
                                                   {"NUMBER", "2"},
                                                   {"EDITION", "3"},
                                                   {"SCALE", "25000"},
                                                   {"DATUM", "WGS 84"},
                                                   {"GM_ANGLE_DEG", "-11"},
                                                   {"GM_DATE", "2027-03-01"},
                                                   {"GM_YEARLY_DEG", "0.2"},
                                                   {"ELEVATION", "ground.tif"}}) {
                      dataset.SetMetadataItem(key, value, "CROSSTICK");
                  }
              }});
    const auto sheet = describeSheet(testing::reader(), folder / "a.tif", Uuid{});
    ASSERT_TRUE(sheet.has_value());
    EXPECT_EQ(sheet->crs, "EPSG:32625");
    EXPECT_EQ(sheet->series, "ISL 25");
    EXPECT_EQ(sheet->name, "ULMERAY SOUTH");
    EXPECT_EQ(sheet->number, "2");
    EXPECT_EQ(sheet->edition, "3");
    EXPECT_EQ(sheet->scale.denominator, 25000);
    EXPECT_EQ(sheet->datum, "WGS 84");
    ASSERT_TRUE(sheet->declination.has_value());
    EXPECT_EQ(sheet->declination->gmAngle, Degrees(-11));
    EXPECT_EQ(sheet->declination->yearlyChange, Degrees(0.2));
    EXPECT_EQ(sheet->elevationPath, "ground.tif");
    EXPECT_EQ(sheet->columns, 64);
    EXPECT_EQ(sheet->rows, 48);
    EXPECT_EQ(sheet->placement.corner, (geodesy::PlanePoint{Metres(648125), Metres(5106000)}));
    EXPECT_EQ(sheet->bytes, static_cast<std::int64_t>(std::filesystem::file_size(folder / "a.tif")));
}

TEST(DescribeSheet, ScaleIsGivenOrDerivedButNeverInvented) {
    const Folder folder;
    const auto dots = [](const char* number) {
        return [number](GDALDataset& dataset) {
            dataset.SetMetadataItem("TIFFTAG_XRESOLUTION", number);
            dataset.SetMetadataItem("TIFFTAG_YRESOLUTION", number);
            dataset.SetMetadataItem("TIFFTAG_RESOLUTIONUNIT", "2");
        };
    };
    // 2.5 m a pixel at 254 to the inch: 25.4 mm / 254 = 0.1 mm, so 1:25,000.
    makeSheet(folder / "known.tif", {.touch = dots("254")});
    EXPECT_EQ(describeSheet(testing::reader(), folder / "known.tif", Uuid{})->scale.denominator, 25000);
    // At 72, as a drawing program writes without thought: 1:7,087, no map's scale.
    makeSheet(folder / "unknown.tif", {.touch = dots("72")});
    const auto unknown = describeSheet(testing::reader(), folder / "unknown.tif", Uuid{});
    ASSERT_FALSE(unknown.has_value());
    EXPECT_EQ(unknown.error().fault, kNoScale);
    EXPECT_EQ(describeSheet(testing::reader(), folder / "unknown.tif", Uuid{}, {Scale{50000}, {}})->scale.denominator,
              50000);
}

TEST(DescribeSheet, FeetBecomeMetres) {
    const Folder folder;
    // EPSG:2225, California zone 1 in US survey feet of 1200/3937 m (EPSG unit 9003).
    makeSheet(folder / "a.tif", {.crs = "EPSG:2225", .placement = {6000000, 10, 0, 2000000, 0, -10}});
    const auto sheet = describeSheet(testing::reader(), folder / "a.tif", Uuid{}, {Scale{24000}, {}});
    ASSERT_TRUE(sheet.has_value());
    const double foot = 1200.0 / 3937;
    EXPECT_NEAR(sheet->placement.corner.easting.value(), 6000000 * foot, 1e-6);
    EXPECT_NEAR(sheet->placement.eastPerColumn, 10 * foot, 1e-12);
    EXPECT_NEAR(sheet->placement.northPerRow, -10 * foot, 1e-12);
}

TEST(DescribeSheet, TurnedAndSouthUpPlacementsAreKept) {
    const Folder folder;
    makeSheet(folder / "turned.tif", {.placement = {648125, 2, 0.5, 5106000, 0.5, -2}});
    const auto turned = describeSheet(testing::reader(), folder / "turned.tif", Uuid{}, {Scale{25000}, {}});
    ASSERT_TRUE(turned.has_value());
    EXPECT_EQ(turned->placement.eastPerRow, 0.5);
    EXPECT_EQ(turned->placement.northPerColumn, 0.5);
    makeSheet(folder / "south.tif", {.placement = {648125, 2, 0, 5096000, 0, 2}});
    const auto south = describeSheet(testing::reader(), folder / "south.tif", Uuid{}, {Scale{25000}, {}});
    ASSERT_TRUE(south.has_value());
    EXPECT_EQ(south->placement.northPerRow, 2);
}

TEST(DescribeSheet, ChecksumIsThatOfTheBytes) {
    const Folder folder;
    testing::writeText(folder / "abc", "abc");
    // FIPS 180-4, first example.
    EXPECT_EQ(fileSha256(folder / "abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

}  // namespace
}  // namespace crosstick::sheets
