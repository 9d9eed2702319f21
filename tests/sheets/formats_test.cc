// Every kind of file that a map depot, a scanner or a camera gives, with pixels that are known.
#include <array>
#include <cstdlib>
#include <fstream>

#include <cpl_string.h>
#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/geodesy/crs.h"
#include "core/sheets/elevation.h"
#include "core/sheets/faults.h"
#include "core/sheets/raster.h"
#include "core/sheets/sheet_file.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Depth;
using testing::Folder;
using testing::makeSheet;
using testing::Recipe;

constexpr int kColumns = 96;
constexpr int kRows = 64;

/// Four fields: red, green / blue, white.
double fields(int column, int row, int band) {
    const bool right = column >= kColumns / 2;
    const bool low = row >= kRows / 2;
    const std::array<double, 3> colour = low ? (right ? std::array{255.0, 255.0, 255.0} : std::array{0.0, 0.0, 255.0})
                                             : (right ? std::array{0.0, 255.0, 0.0} : std::array{255.0, 0.0, 0.0});
    return colour.at(static_cast<std::size_t>(band - 1) % 3);
}

enum class Placed { No, Yes };

void makeFields(const std::filesystem::path& file, Placed placed) {
    Recipe recipe{.columns = kColumns, .rows = kRows, .bands = 3, .options = {"PHOTOMETRIC=RGB"}, .value = fields};
    if (placed == Placed::No) {
        recipe.crs.clear();
        recipe.placement = {};
    }
    makeSheet(file, recipe);
}

/// The same picture in another form, by GDAL's own writer.
void convert(const std::filesystem::path& from, const std::filesystem::path& to, const char* driver,
             const std::vector<std::string>& words = {}) {
    GDALAllRegister();
    CPLStringList options;
    for (const std::string& word : words) {
        options.AddString(word.c_str());
    }
    GDALDataset* source = GDALDataset::FromHandle(GDALOpen(from.c_str(), GA_ReadOnly));
    GDALDriver* writer = GetGDALDriverManager()->GetDriverByName(driver);
    ASSERT_NE(writer, nullptr) << driver;
    GDALDataset* made = writer->CreateCopy(to.c_str(), source, FALSE, options.List(), nullptr, nullptr);
    ASSERT_NE(made, nullptr) << driver;
    GDALClose(GDALDataset::ToHandle(made));
    GDALClose(GDALDataset::ToHandle(source));
}

Pixels seen(const std::filesystem::path& file) {
    const auto raster =
        testing::reader().sheet(file).and_then([](const std::filesystem::path& copy) { return Raster::open(copy); });
    if (!raster) {
        ADD_FAILURE() << file << ": " << raster.error().fault.name;
        return {};
    }
    return raster->read({0, 0, raster->columns(), raster->rows()}, raster->columns(), raster->rows())
        .value_or(Pixels{});
}

std::uint32_t at(const Pixels& pixels, double acrossShare, double downShare) {
    const auto column = static_cast<std::size_t>(acrossShare * pixels.columns);
    const auto row = static_cast<std::size_t>(downShare * pixels.rows);
    return pixels.rgb.empty() ? 0 : pixels.rgb[row * static_cast<std::size_t>(pixels.columns) + column];
}

int distance(std::uint32_t a, std::uint32_t b) {
    int most = 0;
    for (const unsigned shift : {0U, 8U, 16U}) {
        most = std::max(most, std::abs(static_cast<int>((a >> shift) & 255U) - static_cast<int>((b >> shift) & 255U)));
    }
    return most;
}

/// Upper left, upper right, lower left, lower right.
void expectFields(const Pixels& pixels, std::array<std::uint32_t, 4> colours, int tolerance, const std::string& what) {
    EXPECT_LE(distance(at(pixels, 0.25, 0.25), colours[0]), tolerance) << what;
    EXPECT_LE(distance(at(pixels, 0.75, 0.25), colours[1]), tolerance) << what;
    EXPECT_LE(distance(at(pixels, 0.25, 0.75), colours[2]), tolerance) << what;
    EXPECT_LE(distance(at(pixels, 0.75, 0.75), colours[3]), tolerance) << what;
}
constexpr std::array<std::uint32_t, 4> kFields{0xffff0000U, 0xff00ff00U, 0xff0000ffU, 0xffffffffU};

TEST(Formats, PicturesOfEveryKindComeOutRight) {
    const Folder folder;
    makeFields(folder / "source.tif", Placed::Yes);
    struct Form {
        const char* name;
        const char* driver;
        std::vector<std::string> options;
        int tolerance;
    };
    const std::array forms{Form{"a.png", "PNG", {}, 0},
                           Form{"a.jpg", "JPEG", {"QUALITY=95"}, 12},
                           Form{"progressive.jpg", "JPEG", {"QUALITY=95", "PROGRESSIVE=ON"}, 12},
                           Form{"a.bmp", "BMP", {}, 0},
                           Form{"a.webp", "WEBP", {"LOSSLESS=YES"}, 2},
                           Form{"lzw.tif", "GTiff", {"COMPRESS=LZW"}, 0},
                           Form{"deflate.tif", "GTiff", {"COMPRESS=DEFLATE", "TILED=YES"}, 0},
                           Form{"packbits.tif", "GTiff", {"COMPRESS=PACKBITS", "INTERLEAVE=BAND"}, 0},
                           Form{"jpeg.tif", "GTiff", {"COMPRESS=JPEG", "PHOTOMETRIC=YCBCR", "JPEG_QUALITY=95"}, 12},
                           Form{"big.tif", "GTiff", {"BIGTIFF=YES", "ENDIANNESS=BIG"}, 0},
                           Form{"a.pdf", "PDF", {"DPI=300"}, 12}};
    for (const Form& form : forms) {
        convert(folder / "source.tif", folder / form.name, form.driver, form.options);
        expectFields(seen(folder / form.name), kFields, form.tolerance, form.name);
    }
}

TEST(Formats, TheEndingOfANameMeansNothing) {
    const Folder folder;
    makeFields(folder / "source.tif", Placed::Yes);
    convert(folder / "source.tif", folder / "really.png", "JPEG", {"QUALITY=95"});
    expectFields(seen(folder / "really.png"), kFields, 12, "a JPEG named .png");
    EXPECT_EQ(testing::reader().inspect(folder / "really.png")->driver, "JPEG");
}

TEST(Formats, DeepGreyAndColourAreCutToEightBits) {
    const Folder folder;
    makeSheet(folder / "rgb16.tif", {.columns = kColumns,
                                     .rows = kRows,
                                     .bands = 3,
                                     .depth = Depth::UInt16,
                                     .options = {"PHOTOMETRIC=RGB"},
                                     .value = [](int c, int r, int b) { return 257 * fields(c, r, b); }});
    expectFields(seen(folder / "rgb16.tif"), kFields, 0, "16 bit RGB");
    makeSheet(folder / "grey12.tif", {.columns = kColumns,
                                      .rows = kRows,
                                      .depth = Depth::UInt16,
                                      .options = {"NBITS=12"},
                                      .value = [](int c, int, int) { return c < kColumns / 2 ? 0 : 4095; }});
    expectFields(seen(folder / "grey12.tif"), {0xff000000U, 0xffffffffU, 0xff000000U, 0xffffffffU}, 0, "12 bit grey");
}

TEST(Formats, ADeepPictureThatWouldBeBlackSpansWhatItHolds) {
    const Folder folder;
    makeSheet(folder / "dark.tif",
              {.columns = kColumns, .rows = kRows, .depth = Depth::UInt16, .value = [](int c, int, int) {
                   return c < kColumns / 2 ? 300 : 700;
               }});
    expectFields(seen(folder / "dark.tif"), {0xff000000U, 0xffffffffU, 0xff000000U, 0xffffffffU}, 0, "dark");
}

// Cyan and yellow in full and no black: green, and so on round the circle.
TEST(Formats, FourInksBecomeColours) {
    const Folder folder;
    for (const char* order : {"INTERLEAVE=PIXEL", "INTERLEAVE=BAND"}) {
        makeSheet(folder / "cmyk.tif",
                  {.columns = kColumns,
                   .rows = kRows,
                   .bands = 4,
                   .options = {"PHOTOMETRIC=CMYK", order},
                   .value = [](int c, int r, int b) { return b == 4 ? 0.0 : 255 - fields(c, r, b); }});
        expectFields(seen(folder / "cmyk.tif"), kFields, 0, order);
    }
}

TEST(Formats, APhotoIsTurnedAsItsCameraSays) {
    const Folder folder;
    makeFields(folder / "source.tif", Placed::No);
    convert(folder / "source.tif", folder / "upright.jpg", "JPEG", {"QUALITY=95", "WORLDFILE=NO"});
    std::ifstream in(folder / "upright.jpg", std::ios::binary);
    const std::string jpeg{std::istreambuf_iterator<char>(in), {}};
    const std::uint32_t red = kFields[0];
    const std::uint32_t green = kFields[1];
    const std::uint32_t blue = kFields[2];
    const std::uint32_t white = kFields[3];
    // As EXIF 2.3, tag 0x0112, tells where the stored row 0 and column 0 lie in the picture: upper left to lower right.
    const std::array<std::array<std::uint32_t, 4>, 8> turned{{{red, green, blue, white},
                                                              {green, red, white, blue},
                                                              {white, blue, green, red},
                                                              {blue, white, red, green},
                                                              {red, blue, green, white},
                                                              {blue, red, white, green},
                                                              {white, green, blue, red},
                                                              {green, white, red, blue}}};
    for (char orientation = 1; orientation <= 8; ++orientation) {
        const std::string name = "turned" + std::to_string(orientation) + ".jpg";
        // An APP1 segment with one EXIF entry behind the start mark: 0x0112, SHORT, 1, the orientation.
        const std::string exif = std::string(
                                     "\xff\xe1\x00\x22"
                                     "Exif\x00\x00"
                                     "MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00",
                                     4 + 6 + 19) +
                                 orientation + std::string(6, '\0');
        testing::writeText(folder / name.c_str(), jpeg.substr(0, 2) + exif + jpeg.substr(2));
        const auto report = testing::reader().inspect(folder / name.c_str());
        ASSERT_TRUE(report.has_value()) << name;
        EXPECT_EQ(report->orientation, orientation);
        EXPECT_EQ(report->columns, orientation < 5 ? kColumns : kRows) << name;
        const Pixels pixels = seen(folder / name.c_str());
        EXPECT_EQ(pixels.columns, report->columns);
        expectFields(pixels, turned.at(static_cast<std::size_t>(orientation - 1)), 12, name);
    }
}

TEST(Formats, AWorldFilePlacesAPictureAndItsGridIsAskedFor) {
    const Folder folder;
    makeFields(folder / "source.tif", Placed::No);
    convert(folder / "source.tif", folder / "a.png", "PNG");
    const auto bare = describeSheet(testing::reader(), folder / "a.png", Uuid{}, {Scale{25000}, {}});
    ASSERT_FALSE(bare.has_value());
    EXPECT_EQ(bare.error().fault, kNoPlacement);
    // Pixel size, turn, turn, pixel size downwards, middle of the upper left pixel.
    testing::writeText(folder / "a.pgw", "2.5\n0\n0\n-2.5\n648126.25\n5105998.75\n");
    const auto placed = describeSheet(testing::reader(), folder / "a.png", Uuid{}, {Scale{25000}, {}});
    ASSERT_FALSE(placed.has_value());
    EXPECT_EQ(placed.error().fault, kNoCrs);
    const auto sheet = describeSheet(testing::reader(), folder / "a.png", Uuid{}, {Scale{25000}, "EPSG:32625"});
    ASSERT_TRUE(sheet.has_value());
    EXPECT_EQ(sheet->placement.corner, (geodesy::PlanePoint{Metres(648125), Metres(5106000)}));
    EXPECT_EQ(sheet->placement.eastPerColumn, 2.5);
    EXPECT_EQ(sheet->placement.northPerRow, -2.5);
}

TEST(Formats, APdfSheetTellsWhereItLies) {
    const Folder folder;
    makeFields(folder / "source.tif", Placed::Yes);
    convert(folder / "source.tif", folder / "a.pdf", "PDF", {"DPI=300"});
    const auto sheet = describeSheet(testing::reader(), folder / "a.pdf", Uuid{}, {Scale{25000}, {}});
    ASSERT_TRUE(sheet.has_value());
    EXPECT_EQ(sheet->crs, "EPSG:32625");
    EXPECT_NEAR(sheet->placement.corner.easting.value(), 648125, 1);
    EXPECT_NEAR(sheet->placement.corner.northing.value(), 5106000, 1);
}

TEST(Formats, HeightModelsOfEveryKindGiveTheSameHeights) {
    const Folder folder;
    // One degree square, as DTED level 0 and HGT want it: 121 by 121 and 1201 by 1201 posts at whole arc seconds.
    const auto model = [](int posts) {
        const double step = 1.0 / (posts - 1);
        return Recipe{
            .columns = posts,
            .rows = posts,
            .depth = Depth::Int16,
            .crs = "EPSG:4326",
            .placement = {-31 - step / 2, step, 0, 47 + step / 2, 0, -step},
            .value = [posts](int c, int r, int) { return 1000.0 * c / (posts - 1) + 500.0 * r / (posts - 1); }};
    };
    makeSheet(folder / "small.tif", model(121));
    makeSheet(folder / "large.tif", model(1201));
    convert(folder / "small.tif", folder / "a.dt0", "DTED");
    convert(folder / "large.tif", folder / "N46W031.hgt", "SRTMHGT");
    convert(folder / "small.tif", folder / "a.asc", "AAIGrid");
    const auto plane = geodesy::Plane::of("EPSG:32625");
    for (const char* name : {"small.tif", "large.tif", "a.dt0", "N46W031.hgt", "a.asc"}) {
        const auto heights = Elevation::read(testing::reader(), folder / name, HeightUnit::Metre, "EPSG:32625");
        ASSERT_TRUE(heights.has_value()) << name << ": " << heights.error().fault.name;
        const auto place = plane->plane({Degrees(46.75), Degrees(-30.5)});
        EXPECT_NEAR((*heights)->heightAt(*place).value_or(Metres(-1)).value(), 500 + 125, 1) << name;
    }
    EXPECT_EQ(testing::reader().inspect(folder / "a.dt0")->heights->unit, HeightUnit::Metre);
    EXPECT_EQ(testing::reader().inspect(folder / "N46W031.hgt")->heights->unit, HeightUnit::Metre);
    std::filesystem::remove(folder / "a.asc.aux.xml");  // where GDAL wrote the unit besides
    EXPECT_EQ(testing::reader().inspect(folder / "a.asc")->heights->unit, HeightUnit::Unclear);
}

}  // namespace
}  // namespace crosstick::sheets
