#include "core/reading/height_copy.h"

#include <array>
#include <cmath>
#include <limits>

#include <cpl_string.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include "core/reading/coordinate_system.h"
#include "core/reading/drivers.h"
#include "core/reading/height_file.h"
#include "core/reading/inks.h"
#include "core/sheets/faults.h"

namespace crosstick::reading {
namespace {

using sheets::HeightFacts;
using sheets::HeightUnit;

constexpr double kFoot = 0.3048;               // international, exactly
constexpr double kSurveyFoot = 1200.0 / 3937;  // US survey foot
constexpr int kRowsAtOnce = 256;

HeightUnit unitNamed(std::string_view name) {
    for (const std::string_view metre : {"m", "metre", "meter", "metres", "meters"}) {
        if (EQUAL(std::string(name).c_str(), std::string(metre).c_str())) {
            return HeightUnit::Metre;
        }
    }
    if (name == "ft" || name == "foot" || name == "feet") {
        return HeightUnit::Foot;
    }
    return name == "US survey foot" || name == "us-ft" || name == "ftUS" ? HeightUnit::SurveyFoot : HeightUnit::Unclear;
}

HeightUnit unitOf(double metres) {
    const auto is = [&](double unit) { return std::abs(metres - unit) < 1e-9; };
    return is(1)             ? HeightUnit::Metre
           : is(kSurveyFoot) ? HeightUnit::SurveyFoot
           : is(kFoot)       ? HeightUnit::Foot
                             : HeightUnit::Unclear;
}

double metresIn(HeightUnit unit) {
    return unit == HeightUnit::Foot ? kFoot : unit == HeightUnit::SurveyFoot ? kSurveyFoot : 1;
}

bool countsMetres(const char* driver) {
    return EQUAL(driver, "DTED") || EQUAL(driver, "SRTMHGT");
}

/// Raw values to metres, in place.
struct Reckoning {
    std::optional<double> none;
    double scale = 1, offset = 0;
    void apply(std::vector<float>& heights) const {
        for (float& height : heights) {
            const double raw = static_cast<double>(height);
            const bool isNone = none && (raw == *none || height == static_cast<float>(*none));
            height = isNone ? std::numeric_limits<float>::quiet_NaN() : static_cast<float>(raw * scale + offset);
        }
    }
};

Result<HeightFacts> sureFacts(GDALDataset& dataset, const sheets::messages::Order& order) {
    auto facts = heightFacts(dataset);
    if (!facts) {
        return fail(sheets::kNotHeights, {{"file", order.file.string()}});
    }
    if (facts->unit == HeightUnit::Unclear) {
        facts->unit = order.unit;
    }
    if (facts->unit == HeightUnit::Unclear) {
        return fail(sheets::kHeightUnit, {{"file", order.file.string()}});
    }
    return *facts;
}

}  // namespace

std::optional<HeightFacts> heightFacts(GDALDataset& dataset) {
    GDALRasterBand& band = *dataset.GetRasterBand(1);
    const sheets::Colours colours = coloursOf(dataset);
    const bool deepGrey = colours == sheets::Colours::Grey && band.GetRasterDataType() == GDT_UInt16;
    if (colours != sheets::Colours::Heights && !deepGrey && !countsMetres(dataset.GetDriverName())) {
        return std::nullopt;
    }
    HeightFacts facts;
    facts.unit = unitNamed(band.GetUnitType());
    if (facts.unit == HeightUnit::Unclear) {
        facts.unit = unitOf(verticalUnit(dataset.GetSpatialRef()));
    }
    if (countsMetres(dataset.GetDriverName())) {
        facts.unit = HeightUnit::Metre;
    }
    facts.datum = verticalName(dataset.GetSpatialRef());
    int hasNone = 0;
    const double none = band.GetNoDataValue(&hasNone);
    if (hasNone != 0 && std::isfinite(none)) {
        facts.noData = none;
    }
    return facts;
}

Result<void> copyHeights(const sheets::messages::Order& order, const Tell& tell) {
    auto opened = openForeign(order.file);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    const sheets::QuietGdal quiet;
    GDALDataset& dataset = **opened;
    const int columns = dataset.GetRasterXSize();
    const int rows = dataset.GetRasterYSize();
    if (static_cast<double>(columns) * rows > sheets::kMostCells) {
        return fail(sheets::kTooLarge, {{"file", order.file.string()},
                                        {"columns", static_cast<double>(columns)},
                                        {"rows", static_cast<double>(rows)}});
    }
    const auto facts = sureFacts(dataset, order);
    if (!facts) {
        return tl::unexpected(facts.error());
    }
    std::string crs = crsText(dataset.GetSpatialRef());
    crs = crs.empty() ? order.crs : crs;
    if (crs.empty()) {
        return fail(sheets::kNoCrs, {{"file", order.file.string()}});
    }
    std::array<double, 6> placement{};
    if (dataset.GetGeoTransform(placement.data()) != CE_None) {
        return fail(sheets::kNoPlacement, {{"file", order.file.string()}});
    }
    GDALRasterBand& band = *dataset.GetRasterBand(1);
    const double unit = metresIn(facts->unit);
    const Reckoning reckoning{facts->noData, band.GetScale() * unit, band.GetOffset() * unit};
    auto copy = HeightFile::create(order.out, columns, rows, crs, placement);
    if (!copy) {
        return tl::unexpected(copy.error());
    }
    std::vector<float> heights;
    for (int row = 0; row < rows; row += kRowsAtOnce) {
        const int count = std::min(kRowsAtOnce, rows - row);
        heights.resize(static_cast<std::size_t>(columns) * static_cast<std::size_t>(count));
        if (band.RasterIO(GF_Read, 0, row, columns, count, heights.data(), columns, count, GDT_Float32, 0, 0,
                          nullptr) != CE_None) {
            return tl::unexpected(damage(quiet, order.file));
        }
        reckoning.apply(heights);
        if (auto written = copy->addRows(heights, count); !written) {
            return written;
        }
        tell({row + count, rows});
    }
    return std::move(*copy).finish();
}

}  // namespace crosstick::reading
