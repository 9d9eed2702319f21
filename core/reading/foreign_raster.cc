#include "core/reading/foreign_raster.h"

#include <algorithm>
#include <array>

#include <gdal_priv.h>
#include <tiffio.h>

#include "core/reading/drivers.h"
#include "core/sheets/faults.h"
#include "core/units/number_text.h"

namespace crosstick::reading {
namespace {

using sheets::Pixels;
using sheets::PixelWindow;

/// Rows of a coarse picture that are shown at once, while the next are read.
constexpr int kGlanceRows = 64;

/// Orientations that exchange columns and rows.
bool isTransposed(int orientation) {
    return orientation >= 5;
}
bool runsLeft(int orientation) {  // stored columns run from right to left, or what they become from below
    return orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
}
bool runsUp(int orientation) {
    return orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
}

/// GDAL does not hand on this tag of a TIFF.
int tiffOrientation(const std::filesystem::path& file) {
    TIFFSetErrorHandler(nullptr);
    TIFFSetWarningHandler(nullptr);
    TIFF* tiff = TIFFOpen(file.c_str(), "r");
    std::uint16_t orientation = 1;
    if (tiff != nullptr) {
        TIFFGetField(tiff, TIFFTAG_ORIENTATION, &orientation);
        TIFFClose(tiff);
    }
    return orientation;
}

/// The stored window that is seen as `seen`.
PixelWindow storedWindow(PixelWindow seen, int orientation, int columns, int rows) {
    PixelWindow stored = seen;
    if (isTransposed(orientation)) {
        std::swap(stored.column, stored.row);
        std::swap(stored.columns, stored.rows);
    }
    if (runsLeft(orientation)) {
        stored.column = columns - stored.column - stored.columns;
    }
    if (runsUp(orientation)) {
        stored.row = rows - stored.row - stored.rows;
    }
    return stored;
}

}  // namespace

int orientationOf(GDALDataset& dataset, const std::filesystem::path& file) {
    std::array<double, 6> placement{};
    if (dataset.GetGeoTransform(placement.data()) == CE_None || dataset.GetGCPCount() > 0) {
        return 1;
    }
    int orientation = 1;
    if (const char* exif = dataset.GetMetadataItem("EXIF_Orientation"); exif != nullptr) {
        orientation = static_cast<int>(parseNumber(exif).value_or(1));
    } else if (EQUAL(dataset.GetDriverName(), "GTiff")) {
        orientation = tiffOrientation(file);
    }
    return orientation >= 1 && orientation <= 8 ? orientation : 1;
}

Pixels turned(const Pixels& stored, int orientation) {
    if (orientation == 1) {
        return stored;
    }
    Pixels seen;
    seen.columns = isTransposed(orientation) ? stored.rows : stored.columns;
    seen.rows = isTransposed(orientation) ? stored.columns : stored.rows;
    seen.rgb.resize(stored.rgb.size());
    for (int y = 0; y < seen.rows; ++y) {
        for (int x = 0; x < seen.columns; ++x) {
            const PixelWindow from = storedWindow({x, y, 1, 1}, orientation, stored.columns, stored.rows);
            seen.rgb[static_cast<std::size_t>(y) * static_cast<std::size_t>(seen.columns) +
                     static_cast<std::size_t>(x)] =
                stored.rgb[static_cast<std::size_t>(from.row) * static_cast<std::size_t>(stored.columns) +
                           static_cast<std::size_t>(from.column)];
        }
    }
    return seen;
}

Result<ForeignRaster> ForeignRaster::open(const std::filesystem::path& file) {
    auto dataset = openForeign(file);
    if (!dataset) {
        return tl::unexpected(dataset.error());
    }
    ForeignRaster raster;
    raster.inks_ = inksOf(**dataset);
    if (raster.inks_.colours == sheets::Colours::Unknown) {
        return fail(sheets::kColours, {{"file", file.string()}});
    }
    raster.file_ = file;
    raster.orientation_ = orientationOf(**dataset, file);
    raster.dataset_ = std::move(*dataset);
    return raster;
}

int ForeignRaster::columns() const {
    return isTransposed(orientation_) ? dataset_->GetRasterYSize() : dataset_->GetRasterXSize();
}
int ForeignRaster::rows() const {
    return isTransposed(orientation_) ? dataset_->GetRasterXSize() : dataset_->GetRasterYSize();
}

int ForeignRaster::rowsAtOnce(int few) const {
    constexpr int kMostPixels = 1 << 26;
    return EQUAL(dataset_->GetDriverName(), "PDF") ? std::max(few, kMostPixels / columns()) : few;
}

/// Bytes band by band within a pixel; values of another kind than bytes go through their tones.
bool ForeignRaster::read(PixelWindow w, int columns, int rows, std::uint8_t* bytes) const {
    const int bands = inks_.bands();
    std::vector<int> numbers(static_cast<std::size_t>(bands));
    for (int n = 0; n < bands; ++n) {
        numbers[static_cast<std::size_t>(n)] = n + 1;
    }
    const auto pull = [&](void* into, GDALDataType type) {
        const int size = GDALGetDataTypeSizeBytes(type);
        return dataset_->RasterIO(GF_Read, w.column, w.row, w.columns, w.rows, into, columns, rows, type, bands,
                                  numbers.data(), GSpacing{size} * bands, GSpacing{size} * bands * columns, size,
                                  nullptr) == CE_None;
    };
    if (dataset_->GetRasterBand(1)->GetRasterDataType() == GDT_Byte && inks_.tones.arePlain()) {
        return pull(bytes, GDT_Byte);
    }
    std::vector<float> values(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows) *
                              static_cast<std::size_t>(bands));
    if (!pull(values.data(), GDT_Float32)) {
        return false;
    }
    std::transform(values.begin(), values.end(), bytes,
                   [&](float value) { return inks_.tones.byte(static_cast<double>(value)); });
    return true;
}

Result<Pixels> ForeignRaster::readStored(PixelWindow w, int columns, int rows) const {
    const sheets::QuietGdal quiet;
    const auto count = static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
    std::vector<std::uint8_t> bytes(count * static_cast<std::size_t>(inks_.bands()));
    if (!read(w, columns, rows, bytes.data()) || isBroken(quiet)) {
        return tl::unexpected(
            damage(quiet, file_).with("column", std::int64_t{w.column}).with("row", std::int64_t{w.row}));
    }
    return Pixels{columns, rows, inks_.mixed(bytes)};
}

Result<Pixels> ForeignRaster::read(PixelWindow window) const {
    const PixelWindow stored =
        storedWindow(window, orientation_, dataset_->GetRasterXSize(), dataset_->GetRasterYSize());
    return readStored(stored, stored.columns, stored.rows).map([&](Pixels pixels) {
        return orientation_ == 1 ? std::move(pixels) : turned(pixels, orientation_);
    });
}

/// Some rows of a glance of so many columns and rows: of each the one stored row in its middle.
Result<Pixels> ForeignRaster::glanceRows(int first, int count, int columns, int rows) const {
    const sheets::QuietGdal quiet;
    const double down = dataset_->GetRasterYSize();
    const std::size_t line = static_cast<std::size_t>(columns) * static_cast<std::size_t>(inks_.bands());
    std::vector<std::uint8_t> bytes(line * static_cast<std::size_t>(count));
    for (int n = 0; n < count; ++n) {
        const int row = static_cast<int>((first + n + 0.5) * down / rows);
        if (!read({0, row, dataset_->GetRasterXSize(), 1}, columns, 1, &bytes[line * static_cast<std::size_t>(n)]) ||
            isBroken(quiet)) {
            return tl::unexpected(damage(quiet, file_).with("row", std::int64_t{row}));
        }
    }
    return Pixels{columns, count, inks_.mixed(bytes)};
}

Result<void> ForeignRaster::glance(int longestSide, const Show& show) const {
    const int across = dataset_->GetRasterXSize();
    const int down = dataset_->GetRasterYSize();
    const double share = std::min(1.0, static_cast<double>(longestSide) / std::max(across, down));
    const int columns = std::max(1, static_cast<int>(across * share));
    const int rows = std::max(1, static_cast<int>(down * share));
    // Smaller pictures that a file brings along, and pages that are drawn, are asked for whole.
    const bool isWhole = dataset_->GetRasterBand(1)->GetOverviewCount() > 0 || rowsAtOnce(1) > 1;
    const int atOnce = isWhole || orientation_ != 1 ? rows : kGlanceRows;
    for (int row = 0; row < rows; row += atOnce) {
        const int count = std::min(atOnce, rows - row);
        auto some = isWhole ? readStored({0, 0, across, down}, columns, rows) : glanceRows(row, count, columns, rows);
        if (!some) {
            return tl::unexpected(some.error());
        }
        Pixels upright = orientation_ == 1 ? std::move(*some) : turned(*some, orientation_);
        show({upright.columns, orientation_ == 1 ? rows : upright.rows, row, std::move(upright.rgb)});
    }
    return {};
}

}  // namespace crosstick::reading
