// Sheets written where a fit lays them, read back by GDAL.
#include "core/registration/placed_sheet.h"

#include <cmath>
#include <filesystem>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/registration/faults.h"
#include "core/registration/least_squares.h"
#include "core/sheets/dataset.h"
#include "tests/registration/drawn_marks.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::registration {
namespace {

using testing::Folder;

constexpr int kColumns = 700, kRows = 900;

/// A picture whose grey tells its column and whose green its row.
sheets::Raster ramps(const Folder& folder) {
    testing::makeSheet(folder / "ramps.tif", {.columns = kColumns,
                                              .rows = kRows,
                                              .bands = 3,
                                              .crs = "",
                                              .placement = {},
                                              .value = [](int column, int row, int band) {
                                                  return band == 2 ? row * 200.0 / kRows : column * 200.0 / kColumns;
                                              }});
    return *sheets::Raster::open(*testing::reader().sheet(folder / "ramps.tif"));
}

/// Of the picture at a tenth of the made sheets' size.
std::vector<Mark> marksOf(const testing::Truth& truth) {
    auto marks = testing::allCrossings(truth);
    for (Mark& mark : marks) {
        mark.at = {mark.at.x * kColumns / 3800, mark.at.y * kRows / 4600};
    }
    return marks;
}

struct Opened {
    sheets::DatasetPtr dataset;
    std::array<double, 6> numbers{};
    explicit Opened(const std::filesystem::path& file)
        : dataset(GDALDataset::FromHandle(GDALOpen(file.c_str(), GA_ReadOnly))) {
        dataset->GetGeoTransform(numbers.data());
    }
    [[nodiscard]] double value(int band, int column, int row) const {
        float value = 0;
        EXPECT_EQ(dataset->GetRasterBand(band)->RasterIO(GF_Read, column, row, 1, 1, &value, 1, 1, GDT_Float32, 0, 0),
                  CE_None);
        return static_cast<double>(value);
    }
};

TEST(PlacedSheet, AnAffineOneKeepsItsPixels) {
    const Folder folder;
    const auto raster = ramps(folder);
    const Model model = solve(Kind::Affine, marksOf(testing::stretchedTruth()))->model;
    ASSERT_TRUE(writePlaced(raster, model, "EPSG:32632", Scale{25000}, folder / "out.tif").has_value());
    const Opened out(folder / "out.tif");
    EXPECT_EQ(out.dataset->GetRasterXSize(), kColumns);
    EXPECT_EQ(out.dataset->GetRasterYSize(), kRows);
    EXPECT_STREQ(out.dataset->GetSpatialRef()->GetAuthorityCode(nullptr), "32632");
    EXPECT_STREQ(out.dataset->GetMetadataItem("SCALE", "CROSSTICK"), "25000");
    const auto place = *model.place({300, 500});
    EXPECT_NEAR(out.numbers[0] + 300 * out.numbers[1] + 500 * out.numbers[2], place.easting.value(), 1e-4);
    EXPECT_NEAR(out.numbers[3] + 300 * out.numbers[4] + 500 * out.numbers[5], place.northing.value(), 1e-4);
    EXPECT_EQ(out.value(1, 350, 20), std::floor(350 * 200.0 / kColumns));
    EXPECT_EQ(out.value(2, 350, 720), 160);
    EXPECT_FALSE(std::filesystem::exists(folder / "out.tif.part"));
}

TEST(PlacedSheet, OthersAreLaidStraightEachPixelFromItsPlace) {
    const Folder folder;
    const auto raster = ramps(folder);
    for (const auto& [kind, truth] :
         {std::pair{Kind::Projective, testing::aslantTruth()}, {Kind::Quadratic, testing::bentTruth()}}) {
        const Model model = solve(kind, marksOf(truth))->model;
        ASSERT_TRUE(writePlaced(raster, model, "EPSG:32632", std::nullopt, folder / "out.tif").has_value());
        const Opened out(folder / "out.tif");
        EXPECT_EQ(out.numbers[2], 0);
        EXPECT_EQ(out.numbers[4], 0);
        for (int row = 40; row < out.dataset->GetRasterYSize() - 40; row += 97) {
            for (int column = 40; column < out.dataset->GetRasterXSize() - 40; column += 83) {
                const geodesy::PlanePoint place{Metres(out.numbers[0] + (column + 0.5) * out.numbers[1]),
                                                Metres(out.numbers[3] + (row + 0.5) * out.numbers[5])};
                const PixelPoint at = *model.pixel(place);
                if (at.x < 2 || at.y < 2 || at.x > kColumns - 2 || at.y > kRows - 2) {
                    continue;
                }
                // Steps of a grey in 3.5 pixels and a green in 4.5, cut off: a grey each way.
                EXPECT_NEAR(out.value(1, column, row), (at.x - 0.5) * 200.0 / kColumns - 0.5, 1.1);
                EXPECT_NEAR(out.value(2, column, row), (at.y - 0.5) * 200.0 / kRows - 0.5, 1.1);
            }
        }
        EXPECT_EQ(out.value(1, 0, 0), 255) << "the sheet lies turned: the corner is outside it";
    }
}

TEST(PlacedSheet, AFitThatRunsAwayIsRefused) {
    const Folder folder;
    const auto raster = ramps(folder);
    // Four marks near one corner, strongly aslant: the picture's far corner lies beyond the horizon.
    std::vector<Mark> marks;
    for (const auto& [x, y] : {std::pair{10.0, 10.0}, {110.0, 10.0}, {10.0, 110.0}, {110.0, 110.0}}) {
        const double depth = 1 - x / 400;
        marks.push_back({{x, y}, {Metres(1000 * x / depth), Metres(-1000 * y / depth)}});
    }
    const auto written =
        writePlaced(raster, solve(Kind::Projective, marks)->model, "EPSG:32632", std::nullopt, folder / "out.tif");
    ASSERT_FALSE(written.has_value());
    EXPECT_EQ(written.error().fault, kTooWide);
    EXPECT_FALSE(std::filesystem::exists(folder / "out.tif"));
}

TEST(PlacedSheet, AFolderThatIsNotThereIsAFault) {
    const Folder folder;
    const auto raster = ramps(folder);
    const Model model = solve(Kind::Affine, marksOf(testing::stretchedTruth()))->model;
    const auto written = writePlaced(raster, model, "EPSG:32632", std::nullopt, folder / "nowhere/out.tif");
    ASSERT_FALSE(written.has_value());
    EXPECT_EQ(written.error().fault, kCannotWrite);
}

}  // namespace
}  // namespace crosstick::registration
