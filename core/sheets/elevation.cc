#include "core/sheets/elevation.h"

#include <array>
#include <cmath>
#include <limits>
#include <mutex>

#include <gdal_priv.h>

#include "core/geodesy/crs.h"
#include "core/sheets/faults.h"
#include "core/sheets/geotiff.h"

namespace crosstick::sheets {
namespace {

constexpr double kMostCells = 1e8;  // 400 MB of floats

}  // namespace

struct Elevation::Parts {
    int columns = 0, rows = 0;
    std::vector<float> heights;      ///< not a number where there is none
    std::array<double, 6> toCell{};  ///< from the model's plane (metres) to column and row
    double cell = 0;
    mutable std::mutex oneAtATime;           ///< the PROJ operation serves one thread at a time
    std::optional<geodesy::PlaneLink> link;  ///< none: the model lies in the plan's plane

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
    int hasNone = 0;
    const auto none = static_cast<float>(band.GetNoDataValue(&hasNone));
    const auto scale = static_cast<float>(band.GetScale());
    const auto offset = static_cast<float>(band.GetOffset());
    for (float& height : heights) {
        height = hasNone != 0 && height == none ? std::numeric_limits<float>::quiet_NaN() : height * scale + offset;
    }
    return heights;
}

/// The inverse of the file's six numbers, for points in metres.
std::optional<std::array<double, 6>> cellFromPlane(GDALDataset& dataset, double metresPerUnit) {
    std::array<double, 6> g{};
    std::array<double, 6> inverse{};
    if (dataset.GetGeoTransform(g.data()) != CE_None) {
        return std::nullopt;
    }
    for (double& number : g) {
        number *= metresPerUnit;
    }
    if (GDALInvGeoTransform(g.data(), inverse.data()) == 0) {
        return std::nullopt;
    }
    return inverse;
}

}  // namespace

Elevation::Elevation(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Elevation::~Elevation() = default;

Result<std::shared_ptr<const Elevation>> Elevation::open(const std::filesystem::path& file,
                                                         const std::string& planCrs) {
    auto opened = openGeoTiff(file);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    GDALDataset& dataset = **opened;
    auto parts = std::make_unique<Parts>();
    parts->columns = dataset.GetRasterXSize();
    parts->rows = dataset.GetRasterYSize();
    if (static_cast<double>(parts->columns) * parts->rows > kMostCells) {
        return fail(kTooLarge, {{"file", file.string()},
                                {"columns", static_cast<double>(parts->columns)},
                                {"rows", static_cast<double>(parts->rows)}});
    }
    const std::string crs = crsText(dataset);
    if (crs.empty()) {
        return fail(kNoCrs, {{"file", file.string()}});
    }
    const auto facts = geodesy::describeCrs(crs);
    if (!facts) {
        return tl::unexpected(crsFault(facts.error(), file, crs));
    }
    const auto toCell = cellFromPlane(dataset, facts->metresPerUnit);
    if (!toCell) {
        return fail(kNoPlacement, {{"file", file.string()}});
    }
    parts->toCell = *toCell;
    parts->cell = 1 / std::min(std::hypot((*toCell)[1], (*toCell)[4]), std::hypot((*toCell)[2], (*toCell)[5]));
    auto link = geodesy::PlaneLink::between(planCrs, crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    if (!link->isIdentity()) {
        parts->link = std::move(*link);
    }
    auto heights = readHeights(dataset, file);
    if (!heights) {
        return tl::unexpected(heights.error());
    }
    parts->heights = std::move(*heights);
    return std::shared_ptr<const Elevation>(new Elevation(std::move(parts)));
}

Metres Elevation::cell() const {
    return Metres(parts_->cell);
}

std::optional<Metres> Elevation::heightAt(geodesy::PlanePoint inPlan) const {
    geodesy::PlanePoint p = inPlan;
    if (parts_->link) {
        const std::scoped_lock lock(parts_->oneAtATime);
        const auto linked = parts_->link->forward(inPlan);
        if (!linked) {
            return std::nullopt;
        }
        p = *linked;
    }
    // Heights stand at the middle of their cells.
    const auto& g = parts_->toCell;
    const double column = g[0] + p.easting.value() * g[1] + p.northing.value() * g[2] - 0.5;
    const double row = g[3] + p.easting.value() * g[4] + p.northing.value() * g[5] - 0.5;
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
