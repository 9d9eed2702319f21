#include "core/reading/inspection.h"

#include <array>
#include <cmath>

#include <gdal_priv.h>

#include "core/reading/coordinate_system.h"
#include "core/reading/drivers.h"
#include "core/reading/foreign_raster.h"
#include "core/reading/height_copy.h"
#include "core/reading/inks.h"
#include "core/units/number_text.h"

namespace crosstick::reading {
namespace {

using sheets::FileReport;

constexpr std::int64_t kMostBlocksAsked = 200000;
constexpr std::size_t kLongestText = 60000;

std::string item(GDALDataset& dataset, const char* key, const char* domain) {
    const char* value = dataset.GetMetadataItem(key, domain);
    return value == nullptr ? std::string{} : std::string(value).substr(0, kLongestText);
}

/// Does a block of pixels lie inside the file, by the file's own table?
bool blockLiesInside(GDALRasterBand& band, int x, int y, std::uintmax_t bytes) {
    const std::string block = std::to_string(x) + '_' + std::to_string(y);
    const char* offset = band.GetMetadataItem(("BLOCK_OFFSET_" + block).c_str(), "TIFF");
    const char* size = band.GetMetadataItem(("BLOCK_SIZE_" + block).c_str(), "TIFF");
    const auto start = offset == nullptr ? std::nullopt : parseNumber(offset);
    const auto length = size == nullptr ? std::nullopt : parseNumber(size);
    return !start || !length || *start + *length <= static_cast<double>(bytes);
}

/// Do all blocks of pixels lie inside the file? Asked of the file's own table, no pixel is read: a copy that broke off
/// keeps its head, and would show white ground only when the light table gets there. Of very many blocks every so many
/// are asked, and the last.
bool isWhole(GDALDataset& dataset, std::uintmax_t bytes) {
    if (!EQUAL(dataset.GetDriverName(), "GTiff")) {
        return true;  // only a TIFF has such a table; others show it when they are read
    }
    for (int n = 1; n <= std::min(4, dataset.GetRasterCount()); ++n) {
        GDALRasterBand& band = *dataset.GetRasterBand(n);
        int columns = 0;
        int rows = 0;
        band.GetBlockSize(&columns, &rows);
        const std::int64_t across = (band.GetXSize() + columns - 1) / columns;
        const std::int64_t count = across * ((band.GetYSize() + rows - 1) / rows);
        const std::int64_t step = 1 + count / kMostBlocksAsked;
        for (std::int64_t at = count - 1; at >= 0; at -= step) {
            if (!blockLiesInside(band, static_cast<int>(at % across), static_cast<int>(at / across), bytes)) {
                return false;
            }
        }
    }
    return true;
}

/// Of the scan: TIFF tags, EXIF, or the resolution at which a page is drawn.
std::optional<double> dotsPerMetre(GDALDataset& dataset) {
    constexpr double kInch = 0.0254;
    const auto scanned = [&](const char* dots, const char* unit) -> std::optional<double> {
        const auto number = parseNumber(item(dataset, dots, ""));
        const std::string kind = item(dataset, unit, "");
        if (!number || *number <= 0 || !(kind.starts_with('2') || kind.starts_with('3'))) {
            return std::nullopt;  // a bare ratio of sides tells no size
        }
        return *number / (kind.starts_with('3') ? 0.01 : kInch);
    };
    if (const auto tiff = scanned("TIFFTAG_XRESOLUTION", "TIFFTAG_RESOLUTIONUNIT")) {
        return tiff;
    }
    if (EQUAL(dataset.GetDriverName(), "PDF")) {
        const auto dots = parseNumber(item(dataset, "DPI", ""));
        return dots && *dots > 0 ? std::optional(*dots / kInch) : std::nullopt;
    }
    // EXIF writes "(300)" and the unit as 2 for inches, 3 for centimetres.
    std::string exif = item(dataset, "EXIF_XResolution", "");
    std::erase_if(exif, [](char c) { return c == '(' || c == ')'; });
    const auto number = parseNumber(exif);
    const std::string unit = item(dataset, "EXIF_ResolutionUnit", "");
    if (number && *number > 0 && (unit == "2" || unit == "3")) {
        return *number / (unit == "3" ? 0.01 : kInch);
    }
    return std::nullopt;
}

std::map<std::string, std::string> printedWords(GDALDataset& dataset) {
    std::map<std::string, std::string> words;
    for (const char* key : {"SERIES", "NAME", "NUMBER", "EDITION", "SCALE", "DATUM", "GM_ANGLE_DEG", "GM_DATE",
                            "GM_YEARLY_DEG", "ELEVATION"}) {
        if (std::string value = item(dataset, key, "CROSSTICK"); !value.empty()) {
            words[key] = std::move(value);
        }
    }
    return words;
}

int pagesOf(GDALDataset& dataset) {
    char** list = dataset.GetMetadata("SUBDATASETS");
    return std::max(1, CSLCount(list) / 2);
}

std::optional<std::array<double, 6>> placementOf(GDALDataset& dataset) {
    std::array<double, 6> g{};
    if (dataset.GetGeoTransform(g.data()) != CE_None || g[1] * g[5] - g[2] * g[4] == 0) {
        return std::nullopt;
    }
    for (const double number : g) {
        if (!std::isfinite(number)) {
            return std::nullopt;
        }
    }
    return g;
}

int bitsOf(GDALRasterBand& band) {
    const char* declared = band.GetMetadataItem("NBITS", "IMAGE_STRUCTURE");
    const auto bits = declared == nullptr ? std::nullopt : parseNumber(declared);
    return bits && *bits >= 1 && *bits <= 128 ? static_cast<int>(*bits)
                                              : 8 * GDALGetDataTypeSizeBytes(band.GetRasterDataType());
}

}  // namespace

bool losesSomething(GDALDataset& dataset) {
    const std::string driver = dataset.GetDriverName();
    const std::string compression = item(dataset, "COMPRESSION", "IMAGE_STRUCTURE");
    return driver == "JPEG" || driver == "WEBP" || compression.find("JPEG") != std::string::npos ||
           compression == "WEBP";
}

Result<FileReport> inspect(const std::filesystem::path& file) {
    auto opened = openForeign(file);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    const sheets::QuietGdal quiet;
    GDALDataset& dataset = **opened;
    GDALRasterBand& band = *dataset.GetRasterBand(1);
    FileReport report;
    report.driver = dataset.GetDriverName();
    report.orientation = orientationOf(dataset, file);
    report.columns = report.orientation >= 5 ? dataset.GetRasterYSize() : dataset.GetRasterXSize();
    report.rows = report.orientation >= 5 ? dataset.GetRasterXSize() : dataset.GetRasterYSize();
    report.bands = dataset.GetRasterCount();
    report.bits = bitsOf(band);
    report.pages = pagesOf(dataset);
    report.colours = coloursOf(dataset);
    report.compression = item(dataset, "COMPRESSION", "IMAGE_STRUCTURE");
    report.isLossy = losesSomething(dataset);
    band.GetBlockSize(&report.blockColumns, &report.blockRows);
    report.overviews = std::min(64, band.GetOverviewCount());
    report.crs = crsText(dataset.GetSpatialRef()).substr(0, kLongestText);
    report.placement = placementOf(dataset);
    report.controlPoints = dataset.GetGCPCount();
    report.dotsPerMetre = dotsPerMetre(dataset);
    report.heights = heightFacts(dataset);
    report.printed = printedWords(dataset);
    std::error_code ignored;
    report.isWhole = isWhole(dataset, std::filesystem::file_size(file, ignored));
    return report;
}

}  // namespace crosstick::reading
