#include "core/sheets/elevation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <mutex>

#include <gdal_priv.h>

#include "core/geodesy/raster_link.h"
#include "core/sheets/dataset.h"
#include "core/sheets/faults.h"

namespace crosstick::sheets {
struct Elevation::Parts {
    int columns = 0, rows = 0;
    std::vector<float> heights;      ///< not a number where there is none
    std::array<double, 6> toCell{};  ///< from the model's numbers to column and row
    double cell = 0;
    mutable std::mutex oneAtATime;  ///< the PROJ operation serves one thread at a time
    std::optional<geodesy::RasterLink> link;

    [[nodiscard]] double at(int column, int row) const {
        return static_cast<double>(heights[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                                           static_cast<std::size_t>(column)]);
    }
};

namespace {

Result<std::vector<float>> readHeights(GDALDataset& dataset, const std::filesystem::path& file) {
    const QuietGdal quiet;
    GDALRasterBand& band = *dataset.GetRasterBand(1);
    const int columns = dataset.GetRasterXSize();
    const int rows = dataset.GetRasterYSize();
    std::vector<float> heights(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
    if (band.RasterIO(GF_Read, 0, 0, columns, rows, heights.data(), columns, rows, GDT_Float32, 0, 0, nullptr) !=
        CE_None) {
        return fail(kDamaged, {{"file", file.string()}, {"why", quiet.lastWords(file)}});
    }
    return heights;
}

/// The longer side of a cell in the middle of the model.
double cellOf(const std::array<double, 6>& g, int columns, int rows, const geodesy::RasterLink& link) {
    const double x = columns / 2.0;
    const double y = rows / 2.0;
    const auto unit = link.unitAt({g[0] + g[1] * x + g[2] * y, g[3] + g[4] * x + g[5] * y});
    const double east = unit[0].value();
    const double north = unit[1].value();
    return std::max(std::hypot(g[1] * east, g[4] * north), std::hypot(g[2] * east, g[5] * north));
}

}  // namespace

Elevation::Elevation(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Elevation::~Elevation() = default;

Result<std::shared_ptr<const Elevation>> Elevation::open(const std::filesystem::path& copy,
                                                         const std::string& planCrs) {
    auto opened = openOwn(copy);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    GDALDataset& dataset = **opened;
    auto parts = std::make_unique<Parts>();
    parts->columns = dataset.GetRasterXSize();
    parts->rows = dataset.GetRasterYSize();
    const char* crs = dataset.GetMetadataItem("CRS", kOwnDomain);
    std::array<double, 6> g{};
    const bool isOurs = crs != nullptr && static_cast<double>(parts->columns) * parts->rows <= kMostCells &&
                        dataset.GetGeoTransform(g.data()) == CE_None &&
                        GDALInvGeoTransform(g.data(), parts->toCell.data()) != 0;
    if (!isOurs) {
        return fail(kDamaged, {{"file", copy.string()}, {"why", std::string("it is no copy of ours")}});
    }
    auto link = geodesy::RasterLink::between(planCrs, crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    parts->cell = cellOf(g, parts->columns, parts->rows, *link);
    parts->link = std::move(*link);
    auto heights = readHeights(dataset, copy);
    if (!heights) {
        return tl::unexpected(heights.error());
    }
    parts->heights = std::move(*heights);
    return std::shared_ptr<const Elevation>(new Elevation(std::move(parts)));
}

Result<std::shared_ptr<const Elevation>> Elevation::read(const ForeignReader& reader, const std::filesystem::path& file,
                                                         HeightUnit unit, const std::string& planCrs,
                                                         const Watch& watch) {
    const auto copy = reader.heights(file, unit, watch);
    return copy ? open(*copy, planCrs) : tl::unexpected(copy.error());
}

Metres Elevation::cell() const {
    return Metres(parts_->cell);
}

std::optional<Metres> Elevation::heightAt(geodesy::PlanePoint inPlan) const {
    std::optional<std::array<double, 2>> numbers;
    {
        const std::scoped_lock lock(parts_->oneAtATime);
        numbers = parts_->link->numbersAt(inPlan);
    }
    if (!numbers) {
        return std::nullopt;
    }
    // Heights stand at the middle of their cells.
    const auto& g = parts_->toCell;
    const double column = g[0] + (*numbers)[0] * g[1] + (*numbers)[1] * g[2] - 0.5;
    const double row = g[3] + (*numbers)[0] * g[4] + (*numbers)[1] * g[5] - 0.5;
    if (!(column >= 0 && row >= 0 && column <= parts_->columns - 1 && row <= parts_->rows - 1)) {
        return std::nullopt;
    }
    const int left = std::min(static_cast<int>(column), std::max(0, parts_->columns - 2));
    const int top = std::min(static_cast<int>(row), std::max(0, parts_->rows - 2));
    const int right = std::min(left + 1, parts_->columns - 1);
    const int bottom = std::min(top + 1, parts_->rows - 1);
    const double x = column - left;
    const double y = row - top;
    // A corner of no weight is not asked: beside a hole the heights on its rim stand.
    double height = 0;
    const auto add = [&](double weight, int atColumn, int atRow) {
        height += weight == 0 ? 0 : weight * parts_->at(atColumn, atRow);
    };
    add((1 - x) * (1 - y), left, top);
    add(x * (1 - y), right, top);
    add((1 - x) * y, left, bottom);
    add(x * y, right, bottom);
    return std::isfinite(height) ? std::optional(Metres(height)) : std::nullopt;
}

}  // namespace crosstick::sheets
