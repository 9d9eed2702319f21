// One clear error for every file that is no sheet, and nothing on standard error.
#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "core/sheets/elevation.h"
#include "core/sheets/faults.h"
#include "core/sheets/sheet_file.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::makeSheet;
using testing::writeText;

std::string_view faultOf(const std::filesystem::path& file) {
    const auto sheet = describeSheet(file, Uuid{}, Scale{25000});
    return sheet ? "none" : sheet.error().fault.name;
}

TEST(BrokenSheet, EachHasItsOwnFault) {
    const Folder folder;
    EXPECT_EQ(faultOf(folder / "missing.tif"), kFileMissing.name);
    writeText(folder / "empty.tif", "");
    EXPECT_EQ(faultOf(folder / "empty.tif"), kNotARaster.name);
    writeText(folder / "text.tif", "PL TRIVET runs along the road.\n");
    EXPECT_EQ(faultOf(folder / "text.tif"), kNotARaster.name);
    makeSheet(folder / "nocrs.tif", {.crs = ""});
    EXPECT_EQ(faultOf(folder / "nocrs.tif"), kNoCrs.name);
    makeSheet(folder / "degrees.tif", {.crs = "EPSG:4326", .placement = {-31, 0.001, 0, 46, 0, -0.001}});
    EXPECT_EQ(faultOf(folder / "degrees.tif"), kCrsGeographic.name);
    makeSheet(folder / "noplace.tif", {.placement = {0, 0, 0, 0, 0, 0}});
    EXPECT_EQ(faultOf(folder / "noplace.tif"), kNoPlacement.name);
}

TEST(BrokenSheet, AFolderOrAnotherFormatIsNotOpened) {
    const Folder folder;
    EXPECT_EQ(faultOf(folder / "."), kFileMissing.name);
    writeText(folder / "picture.tif", "\x89PNG\r\n\x1a\n and no more");
    EXPECT_EQ(faultOf(folder / "picture.tif"), kNotARaster.name);
}

TEST(BrokenSheet, ACutFileIsDamagedWhereItsPixelsEnd) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.columns = 400, .rows = 400, .bands = 3, .value = [](int c, int r, int b) {
                                     return (c * 7 + r * 13 + b) % 251;
                                 }});
    std::filesystem::resize_file(folder / "a.tif", 100000);
    const auto raster = Raster::open(folder / "a.tif");
    if (!raster) {
        EXPECT_EQ(raster.error().fault, kNotARaster);
        return;
    }
    const auto pixels = raster->read({0, 0, 400, 400}, 400, 400);
    ASSERT_FALSE(pixels.has_value());
    EXPECT_EQ(pixels.error().fault, kDamaged);
}

// The head of a file says all that a plan needs, so the pixels are looked for before a plan is begun on them.
TEST(BrokenSheet, ACopyThatBrokeOffIsRefusedBeforeAPlanIsBegunOnIt) {
    const Folder folder;
    for (const std::vector<std::string>& options :
         {std::vector<std::string>{}, {"TILED=YES", "COMPRESS=DEFLATE"}, {"INTERLEAVE=BAND"}}) {
        makeSheet(folder / "a.tif",
                  {.columns = 400, .rows = 400, .bands = 3, .options = options, .value = [](int c, int r, int b) {
                       return (c * 7 + r * 13 + b * c) % 251;
                   }});
        EXPECT_EQ(faultOf(folder / "a.tif"), "none");
        const auto size = std::filesystem::file_size(folder / "a.tif");
        // The strips of a file that GDAL writes come last, so a few bytes less are pixels less.
        std::filesystem::resize_file(folder / "a.tif", size - 500);
        EXPECT_EQ(faultOf(folder / "a.tif"), kDamaged.name);
    }
}

TEST(BrokenSheet, EveryCutOfASmallFileIsAnErrorOrAPicture) {
    const Folder folder;
    makeSheet(folder / "a.tif",
              {.columns = 20, .rows = 20, .options = {"COMPRESS=DEFLATE"}, .value = [](int c, int, int) { return c; }});
    const auto size = std::filesystem::file_size(folder / "a.tif");
    for (auto length = size; length-- > 0;) {
        std::filesystem::copy_file(folder / "a.tif", folder / "cut.tif",
                                   std::filesystem::copy_options::overwrite_existing);
        std::filesystem::resize_file(folder / "cut.tif", length);
        const auto raster = Raster::open(folder / "cut.tif");
        if (raster) {
            const auto pixels = raster->read({0, 0, 20, 20}, 20, 20);
            EXPECT_TRUE(pixels || pixels.error().fault == kDamaged) << length;
        } else {
            EXPECT_EQ(raster.error().fault, kNotARaster) << length;
        }
    }
}

TEST(BrokenSheet, SizesBeyondReasonAreRefusedBeforeTheyCostMemory) {
    const Folder folder;
    makeSheet(folder / "wide.tif", {.columns = 100001, .rows = 1, .options = {"SPARSE_OK=TRUE"}});
    EXPECT_EQ(faultOf(folder / "wide.tif"), kTooLarge.name);
    makeSheet(folder / "vast.tif",
              {.columns = 90000, .rows = 90000, .options = {"SPARSE_OK=TRUE", "TILED=YES", "BIGTIFF=YES"}});
    EXPECT_EQ(faultOf(folder / "vast.tif"), kTooLarge.name);
    makeSheet(folder / "block.tif",
              {.columns = 30000,
               .rows = 30000,
               .options = {"SPARSE_OK=TRUE", "TILED=YES", "BLOCKXSIZE=20480", "BLOCKYSIZE=20480"}});
    EXPECT_EQ(faultOf(folder / "block.tif"), kBlockTooLarge.name);
    makeSheet(folder / "model.tif",
              {.columns = 20000, .rows = 20000, .options = {"SPARSE_OK=TRUE", "TILED=YES", "COMPRESS=DEFLATE"}});
    const auto model = Elevation::open(folder / "model.tif", "EPSG:32625");
    ASSERT_FALSE(model.has_value());
    EXPECT_EQ(model.error().fault, kTooLarge);
}

TEST(BrokenSheet, ColoursThatAreNoneOfOursAreRefused) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.bands = 4, .options = {"PHOTOMETRIC=CMYK"}});
    const auto raster = Raster::open(folder / "a.tif");
    ASSERT_FALSE(raster.has_value());
    EXPECT_EQ(raster.error().fault, kColours);
}

TEST(BrokenSheet, NothingIsSaidOnStandardError) {
    const Folder folder;
    writeText(folder / "text.tif", "II*");
    ::testing::internal::CaptureStderr();
    EXPECT_EQ(faultOf(folder / "text.tif"), kNotARaster.name);
    EXPECT_EQ(::testing::internal::GetCapturedStderr(), "");
}

}  // namespace
}  // namespace crosstick::sheets
