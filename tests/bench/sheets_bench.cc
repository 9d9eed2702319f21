// A sheet of 400 million pixels: its first picture, its copy and the tiles of it, each beside the same work by GDAL
// alone.
#include <cmath>
#include <cstdlib>
#include <filesystem>

#include <benchmark/benchmark.h>
#include <cpl_string.h>
#include <gdal_priv.h>
#include <unistd.h>

#include "core/sheets/raster.h"
#include "tests/places.h"
#include "tests/sheets/our_reader.h"

namespace crosstick {
namespace {

constexpr int kSide = 20000;
constexpr int kTile = 512;
constexpr int kGlance = 2048;

/// Contours on a tinted ground, in strips and without overviews, as a scanner writes it.
void makeSheet(const std::filesystem::path& file) {
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    CPLStringList options;
    options.SetNameValue("PHOTOMETRIC", "RGB");
    GDALDataset* sheet = driver->Create(file.c_str(), kSide, kSide, 3, GDT_Byte, options.List());
    std::vector<std::uint8_t> row(std::size_t{kSide} * 3);
    for (int y = 0; y < kSide; ++y) {
        for (int x = 0; x < kSide; ++x) {
            const double height = std::sin(x / 410.0) * std::cos(y / 530.0) * 90;
            const bool line = std::abs(height - std::round(height / 10) * 10) < 0.4;
            std::uint8_t* pixel = &row[static_cast<std::size_t>(x) * 3];
            pixel[0] = line ? 150 : 240;
            pixel[1] = line ? 100 : static_cast<std::uint8_t>(225 + height / 10 + ((x * 7 + y * 13) % 5));
            pixel[2] = line ? 60 : 215;
        }
        if (sheet->RasterIO(GF_Write, 0, y, kSide, 1, row.data(), kSide, 1, GDT_Byte, 3, nullptr, 3,
                            GSpacing{3} * kSide, 1, nullptr) != CE_None) {
            std::abort();
        }
    }
    GDALClose(GDALDataset::ToHandle(sheet));
}

const std::filesystem::path& folder() {
    static const std::filesystem::path kFolder =
        std::filesystem::temp_directory_path() / ("crosstick-sheets-" + std::to_string(::getpid()));
    return kFolder;
}
std::filesystem::path sheetFile() {
    return folder() / "sheet.tif";
}

/// A reader whose cache is empty each time.
sheets::ForeignReader freshReader() {
    std::filesystem::remove_all(folder() / "cache");
    return {places::foreignReader(), sheets::SheetCache(folder() / "cache")};
}

const std::filesystem::path& copyFile() {
    static const std::filesystem::path kCopy = [] {
        const sheets::ForeignReader reader(places::foreignReader(), sheets::SheetCache(folder() / "kept"));
        return reader.sheet(sheetFile()).value_or(std::filesystem::path());
    }();
    return kCopy;
}

void firstPictureByGdal(benchmark::State& state) {
    for (auto _ : state) {
        GDALDataset* sheet = GDALDataset::FromHandle(GDALOpen(sheetFile().c_str(), GA_ReadOnly));
        std::vector<std::uint8_t> picture(std::size_t{kGlance} * kGlance * 3);
        if (sheet->RasterIO(GF_Read, 0, 0, kSide, kSide, picture.data(), kGlance, kGlance, GDT_Byte, 3, nullptr, 3,
                            GSpacing{3} * kGlance, 1, nullptr) != CE_None) {
            state.SkipWithError("not read");
        }
        benchmark::DoNotOptimize(picture.data());
        GDALClose(GDALDataset::ToHandle(sheet));
    }
}

void firstPictureByTheReader(benchmark::State& state) {
    for (auto _ : state) {
        bool seen = false;
        sheets::Watch watch;
        watch.show = [&](const sheets::Pixels& picture) { seen = picture.columns == kGlance; };
        watch.isStopped = [&] { return seen; };
        const auto copy = freshReader().sheet(sheetFile(), watch);
        if (!seen) {
            state.SkipWithError("not shown");
        }
        benchmark::DoNotOptimize(copy);
    }
}

/// Tiled JPEG of quality 88, then overviews: what GDAL's own two calls make of it.
void copyByGdalInTwoSteps(benchmark::State& state) {
    for (auto _ : state) {
        CPLStringList options;
        for (const char* option : {"TILED=YES", "BLOCKXSIZE=512", "BLOCKYSIZE=512", "COMPRESS=JPEG",
                                   "PHOTOMETRIC=YCBCR", "JPEG_QUALITY=88"}) {
            options.AddString(option);
        }
        GDALDataset* sheet = GDALDataset::FromHandle(GDALOpen(sheetFile().c_str(), GA_ReadOnly));
        GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
        const auto out = folder() / "two-steps.tif";
        GDALDataset* copy = driver->CreateCopy(out.c_str(), sheet, FALSE, options.List(), nullptr, nullptr);
        GDALClose(GDALDataset::ToHandle(copy));
        GDALClose(GDALDataset::ToHandle(sheet));
        copy = GDALDataset::FromHandle(GDALOpen(out.c_str(), GA_Update));
        std::array factors{2, 4, 8, 16, 32, 64};
        if (copy->BuildOverviews("AVERAGE", 6, factors.data(), 0, nullptr, nullptr, nullptr) != CE_None) {
            state.SkipWithError("no overviews");
        }
        GDALClose(GDALDataset::ToHandle(copy));
    }
}

void copyByTheReader(benchmark::State& state) {
    for (auto _ : state) {
        if (!freshReader().sheet(sheetFile())) {
            state.SkipWithError("no copy");
        }
    }
}

/// A walk over the sheet, one tile after the other, never the same twice.
class Walk {
  public:
    [[nodiscard]] sheets::PixelWindow next() {
        constexpr int kAcross = kSide / kTile;
        at_ = (at_ + 787) % (kAcross * kAcross);
        return {at_ % kAcross * kTile, at_ / kAcross * kTile, kTile, kTile};
    }

  private:
    int at_ = 0;
};

void tileByRasterIO(benchmark::State& state) {
    GDALDataset* copy = GDALDataset::FromHandle(GDALOpen(copyFile().c_str(), GA_ReadOnly));
    std::vector<std::uint8_t> tile(std::size_t{kTile} * kTile * 3);
    Walk walk;
    for (auto _ : state) {
        const auto w = walk.next();
        if (copy->RasterIO(GF_Read, w.column, w.row, kTile, kTile, tile.data(), kTile, kTile, GDT_Byte, 3, nullptr, 3,
                           GSpacing{3} * kTile, 1, nullptr) != CE_None) {
            state.SkipWithError("not read");
        }
        benchmark::DoNotOptimize(tile.data());
    }
    GDALClose(GDALDataset::ToHandle(copy));
}

void tileByUs(benchmark::State& state) {
    const auto raster = sheets::Raster::open(copyFile());
    Walk walk;
    for (auto _ : state) {
        const auto pixels = raster->read(walk.next(), kTile, kTile);
        benchmark::DoNotOptimize(pixels);
    }
}

BENCHMARK(firstPictureByGdal)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(firstPictureByTheReader)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(copyByGdalInTwoSteps)->UseRealTime()->Unit(benchmark::kMillisecond)->Iterations(2);
BENCHMARK(copyByTheReader)->UseRealTime()->Unit(benchmark::kMillisecond)->Iterations(2);
BENCHMARK(tileByRasterIO)->Unit(benchmark::kMicrosecond);
BENCHMARK(tileByUs)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace crosstick

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    GDALAllRegister();
    GDALSetCacheMax64(GIntBig{256} << 20);
    std::filesystem::create_directories(crosstick::folder());
    crosstick::makeSheet(crosstick::sheetFile());
    benchmark::RunSpecifiedBenchmarks();
    std::filesystem::remove_all(crosstick::folder());
    return 0;
}
