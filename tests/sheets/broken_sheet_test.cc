// One clear error for every file that is no sheet, and nothing on standard error.
#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "core/sheets/elevation.h"
#include "core/sheets/faults.h"
#include "core/sheets/raster.h"
#include "core/sheets/sheet_file.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::makeSheet;
using testing::writeText;

std::string_view faultOf(const std::filesystem::path& file) {
    const auto sheet = describeSheet(testing::reader(), file, Uuid{}, {Scale{25000}, {}});
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

TEST(BrokenSheet, AFolderOrABrokenPictureIsNotOpened) {
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
    const auto copy = testing::reader().sheet(folder / "a.tif");
    ASSERT_FALSE(copy.has_value());
    EXPECT_TRUE(copy.error().fault == kDamaged || copy.error().fault == kNotARaster) << copy.error().fault.name;
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
    for (auto length = size; length > 0; length -= std::min<std::uintmax_t>(length, size / 20)) {
        std::filesystem::copy_file(folder / "a.tif", folder / "cut.tif",
                                   std::filesystem::copy_options::overwrite_existing);
        std::filesystem::resize_file(folder / "cut.tif", length);
        const auto copy = testing::reader().sheet(folder / "cut.tif");
        EXPECT_TRUE(copy || copy.error().fault == kDamaged || copy.error().fault == kNotARaster)
            << length << ": " << copy.error().fault.name;
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
    makeSheet(folder / "model.tif", {.columns = 20000,
                                     .rows = 20000,
                                     .depth = testing::Depth::Float,
                                     .options = {"SPARSE_OK=TRUE", "TILED=YES", "COMPRESS=DEFLATE"}});
    const auto model = Elevation::read(testing::reader(), folder / "model.tif", HeightUnit::Metre, "EPSG:32625");
    ASSERT_FALSE(model.has_value());
    EXPECT_EQ(model.error().fault, kTooLarge);
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
