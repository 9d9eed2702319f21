#include "core/registration/placed_sheet.h"

#include <algorithm>
#include <cmath>

#include <cpl_string.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include "core/geodesy/crs.h"
#include "core/registration/faults.h"
#include "core/registration/resampling.h"
#include "core/sheets/dataset.h"
#include "core/units/number_text.h"
#include "core/worker/faults.h"

namespace crosstick::registration {
namespace {

constexpr int kTile = 512;
constexpr int kEdgePoints = 64;    // looked at on each edge: a quadratic edge bulges
constexpr double kMostSpread = 4;  // times the picture's pixels

struct Extent {
    double west = HUGE_VAL, south = HUGE_VAL, east = -HUGE_VAL, north = -HUGE_VAL;  ///< metres
};

/// Of the picture's edges on the grid; nothing where one ends in a horizon.
std::optional<Extent> extentOf(const Model& model, int columns, int rows) {
    Extent extent;
    for (int n = 0; n <= kEdgePoints; ++n) {
        const double across = static_cast<double>(columns) * n / kEdgePoints;
        const double down = static_cast<double>(rows) * n / kEdgePoints;
        for (const PixelPoint at : {PixelPoint{across, 0}, PixelPoint{across, static_cast<double>(rows)},
                                    PixelPoint{0, down}, PixelPoint{static_cast<double>(columns), down}}) {
            const auto place = model.place(at);
            if (!place) {
                return std::nullopt;
            }
            extent.west = std::min(extent.west, place->easting.value());
            extent.east = std::max(extent.east, place->easting.value());
            extent.south = std::min(extent.south, place->northing.value());
            extent.north = std::max(extent.north, place->northing.value());
        }
    }
    return extent;
}

CPLStringList options() {
    CPLStringList list;
    list.SetNameValue("TILED", "YES");
    list.SetNameValue("BLOCKXSIZE", "512");
    list.SetNameValue("BLOCKYSIZE", "512");
    list.SetNameValue("INTERLEAVE", "PIXEL");
    list.SetNameValue("PHOTOMETRIC", "RGB");
    list.SetNameValue("COMPRESS", "DEFLATE");
    list.SetNameValue("PREDICTOR", "2");
    list.SetNameValue("BIGTIFF", "IF_SAFER");
    list.SetNameValue("NUM_THREADS", "2");
    return list;
}

/// A file in the making beside its later place; gone unless it was kept.
class NewFile {
  public:
    explicit NewFile(std::filesystem::path out) : out_(std::move(out)), made_(out_.string() + ".part") {}
    ~NewFile() {
        std::error_code ignored;
        std::filesystem::remove(made_, ignored);
    }
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    [[nodiscard]] const std::filesystem::path& made() const { return made_; }
    [[nodiscard]] Result<void> keep() const {
        std::error_code why;
        std::filesystem::rename(made_, out_, why);
        return why ? Result<void>(fail(kCannotWrite, {{"file", out_.string()}, {"why", why.message()}}))
                   : Result<void>();
    }

  private:
    std::filesystem::path out_, made_;
};

tl::unexpected<Error> cannotWrite(const sheets::QuietGdal& quiet, const NewFile& file) {
    std::string name = file.made().string();
    name.resize(name.size() - 5);  // the name that was asked for
    return fail(kCannotWrite, {{"file", name}, {"why", quiet.lastWords(file.made())}});
}

Result<sheets::DatasetPtr> create(const NewFile& file, const PlacedSize& size, const std::string& crs,
                                  std::optional<Scale> scale) {
    const auto facts = geodesy::describeCrs(crs);
    if (!facts) {
        return tl::unexpected(facts.error());
    }
    const sheets::QuietGdal quiet;
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    CPLStringList list = options();
    sheets::DatasetPtr dataset(driver->Create(file.made().c_str(), size.columns, size.rows, 3, GDT_Byte, list.List()));
    OGRSpatialReference reference;
    if (!dataset || reference.SetFromUserInput(crs.c_str()) != OGRERR_NONE) {
        return cannotWrite(quiet, file);
    }
    const plan::Placement& p = size.placement;
    std::array<double, 6> numbers{p.corner.easting.value(),  p.eastPerColumn,  p.eastPerRow,
                                  p.corner.northing.value(), p.northPerColumn, p.northPerRow};
    for (double& number : numbers) {
        number /= facts->metresPerUnit;
    }
    dataset->SetSpatialRef(&reference);
    dataset->SetGeoTransform(numbers.data());
    if (scale) {
        dataset->SetMetadataItem("SCALE", numberText(scale->denominator).c_str(), sheets::kOwnDomain);
    }
    return dataset;
}

/// One tile's colours: the picture's own pixels, or new ones.
Result<sheets::Pixels> tileOf(const sheets::Raster& raster, const Model& model, const PlacedSize& size,
                              sheets::PixelWindow window) {
    return model.placement() ? raster.read(window, window.columns, window.rows)
                             : resampled(raster, model, size.placement, window);
}

Result<void> write(GDALDataset& dataset, const sheets::Pixels& tile, sheets::PixelWindow window, const NewFile& file) {
    std::vector<std::uint8_t> bytes;
    bytes.reserve(tile.rgb.size() * 3);
    for (const std::uint32_t rgb : tile.rgb) {
        bytes.push_back(static_cast<std::uint8_t>(rgb >> 16U));
        bytes.push_back(static_cast<std::uint8_t>(rgb >> 8U));
        bytes.push_back(static_cast<std::uint8_t>(rgb));
    }
    const sheets::QuietGdal quiet;
    if (dataset.RasterIO(GF_Write, window.column, window.row, window.columns, window.rows, bytes.data(), window.columns,
                         window.rows, GDT_Byte, 3, nullptr, 3, GSpacing{3} * window.columns, 1, nullptr) != CE_None) {
        return cannotWrite(quiet, file);
    }
    return {};
}

}  // namespace

Result<PlacedSize> placedSize(const Model& model, int columns, int rows) {
    if (const auto placement = model.placement()) {
        return PlacedSize{*placement, columns, rows};
    }
    const auto extent = extentOf(model, columns, rows);
    const double pixel = model.stepAt({columns / 2.0, rows / 2.0}).metres();
    const double across = extent ? std::ceil((extent->east - extent->west) / pixel) : HUGE_VAL;
    const double down = extent ? std::ceil((extent->north - extent->south) / pixel) : HUGE_VAL;
    if (!(across * down <= kMostSpread * columns * rows) || across > sheets::kLongestSide ||
        down > sheets::kLongestSide) {
        return fail(kTooWide);
    }
    return PlacedSize{{{Metres(extent->west), Metres(extent->north)}, pixel, 0, 0, -pixel},
                      static_cast<int>(across),
                      static_cast<int>(down)};
}

Result<void> writePlaced(const sheets::Raster& raster, const Model& model, const std::string& crs,
                         std::optional<Scale> scale, const std::filesystem::path& out, const sheets::Watch& watch) {
    const auto size = placedSize(model, raster.columns(), raster.rows());
    if (!size) {
        return tl::unexpected(size.error());
    }
    const NewFile file(out);
    auto dataset = create(file, *size, crs, scale);
    if (!dataset) {
        return tl::unexpected(dataset.error());
    }
    for (int row = 0; row < size->rows; row += kTile) {
        for (int column = 0; column < size->columns; column += kTile) {
            const sheets::PixelWindow window{column, row, std::min(kTile, size->columns - column),
                                             std::min(kTile, size->rows - row)};
            auto written = tileOf(raster, model, *size, window).and_then([&](const sheets::Pixels& tile) {
                return write(**dataset, tile, window, file);
            });
            if (!written) {
                return written;
            }
            if (watch.isStopped && watch.isStopped()) {
                return fail(worker::kStopped);
            }
        }
        if (watch.tell) {
            watch.tell({std::min(size->rows, row + kTile), size->rows});
        }
    }
    const sheets::QuietGdal quiet;
    (*dataset)->FlushCache(true);
    if (CPLGetLastErrorType() >= CE_Failure) {
        return cannotWrite(quiet, file);
    }
    dataset->reset();
    return file.keep();
}

}  // namespace crosstick::registration
